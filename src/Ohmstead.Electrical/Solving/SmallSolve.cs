using System.Numerics;
using System.Runtime.InteropServices;

namespace Ohmstead.Electrical.Solving;

/// <summary>Small dense real equations in place.</summary>
internal static class SmallSolve
{
    /// <summary>Solves A·x = b by Gaussian elimination with row exchange; A (row by row) is destroyed, b becomes x.</summary>
    public static void InPlace(Span<double> a, Span<double> b, int n)
    {
        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
                if (Math.Abs(a[(i * n) + k]) > Math.Abs(a[(pivot * n) + k]))
                    pivot = i;
            if (a[(pivot * n) + k] == 0)
                continue;
            if (pivot != k)
            {
                for (var j = k; j < n; j++)
                    (a[(k * n) + j], a[(pivot * n) + j]) = (a[(pivot * n) + j], a[(k * n) + j]);
                (b[k], b[pivot]) = (b[pivot], b[k]);
            }
            for (var i = k + 1; i < n; i++)
            {
                var f = a[(i * n) + k] / a[(k * n) + k];
                if (f == 0)
                    continue;
                Subtract(a.Slice((i * n) + k, n - k), a.Slice((k * n) + k, n - k), f);
                b[i] -= f * b[k];
            }
        }
        for (var k = n - 1; k >= 0; k--)
        {
            var sum = b[k];
            for (var j = k + 1; j < n; j++)
                sum -= a[(k * n) + j] * b[j];
            b[k] = a[(k * n) + k] == 0 ? 0 : sum / a[(k * n) + k];
        }
    }

    /// <summary>Takes f·b from a.</summary>
    private static void Subtract(Span<double> a, ReadOnlySpan<double> b, double f)
    {
        var va = MemoryMarshal.Cast<double, Vector<double>>(a);
        var vb = MemoryMarshal.Cast<double, Vector<double>>(b);
        for (var n = 0; n < va.Length && n < vb.Length; n++)
            va[n] -= f * vb[n];
        for (var n = va.Length * Vector<double>.Count; n < a.Length; n++)
            a[n] -= f * b[n];
    }
}
