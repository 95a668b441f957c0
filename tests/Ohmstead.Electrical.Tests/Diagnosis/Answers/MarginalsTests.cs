using System.Text.Json.Nodes;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>
/// Faults that were not tried join with their own odds: three shunts that the reading hardly tells from shorted ones, two of which may be
/// shorted together. What was read says nothing, so every fault keeps its chance.
/// </summary>
public class MarginalsTests
{
    private static readonly BenchUnit Unit = Shunts();

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void What_was_read_and_says_nothing_leaves_all_chances_as_they_were(int exact)
    {
        var pieces = new Pieces(
            Unit,
            [WireBench.Value(Unit, "row", Unit.ReadListed("row"))],
            options: new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                ExactAdditions = exact,
            }
        );
        Assert.Empty(pieces.Still);
        var (marginals, catalogue) = (pieces.Marginals(), pieces.Library.Catalogue);
        var chances = catalogue.Chances(pieces.Odds);
        var faults = FaultTable.Of(catalogue, pieces.Classes, pieces.Still, marginals, chances);
        Assert.All(faults, f => Assert.Equal(chances[f.Mode.Number], f.Probability, 2e-3));
        // Sound: none of them, and not the two together.
        var sound = 0.8 * 0.7 * 0.9 * 0.75;
        Assert.Equal(sound, NothingWrong.Probability(catalogue, pieces.Odds, pieces.Classes, marginals, pieces.Still), 2e-3);
        Assert.Equal(1, marginals.Weights.Sum(), 1e-12);
    }

    /// <summary>By hand: a part has a fault of its own where it does not have what it shares.</summary>
    [Fact]
    public void The_chances_are_those_of_the_sheet()
    {
        var chances = Unit.Catalogue.Chances(Unit.Catalogue.Odds(null));
        double Of(string name) => chances[Unit.Catalogue.Find(name)!.Number];
        Assert.Equal(0.25, Of("damp:shorted"), 1e-9);
        Assert.Equal(0.2 * 0.75, Of("one:shorted"), 1e-9);
        Assert.Equal(0.3 * 0.75, Of("two:shorted"), 1e-9);
        Assert.Equal(0.1, Of("three:shorted"), 1e-9);
    }

    private static BenchUnit Shunts()
    {
        var draft = new SheetDraft();
        foreach (
            var (id, from, to, ohms, percent) in new[]
            {
                ("one", "a", "b", 0.0113, 20),
                ("two", "b", "c", 0.0113, 30),
                ("three", "c", "d", 0.0113, 10),
                ("rest", "d", "e", 10, 0),
            }
        )
            draft = draft.Resistor(id, from, to, ohms, ("shorted", percent));
        var json = draft.Reading("row", "ohms", ["a", "e"]).Json();
        json["sharedFaults"] = new JsonArray(
            new JsonObject
            {
                ["id"] = "damp",
                ["title"] = "Damp",
                ["elements"] = new JsonArray("one", "two"),
                ["mode"] = "shorted",
                ["percent"] = 25,
            }
        );
        return new BenchUnit(TypeSheetFile.Read(json.ToJsonString()).Required);
    }
}
