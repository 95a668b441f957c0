using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// A linear answer between ports, given by harmonics and applied to waveforms as a circular convolution over the period: harmonic by
/// harmonic, between a transform and its inverse (<see cref="Spectrum"/>).
/// </summary>
internal sealed class Convolution
{
    private const int N = Harmonics.Samples;
    private const int Wide = Spectrum.Wide;

    private int ports;
    private double[] real = [];
    private double[] imaginary = [];
    private double[] inReal = [];
    private double[] inImaginary = [];
    private double[] outReal = [];
    private double[] outImaginary = [];
    private System.Numerics.Complex[] source = [];

    /// <summary>Begins without a source; the answers are to be set anew.</summary>
    public void Begin(int portCount)
    {
        ports = portCount;
        if (source.Length < ports)
        {
            (real, imaginary) = (new double[ports * ports * Wide], new double[ports * ports * Wide]);
            (inReal, inImaginary) = (new double[ports * Wide], new double[ports * Wide]);
            (outReal, outImaginary) = (new double[Wide], new double[Wide]);
            source = new System.Numerics.Complex[ports];
        }
        Array.Clear(source, 0, ports);
    }

    /// <summary>Real parts of what port i answers to port j, by the place of the harmonic.</summary>
    public Span<double> Real(int i, int j) => real.AsSpan(((i * ports) + j) * Wide, Wide);

    /// <summary>Imaginary parts of the same.</summary>
    public Span<double> Imaginary(int i, int j) => imaginary.AsSpan(((i * ports) + j) * Wide, Wide);

    /// <summary>What port i answers, so many samples later, to one sample at port j.</summary>
    public void Kernel(int i, int j, Span<double> into) => Spectrum.Backward(Real(i, j), Imaginary(i, j), into);

    /// <summary>Sets what a port gives by itself at the supply frequency [RMS].</summary>
    public void SetSource(int port, System.Numerics.Complex phasor) => source[port] = N / Math.Sqrt(2) * phasor;

    /// <summary>Source and answer to the waveforms of all ports.</summary>
    public void Apply(ReadOnlySpan<double> input, Span<double> output)
    {
        for (var q = 0; q < ports; q++)
            Spectrum.Forward(input.Slice(q * N, N), inReal.AsSpan(q * Wide, Wide), inImaginary.AsSpan(q * Wide, Wide));
        var first = Spectrum.Place(1);
        for (var p = 0; p < ports; p++)
        {
            Answer(p);
            outReal[first] += source[p].Real;
            outImaginary[first] += source[p].Imaginary;
            Spectrum.Backward(outReal, outImaginary, output.Slice(p * N, N));
        }
    }

    private void Answer(int port)
    {
        var intoReal = Vectors(outReal);
        var intoImaginary = Vectors(outImaginary);
        for (var k = 0; k < Wide / 4; k++)
        {
            var (re, im) = (Vector256<double>.Zero, Vector256<double>.Zero);
            for (var q = 0; q < ports; q++)
            {
                var (zr, zi) = (Vectors(Real(port, q))[k], Vectors(Imaginary(port, q))[k]);
                var (wr, wi) = (Vectors(inReal.AsSpan(q * Wide, Wide))[k], Vectors(inImaginary.AsSpan(q * Wide, Wide))[k]);
                re += (zr * wr) - (zi * wi);
                im += (zr * wi) + (zi * wr);
            }
            (intoReal[k], intoImaginary[k]) = (re, im);
        }
    }

    private static Span<Vector256<double>> Vectors(Span<double> values) => MemoryMarshal.Cast<double, Vector256<double>>(values);
}
