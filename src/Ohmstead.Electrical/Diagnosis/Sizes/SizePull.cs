using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>
/// A reading that is left out as wrong pulls no size, though it may be right and the size wrong: each size that moves it
/// is tried at the value that explains it.
/// </summary>
internal static class SizePull
{
    private const int MostPulls = 8;
    private const int Secants = 4;

    /// <summary>The best place that a left-out reading leads to, or the start.</summary>
    public static SizePoint From(SizeProblem problem, SizePoint start)
    {
        if (problem.Free.Length == 0)
            return start;
        var (best, tries) = (start, 0);
        foreach (var r in LeftOut(problem, start))
        foreach (var k in problem.Free)
        {
            if (!problem.Classes[k].Moves[r] || tries++ >= MostPulls)
                continue;
            var there = Explaining(problem, best, r, k);
            if (there.Log > best.Log)
                best = there;
        }
        return best;
    }

    private static int[] LeftOut(SizeProblem problem, SizePoint at)
    {
        using var judged = problem.Judge.At(at.Predicted);
        return [.. judged.LeftOut().Where(r => problem.Judge.Evidence.Taken[r].Outcome == Outcome.Value)];
    }

    /// <summary>The place where the k-th size brings a reading to what was read, as near as its range lets it.</summary>
    private static SizePoint Explaining(SizeProblem problem, SizePoint from, int reading, int k)
    {
        var (set, predicted) = (from.Members, from.Predicted);
        for (var n = 0; n < Secants; n++)
        {
            var slope = problem.SlopeOf(reading, set, predicted, k);
            if (Math.Abs(slope) < 1)
                break;
            var share = set.Shares[k];
            var to = Math.Clamp(share + ((problem.Judge.Evidence.Measured(reading) - predicted[reading]) / slope), 0, 1);
            predicted = problem.With(set, predicted, k, to);
            set = set.At(k, to);
            if (Math.Abs(to - share) < 1e-3)
                break;
        }
        return problem.At(set, predicted);
    }
}
