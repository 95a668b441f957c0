using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>Touch current and insulation against published values (tests/Reference/published/leakage.json, check values 8.2, 8.5, 8.7).</summary>
public class LeakageValuesTests
{
    [Fact]
    public void The_weighted_network_has_its_two_corners()
    {
        var p = Published.Case("leakage", "8.2");
        p.Agrees("skinHertz", TouchNetwork.SkinHertz, 0.5);
        p.Agrees("filterHertz", TouchNetwork.FilterHertz, 0.5);
    }

    /// <remarks>Closed forms: 2000 Ω at DC; at the filter’s corner 1/√2 is left; far above both corners the skin is bridged and 500 Ω are left.</remarks>
    [Fact]
    public void Its_ohms_and_its_filter_are_those_of_the_drawing()
    {
        Assert.Equal(2000, TouchNetwork.Ohms(0), 1e-9);
        Assert.Equal(500, TouchNetwork.Ohms(1e7), 0.1);
        Assert.Equal(Math.Sqrt(0.5), TouchNetwork.FilterShare(TouchNetwork.FilterHertz), 1e-12);
        // At the skin’s corner 1500/(1 + j) = 750 − 750j beside 500.
        Assert.Equal(Math.Sqrt((1250 * 1250.0) + (750 * 750)), TouchNetwork.Ohms(TouchNetwork.SkinHertz), 1e-9);
        foreach (var part in new[] { "1.5 kΩ", "0.22 µF", "500 Ω", "10 kΩ", "0.022 µF" })
            Assert.Contains(part, TouchNetwork.Parts, StringComparison.Ordinal);
    }

    private static JsonObject Touch(double volts, string rest = "") =>
        Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"verdict\", \"limit\": {{ \"max\": 0.25, \"unit\": \"mA\" }}, \"meter\": {{ \"percent\": 1, \"floor\": 0.001 }}, \"touch\": {{ \"volts\": [{volts:R}, 0.001], \"network\": \"1500-ohm\", \"hertz\": 60{rest} }}"
            )
        );

    /// <remarks>8.5, closed form: C = I/(2πf·V). Half of it on a line of 240 V.</remarks>
    [Fact]
    public void Half_a_milliampere_is_explained_by_eleven_nanofarads()
    {
        var p = Published.Case("leakage", "8.5");
        var volts = p.Given("milliamps") * 1.5;
        p.Agrees("nanofarads", Touch(volts).Number("nanofarads"), 0.005);
        Assert.Equal(p.Expected("nanofarads") / 2, Touch(volts, ", \"supplyVolts\": 240").Number("nanofarads"), 0.005);
        Assert.Contains(
            Touch(volts)["words"]!.AsArray(),
            w => w!.GetValue<string>().Contains("A capacitor of 11 nF", StringComparison.Ordinal)
        );
        Assert.Equal(1500, Touch(volts).Number("networkOhms"), 1e-9);
    }

    private static IEnumerable<string> Words(JsonObject answer) => answer["words"]!.AsArray().Select(w => w!.GetValue<string>());

    /// <remarks>118 V on 1500 Ω are 78.7 mA: a capacitor for that would be 1740 nF. A tenth of 120 V is 12 V (common practice, no source).</remarks>
    [Theory]
    [InlineData(118, "", true)]
    [InlineData(12, "", true)]
    [InlineData(11.9, "", false)]
    [InlineData(12, ", \"supplyVolts\": 230", false)]
    [InlineData(23, ", \"supplyVolts\": 230", true)]
    public void A_tenth_of_the_line_on_the_network_is_a_joint_and_no_capacitor(double volts, string rest, bool isJoint)
    {
        var answer = Touch(volts, rest);
        Assert.Equal(isJoint, Words(answer).Contains("Plug out. Something joins it to the line. Do the cold checks again."));
        Assert.Equal(!isJoint, answer.ContainsKey("nanofarads"));
        Assert.Equal(!isJoint, Words(answer).Any(w => w.Contains("capacitor", StringComparison.Ordinal)));
    }

    /// <remarks>U2 = 3.1 V is 6.2 mA; |Z| at 60 Hz about 1981 Ω: 12.3 V of 120 V. By the volts read it would be a fortieth.</remarks>
    [Theory]
    [InlineData(3.1, true)]
    [InlineData(2.9, false)]
    public void Of_a_weighted_network_the_volts_of_all_of_it_count(double volts, bool isJoint) =>
        Assert.Equal(isJoint, new TouchReading([volts, 0], "weighted-500-ohm", 60, 120, true).IsJoined(volts * 2));

    [Fact]
    public void Dirt_comes_first_the_capacitor_second_and_nothing_beside_a_pass()
    {
        var words = Words(Touch(0.75)).ToList();
        Assert.Equal(
            1,
            words.FindIndex(w => w.Contains("A capacitor of 11", StringComparison.Ordinal)) - words.IndexOf("Look for dirt or damp first.")
        );
        // 0.3 V is 0.2 mA: a pass that is no trickle.
        Assert.DoesNotContain(
            Words(Touch(0.3)),
            w => w.Contains("damp", StringComparison.Ordinal) || w.Contains("capacitor", StringComparison.Ordinal)
        );
    }

    /// <remarks>120²/1500 = 9.6 W, 230²/1500 = 35 W: closed forms.</remarks>
    [Fact]
    public void The_parts_of_a_network_stand_a_joint_to_the_line_or_the_plug_is_out_at_once()
    {
        Assert.Equal(
            ["Use resistors of 10 W and capacitors of 250 V AC.", "Look at them after a high reading."],
            TouchNetwork.Ratings(120)
        );
        Assert.Equal(
            [
                "Use resistors of 10 W and capacitors of 500 V AC.",
                "Look at them after a high reading.",
                "A joint to the line puts 35 W on 1.5 kΩ: on a high reading, plug out at once.",
            ],
            TouchNetwork.Ratings(230)
        );
    }

    [Fact]
    public void A_trickle_is_not_explained() =>
        Assert.DoesNotContain(Touch(0.06)["words"]!.AsArray(), w => w!.GetValue<string>().Contains("capacitor", StringComparison.Ordinal));

    [Fact]
    public void DC_is_as_hard_on_insulation_as_the_peak_of_AC()
    {
        var p = Published.Case("leakage", "8.7");
        var ac = HighVolts.OfNewEquipment(p.Given("lineVolts"));
        p.Agrees("ac", ac, 1e-9);
        p.Agrees("dc", HighVolts.DcOf(ac), 0.5);
        Assert.Equal(ac, HighVolts.AcOf(HighVolts.DcOf(ac)), 1e-9);
    }
}
