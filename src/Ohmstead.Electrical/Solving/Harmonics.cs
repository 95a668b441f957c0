using System.Numerics;
using System.Runtime.InteropServices;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The samples and harmonics of a period, and tables of the discrete Fourier transform.
/// </summary>
internal static class Harmonics
{
    /// <summary>Samples in a period: a multiple of two vectors of doubles on every processor.</summary>
    public const int Samples = 64;

    /// <summary>The highest harmonic.</summary>
    public const int Highest = Samples / 2;

    /// <summary>cos 2πkn/Samples at [k·Samples + n].</summary>
    public static readonly double[] Cosines = Table(Math.Cos);

    /// <summary>sin 2πkn/Samples at [k·Samples + n].</summary>
    public static readonly double[] Sines = Table(Math.Sin);

    private static double[] Table(Func<double, double> f) =>
        [.. Enumerable.Range(0, (Highest + 1) * Samples).Select(i => f(2 * Math.PI * (i / Samples) * (i % Samples) / Samples))];

    /// <summary>The samples of a period of which these are the RMS phasors of the harmonics; the one at 0 is the mean.</summary>
    public static double[] Wave(ReadOnlySpan<Complex> phasors)
    {
        var wave = new double[Samples];
        Array.Fill(wave, phasors[0].Real);
        for (var k = 1; k < phasors.Length; k++)
        {
            AddScaled(wave, Cosines.AsSpan(k * Samples, Samples), Math.Sqrt(2) * phasors[k].Real);
            AddScaled(wave, Sines.AsSpan(k * Samples, Samples), -Math.Sqrt(2) * phasors[k].Imaginary);
        }
        return wave;
    }

    /// <summary>
    /// π/(2√2) times the mean of |v| of a waveform without its mean: what a meter shows that rectifies, averages and is scaled
    /// to be right for a sine. Sampled finely, so that where it crosses zero costs less than 10⁻⁴.
    /// </summary>
    /// <param name="phasors">RMS phasors of the harmonics; the one at 0 is left out.</param>
    public static double SineScaledAverage(ReadOnlySpan<Complex> phasors)
    {
        const int finer = 4;
        Span<double> wave = stackalloc double[Samples];
        var sum = 0.0;
        for (var part = 0; part < finer; part++)
        {
            wave.Clear();
            for (var k = 1; k < phasors.Length; k++)
            {
                var turned = phasors[k] * Complex.FromPolarCoordinates(1, 2 * Math.PI * k * part / (finer * Samples));
                AddScaled(wave, Cosines.AsSpan(k * Samples, Samples), turned.Real);
                AddScaled(wave, Sines.AsSpan(k * Samples, Samples), -turned.Imaginary);
            }
            foreach (var v in wave)
                sum += Math.Abs(v);
        }
        // √2 of the RMS phasors and π/(2√2) of the scale.
        return Math.PI / 2 * sum / (finer * Samples);
    }

    /// <summary>Adds scale·b to a over a period.</summary>
    public static void AddScaled(Span<double> a, ReadOnlySpan<double> b, double scale)
    {
        var va = MemoryMarshal.Cast<double, Vector<double>>(a[..Samples]);
        var vb = MemoryMarshal.Cast<double, Vector<double>>(b[..Samples]);
        var by = new Vector<double>(scale);
        for (var n = 0; n < va.Length && n < vb.Length; n++)
            va[n] += by * vb[n];
    }
}
