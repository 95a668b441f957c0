using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// The likelihood integrated over one or two sizes that the readings leave loose, on the curve or surface of readings that they
/// span: two resistances in series that add up to what was read lie on a bent ridge, which no parabola holds.
/// </summary>
internal static class SizeSurface
{
    /// <summary>Deviation of a share from which a parabola is not trusted.</summary>
    private const double Loose = 0.05;

    /// <summary>Deviation of a share anywhere in its range: 1/√12.</summary>
    private const double AnyDeviation = 0.2887;

    /// <summary>Pieces of the looser size.</summary>
    private const int Pieces = 24;

    /// <summary>
    /// What the integral over the loosest sizes adds to Laplace's method [nat]; 0 where every size is fixed well. Further sizes
    /// are left free to first order in both.
    /// </summary>
    /// <param name="laplace">ln ∫ over all sizes relative to the best by Laplace's method.</param>
    public static double Correction(
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
            return 0;
        var rest = loose.Skip(2).Select(k => h.Directions[k]!).ToArray();
        var free = evidence.Free(spread, rest, AnyDeviation);
        var fit =
            evidence.LogLikelihood(h.Predicted, free, worker)
            + loose.Take(2).Sum(k => h.Classes[k].LogDensity(h.Shares[k]));
        if (rest.Length > 0)
            laplace = LaplaceOf(h, loose[..2], free, evidence, worker);
        var integral =
            loose.Length == 1
                ? AlongOne(h, loose[0], free, evidence, worker, solve)
                : AcrossTwo(h, loose[0], loose[1], free, evidence, worker, solve);
        return integral - fit - laplace;
    }

    private static double LaplaceOf(Hypothesis h, int[] sizes, Spread spread, Evidence evidence, Worker worker)
    {
        Span<double> gradient = stackalloc double[2];
        Span<double> curvature = stackalloc double[4];
        evidence.Project([.. sizes.Select(k => h.Directions[k]!)], spread, worker, gradient, curvature);
        return SizeFit.LogIntegral([.. sizes.Select(k => h.Shares[k])], gradient.ToArray(), curvature.ToArray());
    }

    private static double AlongOne(
        Hypothesis h,
        int k,
        Spread spread,
        Evidence evidence,
        Worker worker,
        Func<double[], double[], FaultClass?, double[]> solve
    )
    {
        var curve = Curve(h, h.Shares, h.Predicted, k, solve);
        return SizeIntegral.Log(
            SizeIntegral.Fine,
            h.Classes[k],
            curve,
            new double[h.Predicted.Length],
            evidence,
            spread,
            worker,
            out _,
            out _
        );
    }

    private static double AcrossTwo(
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
        var surface = across
            .Select((at, k) => Curve(h, With(h.Shares, a, outer.PointShares[k]), at, b, solve))
            .ToArray();
        var curve = inner.PointShares.Select(_ => new double[h.Predicted.Length]).ToArray();
        var logs = new double[Pieces];
        for (var n = 0; n < Pieces; n++)
        {
            var share = (n + 0.5) / Pieces;
            for (var j = 0; j < curve.Length; j++)
                CurveShape.At(outer.PointShares, [.. surface.Select(s => s[j])], share, curve[j]);
            logs[n] =
                SizeIntegral.Log(
                    SizeIntegral.Fine,
                    inner,
                    curve,
                    new double[h.Predicted.Length],
                    evidence,
                    spread,
                    worker,
                    out _,
                    out _
                ) + outer.LogDensity(share);
        }
        return Vectors.LogSum(logs) - Math.Log(Pieces);
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
