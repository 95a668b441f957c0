using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>
/// Faults that do the same in the company of another and not alone: y and z meet in one point with a contact that is open, so that nothing is
/// read of them but the two behind each other.
/// </summary>
public class StandInTests
{
    /// <summary>By a meter that is good to a few milliohms a size between two that were solved has to be found exactly.</summary>
    private static readonly Meter Good = new(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(0.05, 0.002, 0, 0)));

    [Theory]
    [InlineData(0.52)]
    [InlineData(1.1)]
    [InlineData(4.6)]
    [InlineData(9.4)]
    [InlineData(26)]
    public void At_any_size_one_stands_in_for_the_other(double more) =>
        Assert.Equal(["y:resistive", "z:resistive"], GroupOf("z:resistive", Star("wire", 5), more, Good));

    /// <summary>A breaker's contact has 5 Ω at most, a wire 30.</summary>
    [Theory]
    [InlineData(4.6, true)]
    [InlineData(5.4, false)]
    [InlineData(9, false)]
    public void What_cannot_be_so_large_does_not(double more, bool isAlike) =>
        Assert.All(
            [Meter.Usual, Good],
            meter => Assert.Equal(isAlike ? ["y:resistive", "z:resistive"] : [], GroupOf("z:resistive", Star("breaker", 5), more, meter))
        );

    /// <summary>From two in a thousand on; y has 5 %, and of two that do the same each has its share by its odds.</summary>
    [Theory]
    [InlineData(0.0025, true)]
    [InlineData(0.0015, false)]
    public void What_is_hardly_ever_there_is_not_named_in_its_stead(double share, bool isAlike)
    {
        var odds = share / (1 - share) * 5 / 95;
        var unit = Star("wire", 100 * odds / (1 + odds));
        Assert.Equal(share, WireBench.Chance(Run(unit, 4.6, Meter.Usual), "z:resistive"), 2e-4);
        Assert.Equal(isAlike ? ["y:resistive", "z:resistive"] : [], GroupOf("z:resistive", unit, 4.6, Meter.Usual));
    }

    /// <summary>More than a wire can have is a wire and a breaker's contact; what the contact has a wire could have as well, not the other way round.</summary>
    [Fact]
    public void Alone_it_is_enough_that_one_could_have_what_the_other_is_estimated_at()
    {
        var unit = Breaker(Wire(new SheetDraft(), "w", "a", "b", 30), "k", "b", "c", 30).Reading("row", "ohms", ["a", "c"]).Unit();
        var result = Run(unit, Meter.Usual, 1e-9, WireBench.Value(unit, "row", 33));
        Assert.All(["w:resistive", "k:resistive"], f => Assert.True(WireBench.Chance(result, f) > 0.9));
        Assert.True(result.Faults.Single(f => f.Mode.Name == "w:resistive").Size > 20);
        Assert.Contains(result.Alike, g => Names(g.Select(m => m.Name)).SequenceEqual(["k:resistive", "w:resistive"]));
    }

    private static string[] GroupOf(string mode, BenchUnit unit, double more, Meter meter) =>
        Names(Run(unit, more, meter).Alike.SingleOrDefault(g => g.Any(m => m.Name == mode), []).Select(m => m.Name));

    private static string[] Names(IEnumerable<string> names) => [.. names.Order(StringComparer.Ordinal)];

    private static DiagnosisResult Run(BenchUnit unit, double more, Meter meter) =>
        Run(
            unit,
            meter,
            1e-3,
            WireBench.OL(unit, "own"),
            WireBench.OL(unit, "whole"),
            WireBench.OL(unit, "side"),
            WireBench.Value(unit, "tap", unit.ReadListed("tap") + more)
        );

    private static DiagnosisResult Run(BenchUnit unit, Meter meter, double wrongChance, params TakenReading[] taken) =>
        Diagnoser.Run(
            unit.Model,
            WireBench.Unit(unit, taken) with
            {
                Meter = meter,
            },
            new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                WrongReadingChance = wrongChance,
                Threads = 1,
            }
        );

    private static BenchUnit Star(string kind, double percent)
    {
        var draft = new SheetDraft()
            .Selector("lever", "on", "off")
            .Element(
                "switch",
                "x",
                "a",
                "m",
                new
                {
                    control = "lever",
                    closedIn = new[] { "on" },
                    faults = new Dictionary<string, double>
                    {
                        ["stuck-open"] = 5,
                        ["resistive"] = 0,
                        ["stuck-closed"] = 0,
                    },
                }
            );
        draft = Wire(draft, "y", "m", "b", 5);
        draft = kind == "wire" ? Wire(draft, "z", "p", "m", percent) : Breaker(draft, "z", "p", "m", percent);
        return draft
            .Reading("own", "ohms", ["a", "m"])
            .Reading("whole", "ohms", ["a", "b"])
            .Reading("side", "ohms", ["a", "p"])
            .Reading("tap", "ohms", ["p", "b"])
            .Unit();
    }

    private static SheetDraft Wire(SheetDraft draft, string id, string from, string to, double percent) =>
        draft.Element(
            "wire",
            id,
            from,
            to,
            new { ohms = 0.01, faults = new Dictionary<string, double> { ["open"] = 0, ["resistive"] = percent } }
        );

    private static SheetDraft Breaker(SheetDraft draft, string id, string from, string to, double percent) =>
        draft.Element(
            "breaker",
            id,
            from,
            to,
            new
            {
                ohms = 0.05,
                faults = new Dictionary<string, double>
                {
                    ["open"] = 0,
                    ["bypassed"] = 0,
                    ["resistive"] = percent,
                },
            }
        );
}
