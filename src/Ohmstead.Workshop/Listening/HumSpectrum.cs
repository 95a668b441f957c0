using System.Numerics;

namespace Ohmstead.Workshop.Listening;

/// <summary>The power of a recording over frequency, up to where hum is listened for; the mean over equal stretches of a long one.</summary>
internal sealed class HumSpectrum
{
    /// <summary>The noise beside a line is that within so many hertz.</summary>
    private const double BesideHertz = 25;

    private const double MostHertz = 800;

    /// <summary>Longer recordings are taken in stretches.</summary>
    private const double LongestSeconds = 64;
    private const double StretchSeconds = 32;

    private readonly double rate;
    private readonly int length;
    private readonly double[] window;
    private readonly int points;
    private readonly double gain;
    private readonly double squares;
    private readonly double[] power;
    private readonly List<double> waiting = [];
    private int stretches;

    public HumSpectrum(double rate, double seconds)
    {
        this.rate = rate;
        length = Math.Max(1, (int)((seconds <= LongestSeconds ? seconds : StretchSeconds) * rate) - 1);
        window = [.. Enumerable.Range(0, length).Select(n => 0.5 - (0.5 * Math.Cos(2 * Math.PI * (n + 0.5) / length)))];
        // At least four points to the width of a line, so that none falls between.
        points = (int)BitOperations.RoundUpToPowerOf2((uint)(4 * length));
        power = new double[(int)(MostHertz / Step) + 2];
        (gain, squares) = (2 / window.Sum(), window.Sum(w => w * w));
    }

    /// <summary>Hertz from point to point.</summary>
    private double Step => rate / points;

    /// <summary>Hertz that a line is wide from its middle to its edge, about.</summary>
    public double Width => rate / length;

    /// <summary>Takes samples as they come.</summary>
    public List<double> Waiting => waiting;

    /// <summary>Works off every stretch that is whole.</summary>
    public void Work()
    {
        var from = 0;
        for (; waiting.Count - from >= length; from += length)
            Add(from);
        waiting.RemoveRange(0, from);
    }

    private void Add(int from)
    {
        var values = new Complex[points];
        var mean = 0.0;
        for (var n = 0; n < length; n++)
            mean += waiting[from + n] / length;
        for (var n = 0; n < length; n++)
            values[n] = (waiting[from + n] - mean) * window[n];
        Fourier.Transform(values);
        for (var k = 0; k < power.Length; k++)
            power[k] += (values[k].Real * values[k].Real) + (values[k].Imaginary * values[k].Imaginary);
        stretches++;
    }

    /// <summary>The strongest line near a frequency: where, and its power as that of a sine of full scale.</summary>
    public (double Hertz, double Power) Peak(double hertz, double within)
    {
        var (first, last) = (
            Math.Clamp((int)Math.Ceiling((hertz - within) / Step), 1, power.Length - 2),
            Math.Clamp((int)((hertz + within) / Step), 1, power.Length - 2)
        );
        var best = Math.Min(first, last);
        for (var k = best; k <= last; k++)
            if (power[k] > power[best])
                best = k;
        // A parabola through the logarithms of three points.
        var (left, middle, right) = (Log(best - 1), Log(best), Log(best + 1));
        var bend = left - (2 * middle) + right;
        var off = bend < 0 ? Math.Clamp(0.5 * (left - right) / bend, -0.5, 0.5) : 0;
        return ((best + off) * Step, Math.Exp(middle - (0.25 * (left - right) * off)) * gain * gain / stretches);
    }

    /// <summary>
    /// The noise in 1 Hz beside a line, as a sine of full scale has it: the median of what is within 25 Hz, lines left out, over ln 2,
    /// for the power of noise at one frequency falls off as an exponential.
    /// </summary>
    public double Floor(double hertz, double supplyHertz)
    {
        var clear = (3 * Width) + 0.1;
        var beside = new List<double>();
        for (
            var k = Math.Max(1, (int)((hertz - BesideHertz) / Step));
            k <= Math.Min(power.Length - 1, (int)((hertz + BesideHertz) / Step));
            k++
        )
        {
            var off = Math.IEEERemainder(k * Step, supplyHertz);
            if (Math.Abs(off) > clear)
                beside.Add(power[k]);
        }
        beside.Sort();
        // One-sided density of power, twice that of a sine's square; of a mean over stretches the median is nearer to it.
        var shrink = stretches <= 1 ? Math.Log(2) : Math.Pow(1 - (1 / (9.0 * stretches)), 3);
        var median = beside.Count == 0 ? 0 : beside[beside.Count / 2] / stretches;
        return Math.Max(1e-30, 2 * 2 * median / shrink / (rate * squares));
    }

    /// <summary>The strongest of each of so many equal stretches up to a frequency, in dB of a sine of full scale.</summary>
    public double[] Strongest(double mostHertz, int count)
    {
        var strongest = new double[count];
        for (var n = 0; n < count; n++)
        {
            var (first, last) = (
                Math.Clamp((int)(n * mostHertz / count / Step), 1, power.Length - 1),
                Math.Clamp((int)((n + 1) * mostHertz / count / Step), 1, power.Length - 1)
            );
            var most = 0.0;
            for (var k = first; k <= last; k++)
                most = Math.Max(most, power[k]);
            strongest[n] = 10 * Math.Log10(Math.Max(most * gain * gain / Math.Max(1, stretches), 1e-30));
        }
        return strongest;
    }

    private double Log(int k) => Math.Log(Math.Max(power[k], 1e-300));
}
