using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>
/// Rectifiers in a sheet's place against closed forms, and what follows from their figures. The circuits solved by ngspice are in
/// <see cref="RectifierSpiceTests"/>.
/// </summary>
public class RectifierTests
{
    private const string Silicon = "\"saturationAmps\": 1e-9, \"slopeVolts\": 0.045, \"seriesOhms\": 0.02, \"leakageOhms\": 1e7";

    private static JsonObject Ask(string part, string rest = "", TypeSheet? sheet = null) =>
        Asked.Answer(
            $$"""
            "question": "rectifier", "element": "disc-left", "steps": ["left-first-dc", "left-second-dc"], "loadsOhms": [4.8],
            "parts": [ { "id": "x", {{part}} } ] {{rest}}
            """,
            sheet ?? Reference.Twin160
        );

    /// <summary>A source, the rectifier and a load in a ring; <c>line</c> volts RMS.</summary>
    private static JsonNode HalfWave(string part, double volts, double ohms)
    {
        var sheet = TypeSheetFile
            .Read(
                FormattableString.Invariant(
                    $$"""
                    { "ohmstead": "type-sheet/1", "id": "ring", "supply": { "volts": {{volts}}, "hertz": 60 },
                      "elements": [ { "id": "d", "kind": "rectifier", "from": "line", "to": "out", "saturationAmps": 1e-3, "slopeVolts": 0.1, "seriesOhms": 0, "leakageOhms": 1e6 },
                                    { "id": "w", "kind": "wire", "from": "line", "to": "back-1", "ohms": 1e9 }, { "id": "w2", "kind": "wire", "from": "back-1", "to": "back", "ohms": 1e9 } ],
                      "readings": [ { "id": "r", "quantity": "dc-volts", "between": ["out", "back"], "state": { "source": { "from": "line", "to": "back", "volts": "mains" } },
                                      "needs": ["cold"] },
                                    { "id": "cold", "quantity": "ohms", "between": ["line", "back"], "limits": { "min": 1 }, "gate": true } ] }
                    """
                )
            )
            .Required;
        return Asked
            .Answer(
                FormattableString.Invariant(
                    $$"""
                    "question": "rectifier", "element": "d", "steps": ["r", "r"], "loadsOhms": [{{ohms}}], "parts": [ { "id": "x", {{part}} } ]
                    """
                ),
                sheet
            )
            .At("parts[0].loads[0].first")!;
    }

    /// <remarks>
    /// Published 4.2: 40 V, 20 Ω, PIV 56.6 V (FOSSEE 2330/CH4/EX4.1; seen). Closed form beside it: mean Vm/π, RMS Vm/2, peak amps Vm/R. The
    /// slope of 5 mV drops some 60 mV.
    /// </remarks>
    [Fact]
    public void A_half_wave_gives_mean_RMS_and_peaks_of_its_closed_form()
    {
        var state = HalfWave("\"saturationAmps\": 1e-4, \"slopeVolts\": 0.005, \"seriesOhms\": 0, \"leakageOhms\": 1e13", 40, 20);
        Assert.Equal(56.6, state.Number("peakReverseVolts"), 0.1);
        Assert.Equal(18.006, state.Number("dcVolts"), 0.003 * 18);
        Assert.Equal(40 / Math.Sqrt(2), state.Number("rmsVolts"), 0.003 * 28.3);
        Assert.Equal(40 * Math.Sqrt(2) / 20, state.Number("peakAmps"), 0.003 * 2.83);
        Assert.Equal(
            Math.Sqrt(Math.Pow(state.Number("rmsVolts"), 2) - Math.Pow(state.Number("dcVolts"), 2)),
            state.Number("acVolts"),
            1e-9
        );
        // Its own watts: its drop, about slope·ln(mean peak over saturation), times the mean amps.
        Assert.InRange(state.Number("watts"), 0.03, 0.06);
    }

    /// <remarks>One that leaks so much that it is a resistance: v and i are in phase, V·R/(R + R_load) over R, and no volts DC.</remarks>
    [Fact]
    public void A_part_that_only_leaks_is_a_resistance()
    {
        var state = HalfWave("\"saturationAmps\": 1e-16, \"slopeVolts\": 10, \"seriesOhms\": 0, \"leakageOhms\": 5", 30, 10);
        Assert.Equal(0, state.Number("dcVolts"), 1e-6);
        Assert.Equal(30 * 10.0 / 15, state.Number("rmsVolts"), 1e-4);
        Assert.Equal(30 * Math.Sqrt(2) / 3, state.Number("peakReverseVolts"), 1e-3);
        Assert.Equal(30 * Math.Sqrt(2) / 15, state.Number("peakAmps"), 1e-3);
        Assert.Equal(2 * 2 * 5, state.Number("watts"), 1e-3);
    }

    [Fact]
    public void Volts_at_the_posts_are_those_of_a_sheet_with_that_part_in_it()
    {
        var json = Reference.Json("tests/Reference/sample/twin-160.sheet.json");
        var disc = json["elements"]!.AsArray().First(e => e!["id"]!.GetValue<string>() == "disc-left")!.AsObject();
        (disc["saturationAmps"], disc["slopeVolts"], disc["seriesOhms"], disc["leakageOhms"]) = (1e-9, 0.045, 0.02, 1e7);
        foreach (var reading in json["readings"]!.AsArray().Where(r => r!["id"]!.GetValue<string>() is "left-first-dc" or "left-second-dc"))
            reading!["state"]!["loads"]![0]!["ohms"] = 4.8;
        var unit = new BenchUnit(TypeSheetFile.Read(json.ToJsonString()).Required);
        var answer = Ask(Silicon);
        Assert.Equal(unit.ReadListed("left-first-dc"), answer.Number("parts[0].loads[0].first.dcVolts"), 1e-6);
        Assert.Equal(unit.ReadListed("left-second-dc"), answer.Number("parts[0].loads[0].second.dcVolts"), 1e-6);
    }

    [Fact]
    public void Two_in_a_row_are_one_of_twice_the_slope_series_and_leakage()
    {
        var two = Ask("\"saturationAmps\": 0.002, \"slopeVolts\": 0.06, \"seriesOhms\": 0.05, \"leakageOhms\": 50, \"seriesJunctions\": 2");
        var one = Ask("\"saturationAmps\": 0.002, \"slopeVolts\": 0.12, \"seriesOhms\": 0.1, \"leakageOhms\": 100");
        Assert.Equal(one["parts"]!.ToJsonString(), two["parts"]!.ToJsonString());
        // n·(slope·ln(1 + i/saturation) + series·i) at 2 A.
        Assert.Equal(2 * ((0.06 * Math.Log(1001)) + (0.05 * 2)), two.Number("parts[0].forward[1].volts"), 1e-12);
    }

    [Fact]
    public void Exchanged_ends_turn_the_sign_and_the_advice()
    {
        string With(string sign, string part) => Ask(part, $", \"wantedSign\": \"{sign}\"").Text("parts[0].polarity");
        var (plain, turned) = (Ask(Silicon), Ask(Silicon + ", \"exchanged\": true"));
        Assert.True(plain.Number("parts[0].loads[0].first.dcVolts") > 5 && turned.Number("parts[0].loads[0].first.dcVolts") < -5);
        Assert.Equal(
            ("as wanted", "exchange its ends", "either"),
            (With("positive", Silicon), With("negative", Silicon), With("either", Silicon))
        );
        Assert.Equal(
            ("exchange its ends", "as wanted"),
            (With("positive", Silicon + ", \"exchanged\": true"), With("negative", Silicon + ", \"exchanged\": true"))
        );
        Assert.Equal("either", plain.Text("parts[0].polarity"));
    }

    /// <remarks>Every source, drop and peak of a half wave goes with the line, but for the junction's own volts.</remarks>
    [Fact]
    public void The_line_is_felt()
    {
        double Peak(string rest) => Ask(Silicon, rest).Number("parts[0].peakReverseVolts");
        Assert.Equal(Peak("") * 110 / 120, Peak(", \"supplyVolts\": 110"), 0.05);
    }

    [Theory]
    [InlineData(1.5, 0.9, "holds")]
    [InlineData(7, 0.9, "silent")]
    [InlineData(6, 0.9, "holds")]
    [InlineData(1.5, 1, "half pressed only")]
    [InlineData(7, 1, "silent")]
    public void The_whistle_holds_where_both_steps_are_above_its_relay(double pullIn, double dropOut, string word)
    {
        // Silicon at 4.8 Ω: 6.05 V and 0.97 V.
        FormattableString relay = $", \"relay\": {{ \"pullInVolts\": {pullIn}, \"dropOutVolts\": {dropOut} }}";
        Assert.Equal(word, Ask(Silicon, FormattableString.Invariant(relay)).Text("parts[0].loads[0].whistle"));
    }

    [Fact]
    public void What_was_not_measured_is_null()
    {
        var part = Ask(Silicon).At("parts[0]")!.AsObject();
        Assert.All(
            [
                "reverseMargin",
                "reverseEnough",
                "fits",
                "spareMillimetres",
                "junctionCelsius",
                "kelvinPerWatt",
                "coolEnough",
                "leadRule",
                "leadMillimetres",
                "plateSquareCentimetres",
            ],
            name => Assert.Null(part[name])
        );
        Assert.Null(Ask(Silicon + ", \"bodyMillimetres\": [9, 5]").At("parts[0].fits"));
    }

    [Theory]
    [InlineData("[38, 18]", "[32, 12]", "", 0, true)]
    [InlineData("[38, 18]", "[32, 12.1]", "", -0.1, false)]
    [InlineData("[40, 18]", "[32, 13]", ", \"clearanceMillimetres\": 2", 1, true)]
    public void It_fits_where_body_and_clearance_do(string space, string body, string rest, double spare, bool fits)
    {
        var answer = Ask($"{Silicon}, \"bodyMillimetres\": {body}", $", \"spaceMillimetres\": {space}{rest}");
        Assert.Equal(spare, answer.Number("parts[0].spareMillimetres"), 1e-9);
        Assert.Equal(fits, answer.At("parts[0].fits")!.GetValue<bool>());
    }

    /// <remarks>Leads stand out lengthwise: 9.5 + 2·12 of 38 mm leave 4.5; 2·15 of the same leave −1.5.</remarks>
    [Theory]
    [InlineData(12, 4.5)]
    [InlineData(15, -1.5)]
    public void Leads_need_their_own_length(double lead, double spare)
    {
        FormattableString part =
            $"{Silicon}, \"bodyMillimetres\": [9.5, 5.3], \"thermal\": {{ \"mount\": \"leads\", \"junctionToLeadKelvinPerWatt\": 10, \"leadMillimetres\": {lead} }}";
        Assert.Equal(
            spare,
            Ask(FormattableString.Invariant(part), ", \"spaceMillimetres\": [38, 18]").Number("parts[0].spareMillimetres"),
            1e-9
        );
    }

    [Fact]
    public void Short_calls_heat_by_their_share()
    {
        const string Plate =
            Silicon + ", \"thermal\": { \"mount\": \"plate\", \"junctionToPlateKelvinPerWatt\": 3, \"plateSquareCentimetres\": 25 }";
        var (always, seldom) = (Ask(Plate), Ask(Plate, ", \"dutyPercent\": 10, \"insideCelsius\": 60"));
        var watts = always.Number("parts[0].watts");
        // 3 K/W and 1/(10·2·0.0025) = 20 K/W.
        Assert.Equal(45 + (watts * 23), always.Number("parts[0].junctionCelsius"), 1e-9);
        Assert.Equal(60 + (watts * 2.3), seldom.Number("parts[0].junctionCelsius"), 1e-9);
        Assert.Equal(23, always.Number("parts[0].kelvinPerWatt"), 1e-9);
        // (125 − 45)/W − 3 K/W of the air, by two faces of 10 W/m²K.
        Assert.Equal(1e4 / (20 * ((80 / watts) - 3)), always.Number("parts[0].plateSquareCentimetres"), 1e-9);
    }

    [Fact]
    public void The_reverse_margin_is_rated_over_the_peak()
    {
        var peak = Ask(Silicon).Number("parts[0].peakReverseVolts");
        JsonNode At(double rated, string rest = "") =>
            Ask(FormattableString.Invariant($"{Silicon}, \"ratedReverseVolts\": {rated}{rest}")).At("parts[0]")!;
        Assert.Equal(50 / peak, At(50).Number("reverseMargin"), 1e-12);
        Assert.True(At(2 * peak + 0.01).At("reverseEnough")!.GetValue<bool>());
        Assert.False(At(2 * peak - 0.01).At("reverseEnough")!.GetValue<bool>());
        Assert.True(At(peak + 0.01, ", \"leastReverseMargin\": 1").At("reverseEnough")!.GetValue<bool>());
    }

    [Fact]
    public void The_greatest_of_all_loads_and_steps_is_named()
    {
        var part = Asked
            .Answer(
                $$"""
                "question": "rectifier", "element": "disc-left", "steps": ["left-first-dc", "left-second-dc"], "loadsOhms": [24, 4.8, 9], "parts": [ { "id": "x", {{Silicon}} } ]
                """,
                Reference.Twin160
            )
            .At("parts[0]")!;
        foreach (var name in new[] { "peakReverseVolts", "peakAmps", "watts" })
            Assert.Equal(
                part["loads"]!.AsArray().SelectMany(l => new[] { l!.Number($"first.{name}"), l!.Number($"second.{name}") }).Max(),
                part.Number(name)
            );
    }

    [Fact]
    public void What_cannot_be_is_refused_with_all_its_paths()
    {
        const string Question = """
            "question": "rectifier", "element": "breaker", "steps": ["left-full", "nothing"], "loadsOhms": [9, 0],
            "parts": [ { "id": "x", "saturationAmps": -1, "slopeVolts": 0.045, "seriesOhms": -0.02, "leakageOhms": 1e7, "bodyMillimetres": [1], "thermal": { "mount": "glue" } } ]
            """;
        Assert.Equal(
            [
                "$.element",
                "$.steps[0]",
                "$.steps[1]",
                "$.loadsOhms[1]",
                "$.parts[0].saturationAmps",
                "$.parts[0].seriesOhms",
                "$.parts[0].bodyMillimetres",
                "$.parts[0].thermal.mount",
            ],
            Asked.Refused(Question, Reference.Twin160)
        );
        Assert.Equal(
            ["$"],
            Asked.Refused(
                $"\"question\": \"rectifier\", \"element\": \"disc-left\", \"steps\": [\"a\", \"b\"], \"loadsOhms\": [9], \"parts\": [ {{ \"id\": \"x\", {Silicon} }} ]"
            )
        );
        Assert.Equal(
            ["$.steps"],
            Asked.Refused(
                $"\"question\": \"rectifier\", \"element\": \"disc-left\", \"steps\": [\"left-first-dc\"], \"loadsOhms\": [9], \"parts\": [ {{ \"id\": \"x\", {Silicon} }} ]",
                Reference.Twin160
            )
        );
        // A reading of DC volts by a direct current is no step of the whistle.
        Assert.Equal(
            ["$.steps[1]"],
            Asked.Refused(
                $"\"question\": \"rectifier\", \"element\": \"disc-left\", \"steps\": [\"left-first-dc\", \"disc-left-1a\"], \"loadsOhms\": [9], \"parts\": [ {{ \"id\": \"x\", {Silicon} }} ]",
                Reference.Twin160
            )
        );
    }
}
