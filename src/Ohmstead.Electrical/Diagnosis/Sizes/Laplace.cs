using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>Laplace's method over the sizes about their best.</summary>
internal static class Laplace
{
    /// <summary>ln ∫ over sizes relative to the best: one size after another, each parabola cut to its range; those left follow its mean and variance.</summary>
    public static double LogIntegral(double[] shares, double[] gradient, double[] curvature)
    {
        var n = shares.Length;
        var (a, g) = ((double[])curvature.Clone(), (double[])gradient.Clone());
        var sum = 0.0;
        for (var k = 0; k < n; k++)
        {
            var cut = NormalLaw.Cut(shares[k], g[k], Math.Max(a[(k * n) + k], 1e-9));
            sum += cut.LogIntegral;
            for (var i = k + 1; i < n; i++)
            {
                g[i] -= a[(i * n) + k] * (cut.Mean - shares[k]);
                for (var j = k + 1; j < n; j++)
                    a[(i * n) + j] -= a[(i * n) + k] * a[(j * n) + k] * cut.Variance;
            }
        }
        // No integral over the range is above the highest point.
        return Math.Min(sum, 0);
    }

    /// <summary>Deviation of each size with the others free to trade off: the diagonal of the inverse curvature.</summary>
    public static double[] Deviations(double[] curvature, int n)
    {
        // A size that nothing fixes still lies within its range.
        var (a, inverse) = ((double[])curvature.Clone(), new double[n * n]);
        for (var k = 0; k < n; k++)
            a[(k * n) + k] += 4;
        PositiveDefinite.Invert(a, inverse, n);
        return [.. Enumerable.Range(0, n).Select(k => Math.Sqrt(inverse[(k * n) + k]))];
    }
}
