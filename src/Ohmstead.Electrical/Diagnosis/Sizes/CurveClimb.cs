using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>Newton's method for one size on the curve of predicted readings that it spans, and the parabola about its best.</summary>
internal static class CurveClimb
{
    private const int Rounds = 3;

    /// <summary>The curve's direction is taken over so much of the share.</summary>
    private const double Width = 0.01;

    /// <summary>No step of a share is longer.</summary>
    private const double LongestStep = 0.1;

    /// <summary>
    /// ln ∫ likelihood · prior density about one share, on the curve itself instead of its straight pieces: for a size that the readings fix
    /// so well that a piece passes it by.
    /// </summary>
    /// <param name="share">Where to begin.</param>
    public static double LogIntegral(double share, FaultClass c, double[][] curve, double[] origin, Judge judge)
    {
        var (at, best) = (new double[origin.Length], double.NegativeInfinity);
        for (var n = 0; n < Rounds; n++)
        {
            CurveShape.At(c.PointShares, curve, share, at);
            for (var r = 0; r < at.Length; r++)
                at[r] += origin[r];
            using var judged = judge.At(at);
            var (gradient, curvature) = Slopes(share, c, curve, judged);
            best = Math.Max(best, judged.Log + c.LogDensity(share) + Math.Min(NormalLaw.LogIntegral(share, gradient, curvature), 0));
            if (Step(share, gradient, curvature) is not { } to || Math.Abs(to - share) < 1e-5)
                break;
            share = to;
        }
        return best;
    }

    /// <summary>Slope and curvature of the log likelihood along the curve, where a prediction was judged.</summary>
    public static (double Gradient, double Curvature) Slopes(double share, FaultClass c, double[][] curve, Judgement judged)
    {
        var step = share > 0.5 ? -Width : Width;
        var (near, far) = (new double[curve[0].Length], new double[curve[0].Length]);
        CurveShape.At(c.PointShares, curve, share, near);
        CurveShape.At(c.PointShares, curve, share + step, far);
        for (var r = 0; r < far.Length; r++)
            far[r] = (far[r] - near[r]) / step;
        Span<double> gradient = stackalloc double[1];
        Span<double> curvature = stackalloc double[1];
        judged.Project([far], gradient, curvature);
        return (gradient[0], curvature[0]);
    }

    /// <summary>Where Newton's step leads; null where the readings say nothing of the size.</summary>
    public static double? Step(double share, double gradient, double curvature) =>
        curvature < 1
            ? null
            : Math.Clamp(share + (gradient / curvature), Math.Max(0, share - LongestStep), Math.Min(1, share + LongestStep));
}
