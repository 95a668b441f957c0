using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Waves between conducting junctions and the linear rest: a = v + R·i runs to the junctions, w = v − R·i back. The rest
/// reflects by a circular convolution over the period, a = α + s ∗ w. Both are kept in √W (<see cref="ReferenceResistance"/>), where
/// neither side makes the distance between two waves larger: a round never leads away from the solution. Where rounds lead to it
/// slowly, steps of Newton's method do the rest.
/// </summary>
internal sealed class WaveExchange
{
    private const int N = Harmonics.Samples;

    /// <summary>Rounds before the exchange is judged to be slow.</summary>
    private const int PatientRounds = 3;

    /// <summary>A round that leaves more than this of the residual is slow: Newton's method costs as much as a few rounds.</summary>
    private const double Slow = 0.5;

    /// <summary>Newton's step is halved down to this share before plain rounds take over again.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>A junction's voltage that is off by more than this share of its slope voltage spoils a round.</summary>
    private const double LawTolerance = 1e-3;

    private readonly ReferenceResistance reference = new();
    private readonly JunctionLaw law = new();
    private readonly Convolution network = new();
    private readonly WaveLeap leap = new();
    private int ports;
    private double[] incident = [];
    private double[] reflected = [];
    private double[] volts = [];
    private double[] next = [];
    private double[] saved = [];
    private double[] target = [];
    private double[] saturation = [];
    private double[] slope = [];
    private Complex[] currents = [];
    private Complex[] scaled = [];
    private Complex[] left = [];
    private Complex[] right = [];
    private bool isFresh;
    private bool isLeaping;
    private double share;
    private int patience;

    /// <summary>Starts a new problem with waves at rest.</summary>
    public void Begin(ReadingCircuit circuit, UnitValues values, ReadOnlySpan<int> junctions)
    {
        ports = junctions.Length;
        var size = ports * N;
        if (incident.Length < size)
        {
            (incident, reflected, volts) = (new double[size], new double[size], new double[size]);
            (next, saved, target) = (new double[size], new double[size], new double[size]);
            (saturation, slope) = (new double[ports], new double[ports]);
            currents = new Complex[ports * Harmonics.Highest];
            (left, right) = (new Complex[ports * ports], new Complex[ports * (ports + 1)]);
            scaled = new Complex[((Harmonics.Highest + 1) * ports * ports) + ports];
        }
        Array.Clear(incident, 0, size);
        Array.Clear(volts, 0, size);
        for (var p = 0; p < ports; p++)
        {
            var j = circuit.Junctions[junctions[p]];
            (saturation[p], slope[p]) = (values.Third[j.Element], j.SlopeVolts);
        }
        (isFresh, isLeaping, patience) = (true, false, PatientRounds);
    }

    /// <summary>The RMS phasor of a junction's current at a harmonic [A]; its mean for 0.</summary>
    public Complex Current(int port, int harmonic) => currents[(port * Harmonics.Highest) + harmonic];

    /// <summary>A junction's voltage at the samples of a period [V], in the direction in which it conducts.</summary>
    public ReadOnlySpan<double> Volts(int port) => volts.AsSpan(port * N, N);

    /// <summary>Exchanges waves until they repeat; returns the rounds.</summary>
    /// <param name="impedances">At each solved harmonic, ports × ports [Ω].</param>
    /// <param name="open">Open-circuit voltages of the ports at the supply frequency [V RMS].</param>
    /// <param name="tolerance">For the residual.</param>
    /// <param name="residual">RMS of what a round changes in the waves over the RMS of the waves, both in √W.</param>
    public int Run(
        ReadOnlySpan<Complex> impedances,
        ReadOnlySpan<Complex> open,
        int mostRounds,
        double tolerance,
        out double residual
    )
    {
        SetReflection(impedances, open);
        var (before, plain, isTrial, isReady) = (double.PositiveInfinity, 0, false, false);
        for (var rounds = 1; ; rounds++)
        {
            residual = Exchange();
            if (residual <= tolerance || rounds >= mostRounds)
            {
                SetCurrents();
                return rounds;
            }
            if (isTrial && residual > (1 - (0.1 * share)) * before)
            {
                (isTrial, plain) = (Shorten(), 0);
                continue;
            }
            isLeaping |= plain >= patience && residual > Slow * before;
            if (isLeaping)
            {
                if (!isReady)
                    leap.Begin(ports, scaled, reference);
                (isReady, isTrial) = (true, true);
                Leap();
            }
            else
            {
                next.AsSpan(0, ports * N).CopyTo(incident);
                plain++;
            }
            before = residual;
        }
    }

    /// <summary>Lets both sides answer; returns how far what the rest sends back is from what was sent, as a share of it.</summary>
    private double Exchange()
    {
        var size = ports * N;
        var unsolved = law.Reflect(incident.AsSpan(0, size), volts.AsSpan(0, size), reflected.AsSpan(0, size));
        network.Apply(reflected.AsSpan(0, size), next);
        var (off, all) = (0.0, 1e-30);
        for (var n = 0; n < size; n++)
        {
            var change = next[n] - incident[n];
            off += change * change;
            all += next[n] * next[n];
        }
        return unsolved < LawTolerance ? Math.Sqrt(off / all) : double.PositiveInfinity;
    }

    private void Leap()
    {
        var size = ports * N;
        incident.AsSpan(0, size).CopyTo(saved);
        for (var n = 0; n < size; n++)
            next[n] = saturation[n / N] / slope[n / N] * Math.Exp(volts[n] / slope[n / N]);
        leap.Take(
            incident.AsSpan(0, size),
            reflected.AsSpan(0, size),
            volts.AsSpan(0, size),
            next.AsSpan(0, size),
            reference
        );
        incident.AsSpan(0, size).CopyTo(target);
        share = 1;
    }

    /// <summary>Halves Newton's step, which leads downhill at first; false where not even a short one helped.</summary>
    private bool Shorten()
    {
        share = share > LeastShare ? 0.5 * share : 0;
        for (var n = 0; n < ports * N; n++)
            incident[n] = saved[n] + (share * (target[n] - saved[n]));
        if (share > 0)
            return true;
        (isLeaping, patience) = (false, 2 * patience);
        return false;
    }

    private void SetCurrents()
    {
        for (var p = 0; p < ports; p++)
        {
            Array.Clear(next, 0, N);
            for (var q = p; q < ports; q++)
            {
                var share = 0.5 * reference.Inverse[(q * ports) + p];
                for (var n = 0; n < N; n++)
                    next[n] += share * (incident[(q * N) + n] - reflected[(q * N) + n]);
            }
            for (var k = 0; k < Harmonics.Highest; k++)
                currents[(p * Harmonics.Highest) + k] = Harmonics.Of(next.AsSpan(0, N), k);
        }
    }

    private void SetReflection(ReadOnlySpan<Complex> impedances, ReadOnlySpan<Complex> open)
    {
        var square = ports * ports;
        if (isFresh)
        {
            reference.Set(impedances.Slice(square, square), ports);
            law.Begin(reference.Inverse, saturation.AsSpan(0, ports), slope.AsSpan(0, ports));
            isFresh = false;
        }
        var scaledOpen = scaled.AsSpan((Harmonics.Highest + 1) * square, ports);
        reference.ScaleVolts(open, scaledOpen);
        network.Begin(ports);
        for (var k = 0; k <= Harmonics.Highest; k++)
        {
            var z = scaled.AsSpan(k * square, square);
            Between(impedances, k, z);
            reference.ScaleOhms(z);
            for (var i = 0; i < ports; i++)
            {
                for (var j = 0; j < ports; j++)
                {
                    left[(i * ports) + j] = z[(i * ports) + j] + (i == j ? 1 : 0);
                    right[(i * (ports + 1)) + j] = z[(i * ports) + j] - (i == j ? 1 : 0);
                }
                right[(i * (ports + 1)) + ports] = k == 1 ? 2 * scaledOpen[i] : Complex.Zero;
            }
            SolvePorts();
            network.Add(k, right, ports + 1);
            for (var p = 0; p < ports && k == 1; p++)
                network.AddSource(p, right[(p * (ports + 1)) + ports]);
        }
    }

    private void Between(ReadOnlySpan<Complex> impedances, int k, Span<Complex> into)
    {
        var (place, share) = Harmonics.Between[k];
        var square = ports * ports;
        for (var n = 0; n < square; n++)
        {
            var (low, high) = (impedances[(place * square) + n], impedances[((place + 1) * square) + n]);
            into[n] = low + (share * (high - low));
            // Two samples a period have no phase: an impedance and its reflection stay each other's only if they are real.
            if (k == Harmonics.Highest)
                into[n] = into[n].Real + into[n].Imaginary;
        }
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
                if (i == k)
                    continue;
                var f = left[(i * ports) + k] * inverse;
                if (f == Complex.Zero)
                    continue;
                for (var j = k; j < ports; j++)
                    left[(i * ports) + j] -= f * left[(k * ports) + j];
                for (var j = 0; j < wide; j++)
                    right[(i * wide) + j] -= f * right[(k * wide) + j];
            }
            for (var j = k; j < ports; j++)
                left[(k * ports) + j] *= inverse;
            for (var j = 0; j < wide; j++)
                right[(k * wide) + j] *= inverse;
        }
    }
}
