using System.Text.Json.Nodes;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>
/// Every set of faults of a small net, added up: three resistors that may be open or shorted (no sizes), two of which may be open together; a
/// fourth that no reading taken concerns, and what it shares with the third. Expected: the sum over all sets that no part has
/// twice, each by its chance and by how likely the readings are with it.
/// </summary>
public class EnumeratedSetsTests
{
    private const double Within = 2e-3;
    private static readonly BenchUnit Unit = Net();

    private static readonly string[] All =
    [
        "one:open",
        "one:shorted",
        "two:open",
        "two:shorted",
        "three:open",
        "three:shorted",
        "aside:open",
        "damp:open",
        "age:open",
    ];

    /// <summary>By fault: the parts that it takes.</summary>
    private static string[] PartsOf(string fault) =>
        fault switch
        {
            "damp:open" => ["one", "two"],
            "age:open" => ["three", "aside"],
            _ => [fault.Split(':')[0]],
        };

    public static TheoryData<double, double, double> Readings =>
        new()
        {
            { 10, 20, 30 },
            { 0.3, 20, 30 },
            { 11.5, 18, 34 },
            { 10, 700, 30 },
            { 5, 20, 15 },
            { 1e6, 2e6, 30 },
        };

    [Theory]
    [MemberData(nameof(Readings))]
    public void Chances_are_those_of_all_sets_added_up(double first, double second, double both)
    {
        var taken = new[] { ("first", first), ("second", second), ("both", both) };
        // A wide meter, by which most sets are possible.
        var meter = new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(5, 4, 0, 0)));
        var pieces = new Pieces(Unit, [.. taken.Select(t => WireBench.Value(Unit, t.Item1, t.Item2))], meter: meter);
        var sets = Sets([], 0).Select(s => (Faults: s, Weight: Weight(pieces, s))).ToArray();
        var all = sets.Sum(s => s.Weight);
        var result = Diagnoser.Run(
            Unit.Model,
            pieces.Readings,
            new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                WrongReadingChance = 1e-3,
                MostExpanded = 400,
                Margin = 25,
            }
        );
        foreach (var fault in All)
            Assert.Equal(sets.Where(s => s.Faults.Contains(fault)).Sum(s => s.Weight) / all, WireBench.Chance(result, fault), Within);
        Assert.Equal(sets.Single(s => s.Faults.Length == 0).Weight / all, result.SoundProbability, Within);
        foreach (var (faults, weight) in sets.Where(s => s.Weight > 0.02 * all && !s.Faults.Contains("aside:open")))
        {
            var named = result.Hypotheses.Single(h => h.Faults.Select(m => m.Name).ToHashSet(StringComparer.Ordinal).SetEquals(faults));
            // Of what no reading concerns, a set says nothing.
            var quiet = sets.Where(s => s.Faults.Except(["aside:open"]).ToHashSet(StringComparer.Ordinal).SetEquals(faults))
                .Sum(s => s.Weight);
            Assert.InRange(named.Probability, (weight / all) - Within, (quiet / all) + Within);
        }
        // All sets together, on a bench that is as noted: 0.805 of all benches.
        Assert.Equal(Math.Log(0.805 * all), result.LogEvidence, 0.01);
    }

    private static double Weight(Pieces pieces, string[] faults)
    {
        var seen = faults.Where(f => f != "aside:open").Select(f => (f, 0.0)).ToArray();
        var set = pieces.Set(seen);
        var predicted = pieces.Predict(set);
        var chance = 1.0;
        foreach (var part in new[] { "one", "two", "three", "aside" })
        {
            var own = faults.FirstOrDefault(f => PartsOf(f) is [var only] && only == part);
            if (!faults.Any(f => PartsOf(f).Length > 1 && PartsOf(f).Contains(part)))
                chance *= own is null ? Sound(part) : Odds(own) * Sound(part);
        }
        foreach (var shared in new[] { "damp:open", "age:open" })
            chance *= faults.Contains(shared) ? Odds(shared) / (1 + Odds(shared)) : 1 / (1 + Odds(shared));
        return chance * Math.Exp(pieces.Judge(pieces.Spreads.Of(set, predicted)).LogLikelihood(predicted));
    }

    private static double Sound(string part) => 1 / (1 + All.Where(f => PartsOf(f) is [var only] && only == part).Sum(Odds));

    private static double Odds(string fault)
    {
        var percent = Unit.Catalogue.Find(fault)!.Percent;
        return percent / (100 - percent);
    }

    /// <summary>All sets in which no part is taken twice.</summary>
    private static IEnumerable<string[]> Sets(string[] begun, int at)
    {
        if (at == All.Length)
            return [begun];
        var without = Sets(begun, at + 1);
        return begun.SelectMany(PartsOf).Intersect(PartsOf(All[at])).Any() ? without : without.Concat(Sets([.. begun, All[at]], at + 1));
    }

    private static BenchUnit Net()
    {
        var draft = new SheetDraft();
        foreach (
            var (id, from, to, ohms) in new[]
            {
                ("one", "a", "b", 10.0),
                ("two", "b", "c", 20.0),
                ("three", "a", "c", 500.0),
                ("aside", "x", "y", 5.0),
            }
        )
            draft.Element(
                "resistor",
                id,
                from,
                to,
                new
                {
                    ohms,
                    spread = new { ohms = 0.05 },
                    faults = new Dictionary<string, double>
                    {
                        ["open"] = id == "aside" ? 20 : 6,
                        ["shorted"] =
                            id == "aside" ? 0
                            : id == "two" ? 15
                            : 8,
                        ["drifted"] = 0,
                    },
                }
            );
        draft.Reading("first", "ohms", ["a", "b"]).Reading("second", "ohms", ["b", "c"]).Reading("both", "ohms", ["a", "c"]);
        var json = draft.Json();
        JsonObject Shared(string id, double percent, params string[] elements) =>
            new()
            {
                ["id"] = id,
                ["title"] = id,
                ["elements"] = new JsonArray([.. elements.Select(e => JsonValue.Create(e))]),
                ["mode"] = "open",
                ["percent"] = percent,
            };
        json["sharedFaults"] = new JsonArray(Shared("damp", 12, "one", "two"), Shared("age", 10, "three", "aside"));
        return new BenchUnit(TypeSheetFile.Read(json.ToJsonString()).Required);
    }
}
