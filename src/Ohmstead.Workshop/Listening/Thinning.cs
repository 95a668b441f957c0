using System.Numerics;

namespace Ohmstead.Workshop.Listening;

/// <summary>
/// Sound at fewer samples a second: hum lies below 800 Hz. A sinc cut off at half the new rate, under Blackman's window; what it folds
/// back comes to lie above what is listened to.
/// </summary>
internal sealed class Thinning
{
    /// <summary>Enough for twelve lines of 60 Hz and the noise beside them, with room for the filter's edge.</summary>
    private const double LeastRate = 4000;

    private readonly int by;
    private readonly double[] taps;
    private readonly double[] past;
    private int at;
    private int until;

    public Thinning(int sampleRate)
    {
        by = Math.Max(1, (int)(sampleRate / LeastRate));
        Rate = sampleRate / (double)by;
        var half = by == 1 ? 0 : 5 * by;
        taps = [.. Enumerable.Range(-half, (2 * half) + 1).Select(n => Tap(n, half))];
        var all = taps.Sum();
        taps = [.. taps.Select(t => t / all)];
        // Twice over, so that a stretch of it lies in one piece.
        past = new double[2 * taps.Length];
        until = by;
    }

    /// <summary>Samples a second that come out.</summary>
    public double Rate { get; }

    public void Add(ReadOnlySpan<float> samples, int channel, int channels, List<double> to)
    {
        var length = taps.Length;
        for (var n = channel; n < samples.Length; n += channels)
        {
            past[at] = past[at + length] = samples[n];
            at = at + 1 == length ? 0 : at + 1;
            if (--until > 0)
                continue;
            until = by;
            to.Add(Dot(past.AsSpan(at, length)));
        }
    }

    /// <summary>Several products at once: most of the time that a long recording takes goes here.</summary>
    private double Dot(ReadOnlySpan<double> stretch)
    {
        var (sums, n) = (Vector<double>.Zero, 0);
        for (; n <= taps.Length - Vector<double>.Count; n += Vector<double>.Count)
            sums += new Vector<double>(taps, n) * new Vector<double>(stretch[n..]);
        var sum = Vector.Sum(sums);
        for (; n < taps.Length; n++)
            sum += taps[n] * stretch[n];
        return sum;
    }

    private double Tap(int n, int half)
    {
        if (half == 0)
            return 1;
        var (x, place) = (n / (double)by, Math.PI * n / (half + 1));
        return (n == 0 ? 1 : Math.Sin(Math.PI * x) / (Math.PI * x)) * (0.42 + (0.5 * Math.Cos(place)) + (0.08 * Math.Cos(2 * place)));
    }
}
