using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>
/// Which readings speak for a fault and which against it: the best set that holds it beside the same set without it, each
/// reading by itself, with the spread of the former and the meter's error around either prediction. What readings share is left
/// out here, so the parts need not add up to the whole; and faults that are alike are spoken for by the same readings.
/// </summary>
internal static class ForAndAgainst
{
    /// <summary>A fault less probable than this needs no speech.</summary>
    private const double LeastProbability = 0.02;

    /// <summary>Less than this is no speech [nat]: a ratio of 1.1.</summary>
    private const double LeastNats = 0.1;

    public static ImmutableArray<WeightOfEvidence> Of(Marginals marginals, Workers workers)
    {
        var weights = ImmutableArray.CreateBuilder<WeightOfEvidence>();
        foreach (var c in marginals.Classes.Where(c => marginals.ByClass[c.Number] >= LeastProbability))
        {
            var at = Array.FindIndex(marginals.Sets, h => h.Members.Contains(c));
            if (at < 0)
                continue;
            var (with, on) = (marginals.Sets[at], marginals.On[at]);
            var (evidence, spread) = (on.Evidence, on.Spreads.Of(with));
            var others = with.Members.Without(Array.IndexOf(with.Classes, c));
            var without = workers.One(w => w.Predict(others, with.Predicted));
            double[] LogsOf(double[] predicted) =>
                [.. Enumerable.Range(0, predicted.Length).Select(r => evidence.LogOfOne(r, predicted, spread))];
            var (a, b) = (LogsOf(with.Predicted), LogsOf(without));
            var said = Enumerable
                .Range(0, a.Length)
                .Select(r => new ReadingWeight(r, a[r] - b[r]))
                .Where(s => Math.Abs(s.Nats) >= LeastNats);
            ImmutableArray<ReadingWeight> ordered = [.. said.OrderByDescending(s => Math.Abs(s.Nats)).ThenBy(s => s.Place)];
            foreach (var m in c.Modes)
                weights.Add(new(m, ordered));
        }
        return weights.ToImmutable();
    }
}
