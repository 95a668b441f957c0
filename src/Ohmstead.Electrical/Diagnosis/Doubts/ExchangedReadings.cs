using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Doubts;

/// <summary>
/// Pairs of readings that were noted in each other's place. One alone is easily taken for a fault, so the whole list is judged again with
/// the two exchanged back, over every set of faults that the search found: that costs no solution.
/// </summary>
internal sealed class ExchangedReadings(Search search, Workers workers)
{
    /// <summary>Share of the wrong readings that are one of such a pair. Common practice, no source.</summary>
    internal const double Share = 0.12;

    /// <summary>Two values nearer than this are one [limits of the meter's error].</summary>
    private const double LeastApart = 3;

    /// <summary>Exchanged back it must at least come nearer to what the best set expects by so much [limits].</summary>
    private const double LeastNearer = 3;

    /// <summary>Readings that may have been exchanged, the most probable first; each with every other of its quantity.</summary>
    private const int MostLooked = 8;

    private readonly Evidence evidence = search.Evidence;
    private readonly Hypothesis best = search.Known.MaxBy(h => h.LogPosterior)!;

    /// <summary>Names both of each pair.</summary>
    /// <param name="wrong">Readings that are probably wrong, with their probabilities.</param>
    public void Find(IReadOnlyDictionary<int, double> wrong, Dictionary<int, ProbableSlip> slips)
    {
        int[] looked = [.. best.LeftOut.Concat(wrong.OrderByDescending(w => w.Value).Select(w => w.Key)).Distinct().Take(MostLooked)];
        if (looked.Length == 0)
            return;
        var pairs = looked
            .SelectMany(a =>
            {
                var partners = Partners(a);
                return partners.Select(b => (A: a, B: b, Share: Share / partners.Length));
            })
            .DistinctBy(p => (Math.Min(p.A, p.B), Math.Max(p.A, p.B)))
            .ToArray();
        var gains = new double[pairs.Length];
        var asNoted = workers.One(w => search.LogTotalBy(evidence, w));
        workers.Each(
            pairs.Length,
            (n, worker) =>
                gains[n] =
                    search.LogTotalBy(evidence.Exchanged(pairs[n].A, pairs[n].B), worker)
                    - asNoted
                    + Math.Log(evidence.Wrong.Chance * pairs[n].Share)
        );
        foreach (var n in Enumerable.Range(0, pairs.Length).Where(n => gains[n] > 0).OrderByDescending(n => gains[n]))
        {
            var (a, b, _) = pairs[n];
            if (slips.ContainsKey(a) || slips.ContainsKey(b))
                continue;
            var probability = 1 / (1 + Math.Exp(-gains[n]));
            slips[a] = Slip(a, b, probability);
            slips[b] = Slip(b, a, probability);
        }
    }

    private int[] Partners(int a) =>
        [
            .. Enumerable
                .Range(0, evidence.Taken.Length)
                .Where(b =>
                    evidence.Taken[b].Spec.Quantity == evidence.Taken[a].Spec.Quantity
                    && evidence.Taken[b].Spec.Id != evidence.Taken[a].Spec.Id
                    && evidence.Taken[b].Outcome is Outcome.Value or Outcome.OverRange
                    && Math.Abs(evidence.Measured(a) - evidence.Measured(b)) > LeastApart
                    && IsNearer(a, b)
                ),
        ];

    private bool IsNearer(int a, int b)
    {
        var expected = best.Predicted[a];
        return Math.Abs(evidence.Measured(b) - expected) + LeastNearer < Math.Abs(evidence.Measured(a) - expected);
    }

    private ProbableSlip Slip(int of, int other, double probability) =>
        new(
            evidence.Taken[of].Spec.Id,
            SlipKind.Exchanged,
            evidence.Taken[other].Spec.Id,
            evidence.Taken[other].Outcome == Outcome.Value ? evidence.Taken[other].Value : null,
            probability
        );
}
