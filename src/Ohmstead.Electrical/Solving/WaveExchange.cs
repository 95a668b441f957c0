using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Waves between conducting junctions and the linear rest: a = v + R·i runs to a junction, w = v − R·i back. The rest
/// reflects by a circular convolution over the period, a = α + s ∗ w.
/// </summary>
internal sealed class WaveExchange
{
    private const int N = Harmonics.Samples;

    /// <summary>Rounds after which Newton's method helps; usual exchanges end well before.</summary>
    private const int PatientRounds = 40;

    private int ports;
    private double[] incident = [];
    private double[] reflected = [];
    private double[] volts = [];
    private double[] source = [];
    private double[] kernel = [];
    private double[] next = [];
    private double[] jacobian = [];
    private double[] reference = [];
    private double[] saturation = [];
    private double[] slope = [];
    private Complex[] currents = [];
    private Complex[] left = [];
    private Complex[] right = [];

    /// <summary>Starts a new problem with waves at rest.</summary>
    public void Begin(ReadingCircuit circuit, UnitValues values, ReadOnlySpan<int> junctions)
    {
        ports = junctions.Length;
        if (incident.Length < ports * N)
        {
            (incident, volts, source) = (new double[ports * N], new double[ports * N], new double[ports * N]);
            (reflected, kernel) = (new double[2 * ports * N], new double[ports * ports * N]);
            (reference, saturation, slope) = (new double[ports], new double[ports], new double[ports]);
            next = new double[ports * N];
            currents = new Complex[ports * Harmonics.Highest];
            (left, right) = (new Complex[ports * ports], new Complex[ports * (ports + 1)]);
        }
        Array.Clear(incident, 0, ports * N);
        Array.Clear(volts, 0, ports * N);
        Array.Clear(reference, 0, ports);
        for (var p = 0; p < ports; p++)
        {
            var j = circuit.Junctions[junctions[p]];
            (saturation[p], slope[p]) = (values.Third[j.Element], j.SlopeVolts);
        }
    }

    /// <summary>The RMS phasor of a junction's current at a harmonic [A]; its mean for 0.</summary>
    public Complex Current(int port, int harmonic) => currents[(port * Harmonics.Highest) + harmonic];

    /// <summary>Exchanges waves until they repeat; returns the rounds.</summary>
    /// <param name="impedances">At each solved harmonic, ports × ports [Ω].</param>
    /// <param name="open">Open-circuit voltages of the ports at the supply frequency [V RMS].</param>
    public int Run(ReadOnlySpan<Complex> impedances, ReadOnlySpan<Complex> open, int mostRounds, double tolerance, out double residual)
    {
        SetReflection(impedances, open);
        residual = double.PositiveInfinity;
        var rounds = 0;
        while (rounds < mostRounds && residual > tolerance)
        {
            for (var p = 0; p < ports; p++) Reflect(p);
            var isSlow = rounds >= PatientRounds && rounds % 5 == 0;
            residual = 0;
            for (var p = 0; p < ports; p++) residual = Math.Max(residual, Receive(p, isSlow));
            if (isSlow && residual > tolerance) Leap();
            rounds++;
        }
        for (var p = 0; p < ports; p++)
        {
            Reflect(p);
            for (var n = 0; n < N; n++) next[n] = (incident[(p * N) + n] - volts[(p * N) + n]) / reference[p];
            for (var k = 0; k < Harmonics.Highest; k++) currents[(p * Harmonics.Highest) + k] = Harmonics.Of(next.AsSpan(0, N), k);
        }
        return rounds;
    }

    private void SetReflection(ReadOnlySpan<Complex> impedances, ReadOnlySpan<Complex> open)
    {
        if (reference[0] == 0) SetReference(impedances);
        Array.Clear(kernel, 0, ports * ports * N);
        Array.Clear(source, 0, ports * N);
        for (var k = 0; k <= Harmonics.Highest; k++)
        {
            var (place, share) = Harmonics.Between[k];
            for (var i = 0; i < ports; i++)
                for (var j = 0; j < ports; j++)
                {
                    var low = impedances[(((place * ports) + i) * ports) + j];
                    var high = impedances[((((place + 1) * ports) + i) * ports) + j];
                    var z = (low + (share * (high - low))) / reference[j];
                    left[(i * ports) + j] = z + (i == j ? 1 : 0);
                    right[(i * (ports + 1)) + j] = z - (i == j ? 1 : 0);
                }
            for (var i = 0; i < ports; i++) right[(i * (ports + 1)) + ports] = k == 1 ? 2 * open[i] : Complex.Zero;
            SolvePorts();
            Spread(k);
        }
    }

    /// <summary>
    /// The reference resistance of each port: the geometric mean of what it sees at the supply frequency with the other junctions
    /// open and with them closed. For one junction that is the network's own resistance.
    /// </summary>
    private void SetReference(ReadOnlySpan<Complex> impedances)
    {
        var wide = ports + 1;
        for (var i = 0; i < ports; i++)
            for (var j = 0; j < ports; j++)
            {
                left[(i * ports) + j] = impedances[(((1 * ports) + i) * ports) + j] + (i == j ? 1e-6 : 0);
                right[(i * wide) + j] = i == j ? 1 : 0;
            }
        SolvePorts();
        for (var p = 0; p < ports; p++)
        {
            var (open, closed) = (Resistance(impedances[(((1 * ports) + p) * ports) + p]), Resistance(1 / right[(p * wide) + p]));
            reference[p] = Math.Sqrt(open * closed);
        }
    }

    private static double Resistance(Complex z) => Math.Max(z.Real, 0.05 * z.Magnitude);

    /// <summary>Adds one harmonic to the convolution kernel and, at the supply frequency, to the source wave.</summary>
    private void Spread(int k)
    {
        var cosines = Harmonics.Cosines.AsSpan(k * N, N);
        var sines = Harmonics.Sines.AsSpan(k * N, N);
        var weight = (k is 0 or Harmonics.Highest ? 1.0 : 2.0) / N;
        for (var i = 0; i < ports; i++)
        {
            for (var j = 0; j < ports; j++)
            {
                var s = right[(i * (ports + 1)) + j];
                var into = kernel.AsSpan(((i * ports) + j) * N, N);
                Harmonics.AddScaled(into, cosines, weight * s.Real);
                Harmonics.AddScaled(into, sines, -weight * s.Imaginary);
            }
            if (k != 1) continue;
            var alpha = right[(i * (ports + 1)) + ports];
            Harmonics.AddScaled(source.AsSpan(i * N, N), cosines, Math.Sqrt(2) * alpha.Real);
            Harmonics.AddScaled(source.AsSpan(i * N, N), sines, -Math.Sqrt(2) * alpha.Imaginary);
        }
    }

    /// <summary>The junction's answer to its incident wave, written twice and backwards so that a convolution is a running dot product.</summary>
    private void Reflect(int p)
    {
        var (r, s, v) = (reference[p], saturation[p], slope[p]);
        var back = reflected.AsSpan(2 * p * N, 2 * N);
        for (var n = 0; n < N; n++)
        {
            var at = (p * N) + n;
            volts[at] = JunctionLaw.Volts(incident[at], r, s, v, volts[at]);
            var w = (2 * volts[at]) - incident[at];
            back[N - 1 - n] = w;
            back[(2 * N) - 1 - n] = w;
        }
    }

    /// <param name="isHeld">Leaves the incident wave as it is and keeps the difference for <see cref="Leap"/>.</param>
    private double Receive(int p, bool isHeld)
    {
        var (worst, most) = (0.0, 1e-12);
        for (var n = 0; n < N; n++)
        {
            var a = source[(p * N) + n];
            // w[n − m] for m = 0… stands at back[N − 1 − n + m].
            for (var q = 0; q < ports; q++)
                a += Harmonics.Dot(kernel.AsSpan(((p * ports) + q) * N, N), reflected.AsSpan((2 * q * N) + N - 1 - n, N));
            worst = Math.Max(worst, Math.Abs(a - incident[(p * N) + n]));
            most = Math.Max(most, Math.Abs(a));
            if (isHeld) next[(p * N) + n] = a - incident[(p * N) + n];
            else incident[(p * N) + n] = a;
        }
        return worst / most;
    }

    /// <summary>
    /// A step of Newton's method on the whole exchange, where it contracts too slowly: junctions in series that are shut
    /// together leave the node between them to their leakage. The waves' law is Lipschitz, so full steps serve.
    /// </summary>
    private void Leap()
    {
        var size = ports * N;
        if (jacobian.Length < size * size) jacobian = new double[size * size];
        for (var q = 0; q < ports; q++)
            for (var m = 0; m < N; m++)
            {
                var slopeAmps = saturation[q] / slope[q] * Math.Exp(volts[(q * N) + m] / slope[q]);
                var turn = (2 / (1 + (reference[q] * slopeAmps))) - 1;
                for (var p = 0; p < ports; p++)
                {
                    var shape = kernel.AsSpan(((p * ports) + q) * N, N);
                    for (var n = 0; n < N; n++)
                        jacobian[(((p * N) + n) * size) + (q * N) + m] = (p == q && n == m ? 1 : 0) - (shape[(n - m + N) % N] * turn);
                }
            }
        SmallSolve.InPlace(jacobian, next, size);
        for (var n = 0; n < size; n++) incident[n] += next[n];
    }

    /// <summary>Solves left · X = right for the reflection matrix and the source wave, in place.</summary>
    private void SolvePorts()
    {
        var wide = ports + 1;
        for (var k = 0; k < ports; k++)
        {
            var inverse = SymmetricSystem.Reciprocal(left[(k * ports) + k]);
            for (var i = 0; i < ports; i++)
            {
                if (i == k) continue;
                var f = left[(i * ports) + k] * inverse;
                if (f == Complex.Zero) continue;
                for (var j = k; j < ports; j++) left[(i * ports) + j] -= f * left[(k * ports) + j];
                for (var j = 0; j < wide; j++) right[(i * wide) + j] -= f * right[(k * wide) + j];
            }
            for (var j = k; j < ports; j++) left[(k * ports) + j] *= inverse;
            for (var j = 0; j < wide; j++) right[(k * wide) + j] *= inverse;
        }
    }
}
