using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>The readings beside what the best set of faults expects, and those that it cannot explain.</summary>
internal sealed class Explanation
{
    public Explanation(
        Evidence evidence,
        Hypothesis best,
        SpreadModel spreads,
        ReadingRow[] rows,
        Workers workers,
        IReadOnlyDictionary<int, ProbableSlip> slips
    )
    {
        var spread = spreads.Of(best);
        var sound = rows.Select(r => r.Sound).ToArray();
        var soundSpread = spreads.Of(Members.None, sound);
        var leftOut = workers.One(w =>
        {
            using var judged = new Judge(evidence, spread, w).At(best.Predicted);
            return judged.LeftOut();
        });
        Unexplained = [.. leftOut.Order().Select(r => evidence.Taken[r].Spec.Id).Distinct(StringComparer.Ordinal)];
        // A slip whose kind is told is explained by that.
        IsExplained =
            leftOut.Count(r => !slips.TryGetValue(r, out var slip) || slip.Kind == SlipKind.Unknown) <= evidence.Taken.Length / 10;
        Readings =
        [
            .. Enumerable
                .Range(0, evidence.Taken.Length)
                .Select(r => Row(evidence, best, soundSpread, sound, r) with { IsDoubted = leftOut.Contains(r) || slips.ContainsKey(r) }),
        ];
    }

    public ImmutableArray<ExplainedReading> Readings { get; }

    public ImmutableArray<string> Unexplained { get; }

    public bool IsExplained { get; }

    private static ExplainedReading Row(Evidence evidence, Hypothesis best, Spread sound, double[] centre, int r)
    {
        var taken = evidence.Taken[r];
        var error = evidence.Set.Errors[r];
        var count = evidence.Set.Model.Parameters.Length;
        var row = sound.Slopes.AsSpan(r * count, count);
        var sigma = Math.Sqrt(Vectors.Dot(row, row) + (1.0 / 3));
        var expected = error.FromScale(best.Predicted[r]);
        var limit = Solution.OverRange(taken.Spec.Quantity);
        if (expected > limit)
            expected = double.PositiveInfinity;
        var at = taken.Outcome == Outcome.OverRange ? Math.Max(evidence.Set.OverRangeOnScale(r), centre[r]) : evidence.Measured(r);
        double? measured = taken.Outcome == Outcome.Value ? taken.Value : null;
        return new ExplainedReading(
            taken.Spec,
            measured,
            taken.Outcome == Outcome.OverRange,
            expected,
            taken.Outcome == Outcome.Jumps ? 0 : (at - centre[r] - sound.Shift[r]) / sigma
        );
    }
}
