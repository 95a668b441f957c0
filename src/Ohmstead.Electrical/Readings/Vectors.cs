using System.Numerics;
using System.Runtime.InteropServices;

namespace Ohmstead.Electrical.Readings;

/// <summary>Sums over spans.</summary>
internal static class Vectors
{
    /// <summary>Σ a·b.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var va = MemoryMarshal.Cast<double, Vector<double>>(a);
        var vb = MemoryMarshal.Cast<double, Vector<double>>(b[..a.Length]);
        var sum = Vector<double>.Zero;
        for (var n = 0; n < va.Length && n < vb.Length; n++)
            sum += va[n] * vb[n];
        var total = Vector.Sum(sum);
        for (var n = va.Length * Vector<double>.Count; n < a.Length; n++)
            total += a[n] * b[n];
        return total;
    }

    /// <summary>a += scale·b.</summary>
    public static void AddScaled(Span<double> a, ReadOnlySpan<double> b, double scale)
    {
        var va = MemoryMarshal.Cast<double, Vector<double>>(a);
        var vb = MemoryMarshal.Cast<double, Vector<double>>(b[..a.Length]);
        var by = new Vector<double>(scale);
        for (var n = 0; n < va.Length && n < vb.Length; n++)
            va[n] += by * vb[n];
        for (var n = va.Length * Vector<double>.Count; n < a.Length; n++)
            a[n] += scale * b[n];
    }

    /// <summary>The largest difference between two lists.</summary>
    public static double LargestDifference(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var worst = 0.0;
        for (var n = 0; n < a.Length; n++)
            worst = Math.Max(worst, Math.Abs(a[n] - b[n]));
        return worst;
    }

    /// <summary>ln Σ exp.</summary>
    public static double LogSum(ReadOnlySpan<double> logs)
    {
        var most = double.NegativeInfinity;
        foreach (var v in logs)
            most = Math.Max(most, v);
        if (double.IsNegativeInfinity(most))
            return most;
        var sum = 0.0;
        foreach (var v in logs)
            sum += Math.Exp(v - most);
        return most + Math.Log(sum);
    }
}
