using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>
/// The likelihood integrated over one or two sizes that the readings leave loose, on the curve or surface of readings that they
/// span: two resistances in series that add up to what was read lie on a bent ridge, which no parabola holds.
/// </summary>
internal static class SizeSurface
{
    /// <summary>A point of the surface this much above the fit is a better start [nat].</summary>
    private const double Above = 0.5;

    /// <summary>Deviation of a share from which a parabola is not trusted.</summary>
    private const double Loose = 0.05;

    /// <summary>Deviation of a share anywhere in its range: 1/√12.</summary>
    private const double AnyDeviation = 0.2887;

    /// <summary>Pieces of the looser size.</summary>
    private const int Pieces = 24;

    /// <summary>
    /// What the integral over the loosest sizes adds to Laplace's method [nat], 0 where every size is fixed well; and where the
    /// surface rises above the fit, the shares there. Further sizes are left free to first order in both.
    /// </summary>
    /// <param name="laplace">ln ∫ over all sizes relative to the best by Laplace's method.</param>
    public static (double Correction, double[]? Better) Over(
        Hypothesis h,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve,
        double laplace
    )
    {
        int[] loose =
        [
            .. Enumerable
                .Range(0, h.Classes.Length)
                .Where(k => h.Classes[k].IsContinuous)
                .OrderByDescending(k => h.Deviations[k])
                .ThenBy(k => k),
        ];
        if (loose.Length == 0 || h.Deviations[loose[0]] < Loose)
            return (0, null);
        var rest = loose[Math.Min(2, loose.Length)..];
        var free = evidence.Free(spread, rest.Select(k => h.Directions[k]!), AnyDeviation);
        using var judged = evidence.Judge(h.Predicted, free, worker);
        var fit = judged.Log + loose.Take(2).Sum(k => h.Classes[k].LogDensity(h.Shares[k]));
        var own = rest.Length > 0 ? LaplaceOf(h, loose[..2], judged) : laplace;
        var top =
            loose.Length == 1
                ? AlongOne(h, loose[0], free, evidence, worker, solve)
                : AcrossTwo(h, loose[0], loose[1], free, evidence, worker, solve);
        // No integral over the range is above the highest point; where it seems so the surface is rough, or the fit is not the top.
        var correction = Math.Min(Math.Min(top.Integral - fit, 0) - own, -laplace);
        if (top.Log < fit + Above)
            return (correction, null);
        using var there = evidence.Judge(top.Predicted, free, worker);
        foreach (var k in rest)
            top.Shares[k] = Math.Clamp(top.Shares[k] + there.ShareMove(h.Directions[k]!, AnyDeviation), 0, 1);
        return (correction, top.Shares);
    }

    /// <summary>An integral, and the highest point that was met.</summary>
    private readonly record struct Top(double Integral, double Log, double[] Shares, double[] Predicted);

    private static double LaplaceOf(Hypothesis h, int[] sizes, Judgement judged)
    {
        Span<double> gradient = stackalloc double[2];
        Span<double> curvature = stackalloc double[4];
        judged.Project([.. sizes.Select(k => h.Directions[k]!)], gradient, curvature);
        return SizeFit.LogIntegral([.. sizes.Select(k => h.Shares[k])], gradient.ToArray(), curvature.ToArray());
    }

    private static Top AlongOne(
        Hypothesis h,
        int k,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve
    )
    {
        var c = h.Classes[k];
        var curve = Curve(h, h.Shares, h.Predicted, k, solve);
        var none = new double[h.Predicted.Length];
        var integral = SizeIntegral.Log(SizeIntegral.Fine, c, curve, none, evidence, spread, worker, out var share, out var log);
        CurveShape.At(c.PointShares, curve, share, none);
        return new Top(integral, log, With(h.Shares, k, share), none);
    }

    private static Top AcrossTwo(
        Hypothesis h,
        int a,
        int b,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve
    )
    {
        var (outer, inner) = (h.Classes[a], h.Classes[b]);
        var across = Curve(h, h.Shares, h.Predicted, a, solve);
        var surface = across.Select((at, k) => Curve(h, With(h.Shares, a, outer.PointShares[k]), at, b, solve)).ToArray();
        var columns = inner.PointShares.Select((_, j) => surface.Select(s => s[j]).ToArray()).ToArray();
        var curve = columns.Select(_ => new double[h.Predicted.Length]).ToArray();
        var none = new double[h.Predicted.Length];
        var logs = new double[Pieces];
        var top = new Top(0, double.NegativeInfinity, [], new double[h.Predicted.Length]);
        for (var n = 0; n < Pieces; n++)
        {
            var share = (n + 0.5) / Pieces;
            for (var j = 0; j < curve.Length; j++)
                CurveShape.At(outer.PointShares, columns[j], share, curve[j]);
            var density = outer.LogDensity(share);
            logs[n] = density + SizeIntegral.Log(SizeIntegral.Fine, inner, curve, none, evidence, spread, worker, out var at, out var log);
            if (log + density <= top.Log)
                continue;
            top = top with { Log = log + density, Shares = With(With(h.Shares, a, share), b, at) };
            CurveShape.At(inner.PointShares, curve, at, top.Predicted);
        }
        return top with { Integral = Vectors.LogSum(logs) - Math.Log(Pieces) };
    }

    private static double[][] Curve(
        Hypothesis h,
        double[] shares,
        double[] from,
        int k,
        Func<double[], double[], FaultClass?, double[]> solve
    ) => [.. h.Classes[k].PointShares.Select(s => solve(With(shares, k, s), from, h.Classes[k]))];

    private static double[] With(double[] shares, int k, double share)
    {
        var with = (double[])shares.Clone();
        with[k] = share;
        return with;
    }
}
