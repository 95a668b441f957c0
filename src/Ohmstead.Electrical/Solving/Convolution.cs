using System.Numerics;

namespace Ohmstead.Electrical.Solving;

/// <summary>A linear answer between ports, given by harmonics and applied to waveforms as a circular convolution over the period.</summary>
internal sealed class Convolution
{
    private const int N = Harmonics.Samples;

    private int ports;
    private double[] kernel = [];
    private double[] source = [];
    private double[] backwards = [];

    /// <summary>Begins with no answer and no source.</summary>
    public void Begin(int portCount)
    {
        ports = portCount;
        if (source.Length < ports * N)
            (kernel, source, backwards) = (
                new double[ports * ports * N],
                new double[ports * N],
                new double[2 * ports * N]
            );
        Array.Clear(kernel, 0, ports * ports * N);
        Array.Clear(source, 0, ports * N);
    }

    /// <summary>What port i answers, so many samples later, to one sample at port j.</summary>
    public ReadOnlySpan<double> Kernel(int i, int j) => kernel.AsSpan(((i * ports) + j) * N, N);

    /// <summary>Sets the answer at a harmonic.</summary>
    /// <param name="answers">A row for each port, <paramref name="wide"/> apart.</param>
    public void Add(int harmonic, ReadOnlySpan<Complex> answers, int wide)
    {
        var weight = (harmonic is 0 or Harmonics.Highest ? 1.0 : 2.0) / N;
        for (var i = 0; i < ports; i++)
        for (var j = 0; j < ports; j++)
            Spread(kernel.AsSpan(((i * ports) + j) * N, N), harmonic, weight * answers[(i * wide) + j]);
    }

    /// <summary>Sets what a port gives by itself at the supply frequency [RMS].</summary>
    public void AddSource(int port, Complex phasor) => Spread(source.AsSpan(port * N, N), 1, Math.Sqrt(2) * phasor);

    private static void Spread(Span<double> into, int harmonic, Complex amplitude)
    {
        Harmonics.AddScaled(into, Harmonics.Cosines.AsSpan(harmonic * N, N), amplitude.Real);
        Harmonics.AddScaled(into, Harmonics.Sines.AsSpan(harmonic * N, N), -amplitude.Imaginary);
    }

    /// <summary>Source and answer to the waveforms of all ports.</summary>
    public void Apply(ReadOnlySpan<double> input, Span<double> output)
    {
        // Written twice and backwards a convolution is a running dot product: x[n − m] for m = 0… stands at N − 1 − n + m.
        for (var q = 0; q < ports; q++)
        {
            var back = backwards.AsSpan(2 * q * N, 2 * N);
            input.Slice(q * N, N).CopyTo(back);
            back[..N].Reverse();
            back[..N].CopyTo(back[N..]);
        }
        for (var p = 0; p < ports; p++)
        for (var n = 0; n < N; n++)
        {
            var sum = source[(p * N) + n];
            for (var q = 0; q < ports; q++)
                sum += Harmonics.Dot(Kernel(p, q), backwards.AsSpan((2 * q * N) + N - 1 - n, N));
            output[(p * N) + n] = sum;
        }
    }
}
