namespace Ohmstead.Electrical.Readings;

/// <summary>Dense symmetric positive definite matrices, row by row.</summary>
internal static class PositiveDefinite
{
    /// <summary>Inverts by Cholesky's factors; returns ln det. A pivot below 10⁻¹² is raised to it.</summary>
    public static double Invert(double[] a, double[] inverse, int n)
    {
        var l = new double[n * n];
        var logDeterminant = 0.0;
        for (var i = 0; i < n; i++)
        for (var j = 0; j <= i; j++)
        {
            var sum = a[(i * n) + j] - Vectors.Dot(l.AsSpan(i * n, j), l.AsSpan(j * n, j));
            if (i == j)
            {
                l[(i * n) + i] = Math.Sqrt(Math.Max(sum, 1e-12));
                logDeterminant += 2 * Math.Log(l[(i * n) + i]);
            }
            else
                l[(i * n) + j] = sum / l[(j * n) + j];
        }
        var m = new double[n * n];
        for (var i = 0; i < n; i++)
        {
            m[(i * n) + i] = 1 / l[(i * n) + i];
            for (var j = 0; j < i; j++)
            {
                var sum = 0.0;
                for (var k = j; k < i; k++)
                    sum -= l[(i * n) + k] * m[(k * n) + j];
                m[(i * n) + j] = sum / l[(i * n) + i];
            }
        }
        for (var k = 0; k < n; k++)
        for (var i = 0; i <= k; i++)
        {
            var f = m[(k * n) + i];
            if (f == 0)
                continue;
            for (var j = 0; j <= k; j++)
                inverse[(i * n) + j] += f * m[(k * n) + j];
        }
        return logDeterminant;
    }
}
