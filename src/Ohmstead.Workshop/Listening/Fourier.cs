using System.Numerics;

namespace Ohmstead.Workshop.Listening;

/// <summary>The fast Fourier transform of a power of two (Cooley and Tukey).</summary>
internal static class Fourier
{
    public static void Transform(Complex[] values)
    {
        var n = values.Length;
        for (int i = 1, j = 0; i < n; i++)
        {
            var bit = n >> 1;
            for (; (j & bit) != 0; bit >>= 1)
                j ^= bit;
            j ^= bit;
            if (i < j)
                (values[i], values[j]) = (values[j], values[i]);
        }
        var turns = new Complex[Math.Max(1, n / 2)];
        for (var k = 0; k < turns.Length; k++)
            turns[k] = Complex.FromPolarCoordinates(1, -2 * Math.PI * k / n);
        for (var length = 2; length <= n; length <<= 1)
        {
            var (half, stride) = (length / 2, n / length);
            for (var start = 0; start < n; start += length)
            for (var k = 0; k < half; k++)
            {
                var (even, odd) = (values[start + k], values[start + k + half] * turns[k * stride]);
                values[start + k] = even + odd;
                values[start + k + half] = even - odd;
            }
        }
    }
}
