using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>
/// The likelihood of one fault, integrated over its size along a curve of predicted readings. Between close points the
/// curve is straight and the log likelihood a parabola: its top and its integral are taken from it, so that a size that the
/// readings fix to a thousandth is not missed between two points.
/// </summary>
/// <param name="Log">ln ∫ likelihood · prior density over the share.</param>
/// <param name="BestShare">The share of the size that explains best.</param>
/// <param name="BestLog">Its log likelihood with the size's prior density.</param>
internal readonly record struct SizeIntegral(double Log, double BestShare, double BestLog)
{
    /// <summary>Straight pieces for the exact curve of an addition.</summary>
    public const int Fine = 18;

    /// <summary>Straight pieces for ranking many candidates.</summary>
    public const int Coarse = 9;

    /// <param name="steps">Straight pieces of the curve.</param>
    /// <param name="origin">Prediction to which the curve's points are added.</param>
    public static SizeIntegral Over(int steps, FaultClass c, double[][] curve, ReadOnlySpan<double> origin, Judge judge) =>
        c.IsContinuous ? OverPieces(steps, c, curve, origin, judge) : OverPoints(c, curve, origin, judge);

    private static SizeIntegral OverPoints(FaultClass c, double[][] curve, ReadOnlySpan<double> origin, Judge judge)
    {
        var (bestShare, bestLog) = (0.0, double.NegativeInfinity);
        var at = judge.Worker.Scratch(0, origin.Length);
        Span<double> logs = stackalloc double[curve.Length];
        for (var k = 0; k < curve.Length; k++)
        {
            for (var r = 0; r < origin.Length; r++)
                at[r] = origin[r] + curve[k][r];
            logs[k] = judge.LogLikelihood(at);
            if (logs[k] > bestLog)
                (bestShare, bestLog) = (c.PointShares[k], logs[k]);
        }
        return new(Vectors.LogSum(logs) - Math.Log(curve.Length), bestShare, bestLog);
    }

    private static SizeIntegral OverPieces(int steps, FaultClass c, double[][] curve, ReadOnlySpan<double> origin, Judge judge)
    {
        var (bestShare, bestLog) = (0.0, double.NegativeInfinity);
        var low = judge.Worker.Scratch(0, origin.Length);
        var high = judge.Worker.Scratch(1, origin.Length);
        var at = judge.Worker.Scratch(2, origin.Length);
        Span<double> logs = stackalloc double[steps];
        Place(c, curve, origin, 0, low);
        for (var k = 0; k < steps; k++)
        {
            Place(c, curve, origin, (k + 1) / (double)steps, high);
            var (top, curvature) = judge.TopOfLine(low, high);
            for (var r = 0; r < origin.Length; r++)
                at[r] = low[r] + (top * (high[r] - low[r]));
            var share = (k + top) / steps;
            using var judged = judge.At(at);
            var log = judged.Log + c.LogDensity(share);
            if (log > bestLog)
                (bestShare, bestLog) = (share, log);
            // Where readings are dropped the parabola is that of the others; its width is what matters here.
            var slope = top is > 0 and < 1 ? 0 : judged.SlopeOfLine(low, high);
            logs[k] = log + NormalLaw.LogIntegral(top, slope, curvature) - Math.Log(steps);
            high.CopyTo(low);
        }
        return new(Vectors.LogSum(logs), bestShare, bestLog);
    }

    private static void Place(FaultClass c, double[][] curve, ReadOnlySpan<double> origin, double share, Span<double> into)
    {
        CurveShape.At(c.PointShares, curve, share, into);
        for (var r = 0; r < origin.Length; r++)
            into[r] += origin[r];
    }
}
