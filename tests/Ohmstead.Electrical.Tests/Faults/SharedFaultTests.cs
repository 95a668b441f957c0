using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Faults;

/// <summary>A fault that several parts share: its chance, what it does, and how it is told from the same fault in each part.</summary>
public class SharedFaultTests
{
    private const double Percent = 25;

    /// <summary>Three joints in a row, each of which can be read by itself; two or all of them may have gone cold together.</summary>
    private static JsonObject Json(params string[] parts)
    {
        var json = new SheetDraft()
            .Element("joint", "one", "a", "b")
            .Element("joint", "two", "b", "c")
            .Element("joint", "three", "c", "d")
            .Reading("first", "ohms", ["a", "b"])
            .Reading("second", "ohms", ["b", "c"])
            .Reading("third", "ohms", ["c", "d"])
            .Json();
        json["sharedFaults"] = new JsonArray(
            new JsonObject
            {
                ["id"] = "damp",
                ["title"] = "damp joints",
                ["elements"] = new JsonArray([.. parts.Select(p => JsonValue.Create(p))]),
                ["mode"] = "resistive",
                ["percent"] = Percent,
                ["mine"] = "kept",
            }
        );
        return json;
    }

    private static TypeSheet Sheet(params string[] parts) => TypeSheetFile.Read(Json(parts).ToJsonString()).Required;

    private static DiagnosisResult Diagnose(TypeSheet sheet, params (string Id, double Value)[] read) =>
        Diagnoser.Run(
            new UnitModel(sheet),
            new UnitReadings(
                sheet.Id,
                sheet.SupplyVolts,
                null,
                Meter.Usual,
                [
                    .. read.Select(r => new TakenReading(
                        sheet.FindReading(r.Id)!,
                        Outcome.Value,
                        r.Value,
                        [],
                        "",
                        "",
                        sheet.FindReading(r.Id)!.State
                    )),
                ],
                []
            ),
            new DiagnosisOptions()
        );

    private static double Chance(DiagnosisResult result, string name) => result.Faults.Single(f => f.Mode.Name == name).Probability;

    [Fact]
    public void It_does_what_its_mode_does_to_each_of_its_parts()
    {
        var unit = new BenchUnit(Sheet("one", "three"));
        Assert.Equal(7 + 0.002 + 7, unit.Read("ohms", ["a", "d"], null, "damp:resistive=7"), 1e-9);
        var mode = unit.Catalogue.Find("damp:resistive")!;
        Assert.Equal(["one", "three"], mode.Parts.AsEnumerable());
        Assert.Equal((0.4, 30.0, Percent), (mode.Min, mode.Max, mode.Percent));
    }

    /// <summary>
    /// P = its percent; while it is there, its parts have nothing of their own, so that theirs are (1 − P) of what they were:
    /// o/(1 + Σo) with o = p/(1 − p), for a joint of 0.5 and 3 %.
    /// </summary>
    [Fact]
    public void Its_chance_is_its_own_and_its_parts_have_theirs_while_it_is_not_there()
    {
        var (open, cold) = (0.005 / 0.995, 0.03 / 0.97);
        var alone = cold / (1 + open + cold);
        var catalogue = new BenchUnit(Sheet("one", "two")).Catalogue;
        var chances = catalogue.Chances(catalogue.Odds(null));
        double Of(string name) => chances[catalogue.Find(name)!.Number];
        Assert.Equal(0.25, Of("damp:resistive"), 1e-12);
        Assert.Equal(0.75 * alone, Of("one:resistive"), 1e-12);
        Assert.Equal(alone, Of("three:resistive"), 1e-12);
        // With nothing read the diagnosis says the same, and that nothing is wrong with all that chance is left of.
        var nothing = Diagnose(Sheet("one", "two"));
        Assert.Equal(0.25, Chance(nothing, "damp:resistive"), 1e-9);
        Assert.Equal(0.75 * alone, Chance(nothing, "two:resistive"), 1e-9);
        Assert.Equal(0.75 * Math.Pow(1 / (1 + open + cold), 3), nothing.SoundProbability, 1e-9);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(1.5)]
    public void Expected_faults_count_it_as_one(double expected)
    {
        var catalogue = new BenchUnit(Sheet("one", "two")).Catalogue;
        Assert.Equal(expected, catalogue.Chances(catalogue.Odds(expected)).Sum(), 1e-6);
    }

    /// <summary>
    /// All of one size is what they share; two sizes it cannot be. Both alike by chance have the odds of 0.0309² against 0.333 · 1.036²
    /// and must also meet within the meter's limit.
    /// </summary>
    [Fact]
    public void It_is_found_where_its_parts_read_alike_and_not_where_they_differ()
    {
        var alike = Diagnose(Sheet("one", "two"), ("first", 5), ("second", 5), ("third", 0));
        Assert.True(Chance(alike, "damp:resistive") > 0.99);
        Assert.True(Chance(alike, "one:resistive") < 0.01);
        Assert.Equal(5, alike.Faults.Single(f => f.Mode.Name == "damp:resistive").Size!.Value, 0.1);
        // Each twice, so that neither can be a slip of the pen.
        var apart = Diagnose(Sheet("one", "two"), ("first", 5), ("first", 5), ("second", 12), ("second", 12), ("third", 0));
        Assert.InRange(Chance(apart, "damp:resistive"), 0, 0.02);
        Assert.True(Chance(apart, "one:resistive") > 0.98 && Chance(apart, "two:resistive") > 0.98);
        var single = Diagnose(Sheet("one", "two"), ("first", 5), ("first", 5), ("second", 0), ("second", 0), ("third", 0));
        Assert.True(Chance(single, "damp:resistive") < 0.01 && Chance(single, "one:resistive") > 0.99);
    }

    [Fact]
    public void No_set_holds_it_beside_a_fault_of_one_of_its_parts()
    {
        var result = Diagnose(Sheet("one", "two"), ("first", 5), ("second", 5.4), ("third", 3));
        Assert.Contains(result.Hypotheses, h => h.Faults.Any(m => m.IsShared) && h.Faults.Any(m => m.Element == "three"));
        Assert.All(
            result.Hypotheses.Where(h => h.Faults.Any(m => m.IsShared)),
            h => Assert.DoesNotContain(h.Faults, m => m.Element is "one" or "two")
        );
    }

    [Fact]
    public void A_part_that_is_new_shares_it_no_more()
    {
        static TypeSheet Of(TypeSheet sheet, params UnitChange[] changes) => UnitSheet.Of(sheet, changes, []).Required;
        var three = Sheet("one", "two", "three");
        Assert.Equal(["two", "three"], Of(three, new PartRenewed("$", "one")).SharedFaults[0].Elements.AsEnumerable());
        Assert.Equal(Percent, Of(three, new PartRenewed("$", "one")).SharedFaults[0].Percent);
        Assert.Equal(0, Of(three, new PartRenewed("$", "one"), new PartRenewed("$", "two")).SharedFaults[0].Percent);
        var all = Of(three, new PartRenewed("$", "damp"));
        Assert.Equal((0.1 * Percent, 3), (all.SharedFaults[0].Percent, all.SharedFaults[0].Elements.Length));
        Assert.All(all.Elements, e => Assert.Equal(0.3, e.Percents["resistive"], 1e-12));
    }

    [Fact]
    public void A_part_of_another_kind_shares_it_no_more_and_the_last_one_takes_it_along()
    {
        var other = new SheetDraft()
            .Element("resistor", "one", "a", "b", new { ohms = 5 })
            .Element("resistor", "two", "b", "c", new { ohms = 5 });
        PartReplaced[] changes =
        [
            .. TypeSheetFile
                .Read(other.Json().ToJsonString())
                .Required.Elements.Select(e => new PartReplaced("$", new NewPart(e, ImmutableDictionary<string, string>.Empty))),
        ];
        Assert.Equal(
            ["two", "three"],
            UnitSheet.Of(Sheet("one", "two", "three"), [changes[0]], []).Required.SharedFaults[0].Elements.AsEnumerable()
        );
        Assert.Empty(UnitSheet.Of(Sheet("one", "two"), changes, []).Required.SharedFaults);
    }

    [Fact]
    public void It_is_written_back_with_what_is_mine_in_it_and_as_it_is_now()
    {
        var sheet = Sheet("one", "two", "three");
        Assert.True(JsonNode.DeepEquals(Json("one", "two", "three"), TypeSheetFile.JsonOf(sheet)));
        var renewed = UnitSheet.Of(sheet, [new PartRenewed("$", "one")], []).Required;
        var again = TypeSheetFile.Read(TypeSheetFile.Write(renewed)).Required;
        Assert.Equal(["two", "three"], again.SharedFaults[0].Elements.AsEnumerable());
        Assert.Contains("kept", TypeSheetFile.Write(renewed), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("one", "nine", "damp", "resistive", "sharedFaults[0].elements", "\"nine\" is no element")]
    [InlineData("one", "one", "damp", "resistive", "sharedFaults[0].elements", "names fewer than two parts")]
    [InlineData("one", "two", "two", "resistive", "sharedFaults[0].id", "\"two\" is used twice")]
    [InlineData("one", "two", "da=mp", "resistive", "sharedFaults[0].id", "\"da=mp\" has one of")]
    [InlineData("one", "two", "damp", "worn", "sharedFaults[0].mode", "\"worn\" is no fault mode of a joint")]
    [InlineData("one", "wire", "damp", "resistive", "sharedFaults[0].elements", "names a joint and a wire")]
    public void What_cannot_be_is_refused_with_its_place(string a, string b, string id, string mode, string path, string wrong)
    {
        var json = Json(a, b);
        json["elements"]!.AsArray().Add(JsonNode.Parse("""{ "id": "wire", "kind": "wire", "from": "a", "to": "d" }"""));
        (json["sharedFaults"]![0]!["id"], json["sharedFaults"]![0]!["mode"]) = (id, mode);
        var problems = TypeSheetFile.Read(json.ToJsonString()).Problems;
        Assert.Contains(problems, p => p.Path == $"$.{path}" && p.Wrong.StartsWith(wrong, StringComparison.Ordinal));
    }

    /// <summary>
    /// Chances before: 0.25 of it, 0.75·s³ of nothing, with s = 1/(1 + Σo) of a joint by itself. Seen with g where it is there, which is
    /// 1 − Π(1 − p) of its parts where nothing is said of it, and with 0.01 where nothing is: the ratio is 0.25·g/(0.75·s³·0.01); where it
    /// is not seen, the same of 1 − g and 0.99.
    /// </summary>
    [Theory]
    [InlineData("""{ "damp:resistive": 0.9, "one:resistive": 0.6 }""", 0.9)]
    [InlineData("""{ "one:resistive": 0.6, "two:resistive": 0.3 }""", 0.72)]
    [InlineData("""{ "one:resistive": 0.6, "one:open": 0.9 }""", 0.6)]
    public void Its_observation_is_its_own_or_that_of_its_parts(string given, double seen)
    {
        const double otherwise = 0.01;
        var json = Json("one", "two");
        json["observations"] = new JsonArray(
            new JsonObject
            {
                ["id"] = "warm",
                ["title"] = "warm",
                ["given"] = JsonNode.Parse(given),
                ["otherwise"] = otherwise,
            }
        );
        var sheet = TypeSheetFile.Read(json.ToJsonString()).Required;
        var sound = 1 / (1 + (0.005 / 0.995) + (0.03 / 0.97));
        foreach (var isSeen in new[] { true, false })
        {
            var result = Diagnoser.Run(
                new UnitModel(sheet),
                new UnitReadings(sheet.Id, sheet.SupplyVolts, null, Meter.Usual, [], [new(sheet.Observations[0], isSeen)]),
                new DiagnosisOptions()
            );
            double Of(double yes) => isSeen ? yes : 1 - yes;
            var ratio = Percent / 100 * Of(seen) / ((1 - (Percent / 100)) * Math.Pow(sound, 3) * Of(otherwise));
            Assert.Equal(1, Chance(result, "damp:resistive") / result.SoundProbability / ratio, 1e-6);
        }
    }
}
