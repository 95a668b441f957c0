using System.Numerics;

namespace Ohmstead.Electrical.Readings;

/// <summary>Sums over spans.</summary>
internal static class Vectors
{
    /// <summary>Σ a·b.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var (sum, n, width) = (Vector<double>.Zero, 0, Vector<double>.Count);
        for (; n <= a.Length - width; n += width) sum += new Vector<double>(a[n..]) * new Vector<double>(b[n..]);
        var total = Vector.Sum(sum);
        for (; n < a.Length; n++) total += a[n] * b[n];
        return total;
    }

    /// <summary>a += scale·b.</summary>
    public static void AddScaled(Span<double> a, ReadOnlySpan<double> b, double scale)
    {
        var (n, width, by) = (0, Vector<double>.Count, new Vector<double>(scale));
        for (; n <= a.Length - width; n += width) (new Vector<double>(a[n..]) + (by * new Vector<double>(b[n..]))).CopyTo(a[n..]);
        for (; n < a.Length; n++) a[n] += scale * b[n];
    }

    /// <summary>ln Σ exp.</summary>
    public static double LogSum(ReadOnlySpan<double> logs)
    {
        var most = double.NegativeInfinity;
        foreach (var v in logs) most = Math.Max(most, v);
        if (double.IsNegativeInfinity(most)) return most;
        var sum = 0.0;
        foreach (var v in logs) sum += Math.Exp(v - most);
        return most + Math.Log(sum);
    }
}
