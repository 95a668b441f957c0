using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// What the linear rest sends back, (ẑ + 1)⁻¹·(ẑ − 1) of its impedances ẑ on the reference resistance, at all harmonics at once.
/// </summary>
internal sealed class WaveReflection
{
    private const int Wide = Spectrum.Wide;
    private const int Vectors = Wide / 4;

    private int ports;
    private Complex[] scaled = [];
    private Complex[] scaledOpen = [];
    private double[] real = [];
    private double[] imaginary = [];
    private Vector256<double>[] work = [];

    /// <summary>Real parts of ẑ between two ports, by the place of the harmonic.</summary>
    public ReadOnlySpan<double> Real(int i, int j) => real.AsSpan(((i * ports) + j) * Wide, Wide);

    /// <summary>Imaginary parts of the same.</summary>
    public ReadOnlySpan<double> Imaginary(int i, int j) => imaginary.AsSpan(((i * ports) + j) * Wide, Wide);

    /// <summary>The open-circuit voltage of a port on the reference resistance [√W RMS].</summary>
    public Complex Open(int port) => scaledOpen[port];

    /// <summary>Sets a network's answer to waves.</summary>
    /// <param name="impedances">At each solved harmonic, ports × ports [Ω].</param>
    /// <param name="open">Open-circuit voltages of the ports at the supply frequency [V RMS].</param>
    public void Set(
        HarmonicGrid grid,
        ReadOnlySpan<Complex> impedances,
        ReadOnlySpan<Complex> open,
        int portCount,
        ReferenceResistance reference,
        Convolution network
    )
    {
        ports = portCount;
        var square = ports * ports;
        if (scaled.Length < square * grid.Solved.Length)
            scaled = new Complex[square * grid.Solved.Length];
        if (scaledOpen.Length < ports)
        {
            scaledOpen = new Complex[ports];
            (real, imaginary, work) = (new double[square * Wide], new double[square * Wide], new Vector256<double>[2 * square]);
        }
        reference.ScaleVolts(open, scaledOpen.AsSpan(0, ports));
        for (var h = 0; h < grid.Solved.Length; h++)
        {
            var z = scaled.AsSpan(h * square, square);
            impedances.Slice(h * square, square).CopyTo(z);
            reference.ScaleOhms(z);
        }
        Between(grid, square);
        network.Begin(ports);
        for (var k = 0; k < Vectors; k++)
        {
            Load(k, square);
            Invert();
            Store(k, network);
        }
    }

    /// <summary>Impedances between the solved harmonics lie on straight lines.</summary>
    private void Between(HarmonicGrid grid, int square)
    {
        // What a capacitor leaves of a reactance has no sign to count on.
        var isInductive = grid == HarmonicGrid.Few;
        var shares = MemoryMarshal.Cast<double, Vector256<double>>(grid.Shares.AsSpan());
        for (var n = 0; n < square; n++)
        {
            var re = MemoryMarshal.Cast<double, Vector256<double>>(real.AsSpan(n * Wide, Wide));
            var im = MemoryMarshal.Cast<double, Vector256<double>>(imaginary.AsSpan(n * Wide, Wide));
            for (var k = 0; k < Vectors; k++)
            {
                (re[k], im[k]) = (Vector256<double>.Zero, Vector256<double>.Zero);
                for (var h = 0; h < grid.Solved.Length; h++)
                {
                    var z = scaled[(h * square) + n];
                    re[k] += shares[(h * Vectors) + k] * Vector256.Create(z.Real);
                    im[k] += shares[(h * Vectors) + k] * Vector256.Create(z.Imaginary);
                }
            }
            // Two samples a period have no phase: an impedance and its reflection stay each other's only if they are real.
            var last = (n * Wide) + Spectrum.Place(Harmonics.Highest);
            (real[last], imaginary[last]) = (real[last] + (isInductive ? imaginary[last] : 0), 0);
        }
    }

    private void Load(int k, int square)
    {
        for (var n = 0; n < square; n++)
        {
            work[2 * n] = Vector256.LoadUnsafe(ref real[(n * Wide) + (4 * k)]);
            work[(2 * n) + 1] = Vector256.LoadUnsafe(ref imaginary[(n * Wide) + (4 * k)]);
        }
        for (var i = 0; i < ports; i++)
            work[2 * ((i * ports) + i)] += Vector256<double>.One;
    }

    /// <summary>Inverts ẑ + 1 in place. Its real part is positive, so elimination needs no exchange of rows.</summary>
    private void Invert()
    {
        for (var k = 0; k < ports; k++)
        {
            var at = 2 * ((k * ports) + k);
            var (re, im) = (work[at], work[at + 1]);
            var scale = Vector256<double>.One / ((re * re) + (im * im));
            var (byReal, byImaginary) = (re * scale, -im * scale);
            (work[at], work[at + 1]) = (Vector256<double>.One, Vector256<double>.Zero);
            for (var j = 0; j < ports; j++)
            {
                ref var real = ref work[2 * ((k * ports) + j)];
                ref var imaginary = ref work[(2 * ((k * ports) + j)) + 1];
                (real, imaginary) = ((real * byReal) - (imaginary * byImaginary), (real * byImaginary) + (imaginary * byReal));
            }
            for (var i = 0; i < ports; i++)
                if (i != k)
                    TakeRow(i, k);
        }
    }

    private void TakeRow(int i, int k)
    {
        var at = 2 * ((i * ports) + k);
        var (byReal, byImaginary) = (work[at], work[at + 1]);
        (work[at], work[at + 1]) = (Vector256<double>.Zero, Vector256<double>.Zero);
        for (var j = 0; j < ports; j++)
        {
            var (real, imaginary) = (work[2 * ((k * ports) + j)], work[(2 * ((k * ports) + j)) + 1]);
            work[2 * ((i * ports) + j)] -= (real * byReal) - (imaginary * byImaginary);
            work[(2 * ((i * ports) + j)) + 1] -= (real * byImaginary) + (imaginary * byReal);
        }
    }

    /// <summary>(ẑ + 1)⁻¹·(ẑ − 1) = 1 − 2·(ẑ + 1)⁻¹, and the source's own wave, 2·(ẑ + 1)⁻¹·v̂.</summary>
    private void Store(int k, Convolution network)
    {
        var two = Vector256.Create(2.0);
        for (var i = 0; i < ports; i++)
        for (var j = 0; j < ports; j++)
        {
            var at = 2 * ((i * ports) + j);
            var one = i == j ? Vector256<double>.One : Vector256<double>.Zero;
            (one - (two * work[at])).CopyTo(network.Real(i, j)[(4 * k)..]);
            (-two * work[at + 1]).CopyTo(network.Imaginary(i, j)[(4 * k)..]);
        }
        var first = Spectrum.Place(1);
        if (first / 4 != k)
            return;
        for (var i = 0; i < ports; i++)
        {
            var sum = Complex.Zero;
            for (var j = 0; j < ports; j++)
            {
                var at = 2 * ((i * ports) + j);
                sum += 2 * new Complex(work[at][first % 4], work[at + 1][first % 4]) * scaledOpen[j];
            }
            network.SetSource(i, sum);
        }
    }
}
