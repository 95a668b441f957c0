using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>
/// One more fault: its odds, times the likelihood with it, its size summed over a grid, over the likelihood without it, each by the same spread;
/// beside the sound unit, and beside a fault that is there already. Every addition, estimated and solved.
/// </summary>
public class AdditionsTests
{
    [Theory]
    [InlineData(8, 0.01, false)]
    [InlineData(0.03, 0.02, false)]
    [InlineData(8, 8, false)]
    [InlineData(8, 3.1, true)]
    [InlineData(14, 0.01, true)]
    public void The_odds_of_adding_a_fault_are_those_of_the_sum_over_its_size(double whole, double second, bool isBeside)
    {
        var unit = new SheetDraft()
            .Wire("w1", "a", "b", 0.01)
            .Wire("w2", "b", "c", 0.01)
            .Wire("w3", "x", "y", 0.01)
            .Reading("whole", "ohms", ["a", "c"])
            .Reading("second", "ohms", ["b", "c"])
            .Reading("third", "ohms", ["x", "y"])
            .Observation("warm", new() { ["w1:resistive"] = 0.7, ["w3:open"] = 0.6 }, 0.2)
            .Unit();
        var symptom = new Symptom(unit.Model.Sheet.Observations[0], true);
        var pieces = new Pieces(
            unit,
            [WireBench.Value(unit, "whole", whole), WireBench.Value(unit, "second", second), WireBench.Value(unit, "third", 0.02)],
            symptoms: [symptom]
        );
        var start = isBeside ? pieces.Set(("w1:open", 0)) : Members.None;
        var h = pieces.Fitted(start);
        var known = new KnownSets();
        known.Replace(h);
        var logOdds = new Additions(pieces.Setting, known).Try(h);
        var judge = pieces.Judge(h.Spread);
        var without = judge.LogLikelihood(h.Predicted) + pieces.Evidence.Symptoms.LogLikelihood(h.Classes);
        foreach (var c in pieces.Classes)
        {
            if (!h.Members.CanAdd(c))
            {
                Assert.Equal(double.NegativeInfinity, logOdds[c.Number]);
                continue;
            }
            double Log(double share) => judge.LogLikelihood(pieces.Predict(h.Members.With(c, share)));
            double[] logs = c.HasSize ? [.. Enumerable.Range(0, 1500).Select(n => Log((n + 0.5) / 1500))] : [Log(0)];
            var most = logs.Max();
            var expected =
                most
                + Math.Log(logs.Average(l => Math.Exp(l - most)))
                + c.LogOdds
                + pieces.Evidence.Symptoms.LogLikelihood([.. h.Classes, c])
                - without;
            // What explains nothing is hardly weighed at all: it has to stay far behind.
            if (expected > -6)
                Assert.Equal(expected, logOdds[c.Number], 0.1);
            else
                Assert.True(logOdds[c.Number] < -5, c.Lead.Name);
            // What was solved is known, as it was judged.
            var found = known.All.SingleOrDefault(k => k.Key == h.Members.With(c, 0).Key);
            if (found is not null)
                Assert.Equal(logOdds[c.Number], found.LogPosterior - h.LogPosterior, 1e-9);
        }
        Assert.True(known.All.Count > 4);
    }

    /// <summary>What is not solved is estimated, by coarse pieces of its curve; a symptom counts as in what is solved.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_not_solved_is_estimated(bool isWarm)
    {
        var unit = new SheetDraft()
            .Wire("w1", "a", "b", 0.01)
            .Wire("w2", "b", "c", 0.01)
            .Reading("whole", "ohms", ["a", "c"])
            .Observation("warm", new() { ["w1:resistive"] = 0.7 }, 0.2)
            .Unit();
        var pieces = new Pieces(
            unit,
            [WireBench.Value(unit, "whole", 2)],
            options: new DiagnosisOptions { ExactAdditions = 0 },
            meter: new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(0.8, 1, 0, 0))),
            symptoms: [new(unit.Model.Sheet.Observations[0], isWarm)]
        );
        var (h, known) = (pieces.Fitted(Members.None), new KnownSets());
        Assert.Empty(h.LeftOut);
        known.Replace(h);
        var logOdds = new Additions(pieces.Setting, known).Try(h);
        Assert.Single(known.All);
        var judge = pieces.Judge(h.Spread);
        double Expected(string mode)
        {
            var c = pieces.Class(mode);
            double[] logs =
            [
                .. Enumerable.Range(0, 1500).Select(n => judge.LogLikelihood(pieces.Predict(h.Members.With(c, (n + 0.5) / 1500)))),
            ];
            return Math.Log(logs.Average(l => Math.Exp(l - judge.LogLikelihood(h.Predicted)))) + c.LogOdds;
        }
        var symptom = isWarm ? Math.Log(0.7 / 0.2) : Math.Log(0.3 / 0.8);
        Assert.Equal(Expected("w1:resistive") + symptom, logOdds[pieces.Class("w1:resistive").Number], 0.2);
        Assert.Equal(Expected("w2:resistive"), logOdds[pieces.Class("w2:resistive").Number], 0.2);
    }
}
