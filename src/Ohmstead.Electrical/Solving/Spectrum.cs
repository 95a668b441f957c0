using System.Runtime.Intrinsics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// A period of samples turned to its harmonics and back. Even and odd harmonics, and within them cosines and sines, are each a
/// quarter of the samples to a quarter of the sums: a fourth of a plain table's work, and without its branches.
/// </summary>
internal static class Spectrum
{
    private const int N = Harmonics.Samples;
    private const int Half = N / 2;
    private const int Quarter = N / 4;

    /// <summary>Numbers that a spectrum takes: the harmonics by <see cref="Place"/>, filled up with zeros to whole vectors.</summary>
    public const int Wide = Harmonics.Highest + 4;

    /// <summary>Where a harmonic is kept: the even ones, then the odd ones, then the highest.</summary>
    public static int Place(int harmonic) => harmonic == Harmonics.Highest ? Half : (harmonic / 2) + (harmonic % 2 * Quarter);

    // By sample and harmonic; those of even harmonics read the same by harmonic and sample.
    private static readonly double[] EvenCosines = Table(0, Quarter, 0, (n, m) => Math.Cos(Angle(2 * m * n)));
    private static readonly double[] EvenSines = Table(1, Quarter - 1, 0, (n, m) => -Math.Sin(Angle(2 * m * n)));
    private static readonly double[] OddCosines = Table(0, Quarter - 1, 0, (n, m) => Math.Cos(Angle(((2 * m) + 1) * n)));
    private static readonly double[] OddSines = Table(1, Quarter, 0, (n, m) => -Math.Sin(Angle(((2 * m) + 1) * n)));
    private static readonly double[] CosinesBack = Table(0, Quarter - 1, 0, (m, n) => Math.Cos(Angle(((2 * m) + 1) * n)));
    private static readonly double[] SinesBack = Table(0, Quarter - 1, 1, (m, n) => -Math.Sin(Angle(((2 * m) + 1) * n)));

    private static double Angle(int steps) => 2 * Math.PI * (steps % N) / N;

    private static double[] Table(int first, int last, int firstColumn, Func<int, int, double> f) =>
        [
            .. Enumerable
                .Range(first, last - first + 1)
                .SelectMany(row => Enumerable.Range(firstColumn, Quarter).Select(column => f(row, column))),
        ];

    /// <summary>Σ wave·exp(−2πjkn/N) of each harmonic k.</summary>
    public static void Forward(ReadOnlySpan<double> wave, Span<double> real, Span<double> imaginary)
    {
        Span<double> sums = stackalloc double[Quarter + 1];
        Span<double> differences = stackalloc double[Quarter + 1];
        (sums[0], differences[0]) = (wave[0] + wave[Half], 0);
        (sums[Quarter], differences[Quarter]) = (wave[Quarter] + wave[Quarter + Half], 0);
        var highest = sums[0] + sums[Quarter];
        for (var n = 1; n < Quarter; n++)
        {
            var (low, high) = (wave[n] + wave[n + Half], wave[Half - n] + wave[N - n]);
            (sums[n], differences[n]) = (low + high, low - high);
            highest += n % 2 == 0 ? sums[n] : -sums[n];
        }
        Multiply(sums, EvenCosines, real);
        Multiply(differences[1..Quarter], EvenSines, imaginary);
        (sums[0], differences[0]) = (0, wave[0] - wave[Half]);
        sums[Quarter] = wave[Quarter] - wave[Quarter + Half];
        for (var n = 1; n < Quarter; n++)
        {
            var (low, high) = (wave[n] - wave[n + Half], wave[Half - n] - wave[N - n]);
            (sums[n], differences[n]) = (low + high, low - high);
        }
        Multiply(differences[..Quarter], OddCosines, real[Quarter..]);
        Multiply(sums[1..], OddSines, imaginary[Quarter..]);
        real[Half..Wide].Clear();
        imaginary[Half..Wide].Clear();
        real[Half] = highest;
    }

    /// <summary>The wave of a spectrum, as <see cref="Forward"/> gives it.</summary>
    public static void Backward(ReadOnlySpan<double> real, ReadOnlySpan<double> imaginary, Span<double> wave)
    {
        Span<double> even = stackalloc double[Quarter + 1];
        Span<double> cosines = stackalloc double[2 * Quarter];
        Span<double> sines = stackalloc double[2 * Quarter];
        real[..Quarter].CopyTo(even);
        (even[0], even[Quarter]) = (0.5 * real[0], 0.5 * real[Half]);
        var middle = even[Quarter];
        for (var m = 0; m < Quarter; m++)
            middle += m % 2 == 0 ? even[m] : -even[m];
        Multiply(even, EvenCosines, cosines);
        Multiply(imaginary[1..Quarter], EvenSines, sines);
        Multiply(real.Slice(Quarter, Quarter), CosinesBack, cosines[Quarter..]);
        Multiply(imaginary.Slice(Quarter, Quarter), SinesBack, sines[Quarter..]);
        const double scale = 2.0 / N;
        Set(wave, 0, cosines[0], cosines[Quarter], scale);
        Set(wave, Quarter, middle, sines[(2 * Quarter) - 1], scale);
        for (var n = 1; n < Quarter; n++)
        {
            var (cosine, sine) = (cosines[Quarter + n], sines[Quarter + n - 1]);
            Set(wave, n, cosines[n] + sines[n], sine + cosine, scale);
            Set(wave, Half - n, cosines[n] - sines[n], sine - cosine, scale);
        }
    }

    private static void Set(Span<double> wave, int n, double even, double odd, double scale) =>
        (wave[n], wave[n + Half]) = (scale * (even + odd), scale * (even - odd));

    /// <summary>Σ factor·row over the rows of a table, a quarter of the samples wide.</summary>
    private static void Multiply(ReadOnlySpan<double> factors, ReadOnlySpan<double> table, Span<double> into)
    {
        var (a, b, c, d) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
        for (var n = 0; n < factors.Length; n++)
        {
            var by = Vector256.Create(factors[n]);
            var row = table.Slice(n * Quarter, Quarter);
            a += by * Vector256.Create(row);
            b += by * Vector256.Create(row[4..]);
            c += by * Vector256.Create(row[8..]);
            d += by * Vector256.Create(row[12..]);
        }
        a.CopyTo(into);
        b.CopyTo(into[4..]);
        c.CopyTo(into[8..]);
        d.CopyTo(into[12..]);
    }
}
