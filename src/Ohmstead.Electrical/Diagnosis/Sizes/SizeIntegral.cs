using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>
/// The likelihood of one added fault, integrated over its size along a curve of predicted readings. Between close points the
/// curve is straight and the log likelihood a parabola: its top and its integral are taken from it, so that a size that the
/// readings fix to a thousandth is not missed between two points.
/// </summary>
internal static class SizeIntegral
{
    /// <summary>Straight pieces for the exact curve of an addition.</summary>
    public const int Fine = 18;

    /// <summary>Straight pieces for ranking many candidates.</summary>
    public const int Coarse = 9;

    /// <param name="steps">Straight pieces of the curve.</param>
    /// <param name="origin">Prediction to which the curve's points are added.</param>
    /// <param name="bestShare">The share of the size that explains best.</param>
    /// <param name="bestLog">Its log likelihood with the size's prior density.</param>
    /// <returns>ln ∫ likelihood · prior density over the share.</returns>
    public static double Log(
        int steps,
        FaultClass c,
        double[][] curve,
        ReadOnlySpan<double> origin,
        Evidence evidence,
        Spread spread,
        Worker worker,
        out double bestShare,
        out double bestLog
    )
    {
        (bestShare, bestLog) = (0, double.NegativeInfinity);
        if (c.IsContinuous)
            return Continuous(steps, c, curve, origin, evidence, spread, worker, ref bestShare, ref bestLog);
        var at = worker.Scratch(0, origin.Length);
        Span<double> logs = stackalloc double[curve.Length];
        for (var k = 0; k < curve.Length; k++)
        {
            for (var r = 0; r < origin.Length; r++)
                at[r] = origin[r] + curve[k][r];
            logs[k] = evidence.LogLikelihood(at, spread, worker);
            if (logs[k] > bestLog)
                (bestShare, bestLog) = (c.PointShares[k], logs[k]);
        }
        return Vectors.LogSum(logs) - Math.Log(curve.Length);
    }

    /// <summary>
    /// The same near one share only, on the curve itself instead of its straight pieces: for a size that the readings fix so
    /// well that a piece passes it by.
    /// </summary>
    public static double LogNear(
        double share,
        FaultClass c,
        double[][] curve,
        double[] origin,
        Evidence evidence,
        Spread spread,
        Worker worker
    )
    {
        const double width = 0.01;
        const int Rounds = 3;
        var (at, side, best) = (new double[origin.Length], new double[origin.Length], double.NegativeInfinity);
        Span<double> gradient = stackalloc double[1];
        Span<double> curvature = stackalloc double[1];
        for (var n = 0; n < Rounds; n++)
        {
            var step = share > 0.5 ? -width : width;
            CurveShape.At(c.PointShares, curve, share, at);
            CurveShape.At(c.PointShares, curve, share + step, side);
            for (var r = 0; r < at.Length; r++)
                (side[r], at[r]) = ((side[r] - at[r]) / step, at[r] + origin[r]);
            using var judged = evidence.Judge(at, spread, worker);
            var log = judged.Log + c.LogDensity(share);
            judged.Project([side], gradient, curvature);
            best = Math.Max(best, log + Math.Min(NormalLaw.LogIntegral(share, gradient[0], curvature[0]), 0));
            if (curvature[0] < 1)
                break;
            var to = Math.Clamp(share + (gradient[0] / curvature[0]), Math.Max(0, share - 0.1), Math.Min(1, share + 0.1));
            if (Math.Abs(to - share) < 1e-5)
                break;
            share = to;
        }
        return best;
    }

    private static double Continuous(
        int steps,
        FaultClass c,
        double[][] curve,
        ReadOnlySpan<double> origin,
        Evidence evidence,
        Spread spread,
        Worker worker,
        ref double bestShare,
        ref double bestLog
    )
    {
        var low = worker.Scratch(0, origin.Length);
        var high = worker.Scratch(1, origin.Length);
        var at = worker.Scratch(2, origin.Length);
        Span<double> logs = stackalloc double[steps];
        Place(c, curve, origin, 0, low);
        for (var k = 0; k < steps; k++)
        {
            Place(c, curve, origin, (k + 1) / (double)steps, high);
            var (top, curvature) = evidence.TopOfLine(low, high, spread, worker);
            for (var r = 0; r < origin.Length; r++)
                at[r] = low[r] + (top * (high[r] - low[r]));
            var share = (k + top) / steps;
            using var judged = evidence.Judge(at, spread, worker);
            var log = judged.Log + c.LogDensity(share);
            if (log > bestLog)
                (bestShare, bestLog) = (share, log);
            // Where readings are dropped the parabola is that of the others; its width is what matters here.
            var slope = top is > 0 and < 1 ? 0 : judged.SlopeOfLine(low, high);
            logs[k] = log + NormalLaw.LogIntegral(top, slope, curvature) - Math.Log(steps);
            high.CopyTo(low);
        }
        return Vectors.LogSum(logs);
    }

    private static void Place(FaultClass c, double[][] curve, ReadOnlySpan<double> origin, double share, Span<double> into)
    {
        CurveShape.At(c.PointShares, curve, share, into);
        for (var r = 0; r < origin.Length; r++)
            into[r] += origin[r];
    }
}
