using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Ranking;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Ranking;

/// <summary>
/// What a reading not yet taken shows in each scenario: a resistor of 10 Ω that varies by a tenth was read, and it in a row with one of 20 Ω is to
/// be read. The normal law of two by hand; faults by their odds.
/// </summary>
public class ScenariosTests
{
    private const double Sigma = 0.1;
    private static readonly MeterError Error = Meter.Usual.For(Quantity.Ohms);

    [Theory]
    [InlineData(10, 0)]
    [InlineData(11.2, 0)]
    [InlineData(9.1, 0)]
    // A hundred times what it should be: a slip that tells nothing of the row.
    [InlineData(1000, 1)]
    public void What_was_read_moves_and_narrows_what_is_to_be_read(double ohms, int isSlip)
    {
        var part = Assert.Single(Of(Row(0, 0, 0), ohms));
        double Slope(double more) => (Error.ToScale((10 * Math.Exp(0.1 * Sigma)) + more) - Error.ToScale(10 + more)) / 0.1;
        var (taken, own) = (Slope(0), Slope(20));
        var other = (Error.ToScale((20 * Math.Exp(0.1 * Sigma)) + 10) - Error.ToScale(30)) / 0.1;
        var known = (1 - isSlip) * taken / ((taken * taken) + (1.0 / 3));
        Assert.Equal(Error.ToScale(30) + (known * own * (Error.ToScale(ohms) - Error.ToScale(10))), part.Mean, 0.3);
        Assert.Equal((own * own) + (other * other) + (1.0 / 3) - (known * taken * own * own * (1 - isSlip)), part.Variance, 0.05);
        Assert.Equal((0, 1), (part.Scenario, Math.Round(part.Weight, 6)));
    }

    /// <summary>
    /// An open second resistor (odds of a quarter, nothing read of it) is a scenario of its own beside the sound one, with that weight; a poor
    /// first one lies along its size. What moves nothing here goes with the sound unit.
    /// </summary>
    [Fact]
    public void One_more_fault_weighs_by_its_odds_and_lies_along_its_size()
    {
        var parts = Of(Row(20, 0, 30), 10);
        var sound = parts.Single(p => p.Scenario == 0);
        // Aside cannot be seen in the row: it counts with the sound unit, at its odds of 3/7.
        Assert.Equal(1 + (3.0 / 7), sound.Weight, 1e-6);
        var open = parts.Where(p => p.Scenario != 0).ToArray();
        Assert.Equal(0.25, Assert.Single(open).Weight, 1e-6);
        Assert.True(open[0].Mean > Error.ToScale(9e6));
        Assert.Equal(sound.Variance, open[0].Variance, 1e-9);
    }

    [Fact]
    public void A_size_is_laid_out_over_its_points_each_as_wide_as_the_way_to_the_next()
    {
        var parts = Of(Row(0, 40, 0), 10);
        var sound = parts.Single(p => p.Scenario == 0);
        var drifted = parts.Where(p => p.Scenario != 0).ToArray();
        Assert.Equal(7, drifted.Length);
        double At(int k) => Error.ToScale(10 + (20 * 0.4 * Math.Pow(2.5 / 0.4, Math.Clamp(k, 0, 6) / 6.0))) - Error.ToScale(30);
        for (var k = 0; k < 7; k++)
        {
            Assert.Equal(2.0 / 3 / 7, drifted[k].Weight, 1e-6);
            Assert.Equal(sound.Mean + At(k), drifted[k].Mean, 0.02);
            Assert.Equal(sound.Variance + Math.Pow((At(k + 1) - At(k - 1)) / 4, 2), drifted[k].Variance, 0.05 * drifted[k].Variance);
        }
    }

    /// <summary>The row to be read, with what may be wrong of the second resistor and of one aside [%].</summary>
    private static BenchUnit Row(double open, double drifted, double aside)
    {
        var draft = new SheetDraft();
        foreach (var (id, from, to, ohms) in new[] { ("one", "a", "b", 10), ("two", "b", "c", 20), ("aside", "x", "y", 5) })
            draft.Element(
                "resistor",
                id,
                from,
                to,
                new
                {
                    ohms,
                    spread = new { ohms = Sigma },
                    faults = new Dictionary<string, double>
                    {
                        ["open"] =
                            id == "two" ? open
                            : id == "aside" ? aside
                            : 0,
                        ["shorted"] = 0,
                        ["drifted"] = id == "two" ? drifted : 0,
                    },
                }
            );
        return draft.Reading("one", "ohms", ["a", "b"]).Reading("row", "ohms", ["a", "c"]).Unit();
    }

    /// <summary>
    /// A shunt of a few milliohms more than nothing, by odds of one in four shorted: what was read hardly speaks of it, nothing was solved with
    /// it, and it joins the sound unit by these odds.
    /// </summary>
    [Fact]
    public void A_fault_that_was_not_tried_joins_by_its_odds()
    {
        var none = new Dictionary<string, double>
        {
            ["open"] = 0,
            ["drifted"] = 0,
            ["shorted"] = 0,
        };
        var unit = new SheetDraft()
            .Element(
                "resistor",
                "shunt",
                "a",
                "b",
                new { ohms = 0.0165, faults = new Dictionary<string, double>(none) { ["shorted"] = 20 } }
            )
            .Element("resistor", "rest", "b", "c", new { ohms = 10, faults = none })
            .Reading("one", "ohms", ["a", "c"])
            .Reading("row", "ohms", ["a", "b"])
            .Unit();
        var parts = Of(unit, unit.ReadListed("one"), new DiagnosisOptions { IsBenchAsNoted = true, ExactAdditions = 0 });
        var sound = parts.Single(p => p.Scenario == 0);
        Assert.Equal(0.25 * sound.Weight, Assert.Single(parts, p => p.Scenario != 0).Weight, 0.01 * sound.Weight);
    }

    private static List<Component> Of(BenchUnit unit, double ohms, DiagnosisOptions? options = null)
    {
        var pieces = new Pieces(unit, [WireBench.Value(unit, "one", ohms)], 0.02, options);
        var spec = unit.Model.Sheet.FindReading("row")!;
        var set = new ReadingSet(unit.Model, pieces.Library.Catalogue, [(spec, spec.State)], Meter.Usual);
        var workers = new Workers(set, 1);
        var rows = pieces.Library.Rows(set, workers, () => false);
        return new Scenarios(pieces.Evidence, pieces.Marginals(), pieces.Still, pieces.Odds, set, rows, workers).Of(0);
    }
}
