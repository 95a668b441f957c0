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

    /// <summary>A step with the factors of an earlier one that leaves more than this of the residual is the last with them.</summary>
    private const double Gain = 0.1;

    /// <summary>A junction's voltage that is off by more than this share of its slope voltage spoils a round.</summary>
    private const double LawTolerance = 1e-3;

    private readonly ReferenceResistance reference = new();
    private readonly JunctionLaw law = new();
    private readonly Convolution network = new();
    private readonly WaveReflection reflection = new();
    private readonly WaveLeap leap = new();
    private int ports;
    private HarmonicGrid grid = HarmonicGrid.Few;
    private double[] incident = [];
    private double[] reflected = [];
    private double[] volts = [];
    private double[] next = [];
    private double[] saved = [];
    private double[] target = [];
    private double[] amps = [];
    private double[] saturation = [];
    private double[] slope = [];
    private Complex[] currents = [];
    private readonly double[] real = new double[Spectrum.Wide];
    private readonly double[] imaginary = new double[Spectrum.Wide];
    private PeriodicStart? start;
    private bool isFresh;
    private bool isLeaping;
    private bool isFactored;
    private bool isKept;
    private double share;
    private int patience;

    /// <summary>Starts a new problem, with waves at rest or with those of another.</summary>
    public void Begin(ReadingCircuit circuit, UnitValues values, ReadOnlySpan<int> junctions, PeriodicStart? from)
    {
        (ports, grid) = (junctions.Length, HarmonicGrid.Of(circuit));
        var size = ports * N;
        if (incident.Length < size)
        {
            (incident, reflected, volts) = (new double[size], new double[size], new double[size]);
            (next, saved, target, amps) = (new double[size], new double[size], new double[size], new double[size]);
            (saturation, slope) = (new double[ports], new double[ports]);
            currents = new Complex[ports * Harmonics.Highest];
        }
        start = from;
        if (from is null)
            Array.Clear(volts, 0, size);
        else
            from.Volts.AsSpan(0, size).CopyTo(volts);
        for (var p = 0; p < ports; p++)
        {
            var j = circuit.Junctions[junctions[p]];
            (saturation[p], slope[p]) = (values.Third[j.Element], j.SlopeVolts);
        }
        (isFresh, isLeaping, isFactored, patience) = (true, false, false, PatientRounds);
    }

    /// <summary>Keeps the waves for another problem.</summary>
    public void Keep(PeriodicStart into)
    {
        volts.AsSpan(0, ports * N).CopyTo(into.Volts);
        amps.AsSpan(0, ports * N).CopyTo(into.Amps);
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
    public int Run(ReadOnlySpan<Complex> impedances, ReadOnlySpan<Complex> open, int mostRounds, double tolerance, out double residual)
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
                if (isKept)
                    (isTrial, isFactored) = (false, Undo());
                else
                    (isTrial, plain) = (Shorten(), 0);
                continue;
            }
            isFactored &= !(isTrial && isKept && residual > Gain * before);
            isLeaping |= plain >= patience && residual > Slow * before;
            if (isLeaping)
            {
                Leap(ref isReady);
                isTrial = true;
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

    private void Leap(ref bool isReady)
    {
        var size = ports * N;
        if (!isReady)
            leap.Begin(ports, reflection);
        isReady = true;
        isKept = isFactored;
        if (!isFactored)
        {
            for (var n = 0; n < size; n++)
                next[n] = saturation[n / N] / slope[n / N] * Math.Exp(volts[n] / slope[n / N]);
            leap.Factor(next.AsSpan(0, size), reference);
            isFactored = true;
        }
        incident.AsSpan(0, size).CopyTo(saved);
        leap.Take(incident.AsSpan(0, size), reflected.AsSpan(0, size), volts.AsSpan(0, size), reference);
        incident.AsSpan(0, size).CopyTo(target);
        share = 1;
    }

    /// <summary>Goes back to where a step with old factors was taken; they are of no more use.</summary>
    private bool Undo()
    {
        saved.AsSpan(0, ports * N).CopyTo(incident);
        return false;
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
            var current = amps.AsSpan(p * N, N);
            current.Clear();
            for (var q = p; q < ports; q++)
            {
                var share = 0.5 * reference.Inverse[(q * ports) + p];
                for (var n = 0; n < N; n++)
                    current[n] += share * (incident[(q * N) + n] - reflected[(q * N) + n]);
            }
            Spectrum.Forward(current, real, imaginary);
            for (var k = 0; k < Harmonics.Highest; k++)
            {
                var (place, scale) = (Spectrum.Place(k), k == 0 ? 1.0 / N : Math.Sqrt(2) / N);
                currents[(p * Harmonics.Highest) + k] = new Complex(scale * real[place], scale * imaginary[place]);
            }
        }
    }

    private void SetReflection(ReadOnlySpan<Complex> impedances, ReadOnlySpan<Complex> open)
    {
        var square = ports * ports;
        if (isFresh)
        {
            reference.Set(impedances.Slice(square, square), ports, grid == HarmonicGrid.Few);
            law.Begin(reference.Inverse, saturation.AsSpan(0, ports), slope.AsSpan(0, ports));
            SetIncident();
            isFresh = false;
        }
        reflection.Set(grid, impedances, open, ports, reference, network);
    }

    /// <summary>L⁻¹·v + Lᵀ·i of the start.</summary>
    private void SetIncident()
    {
        Array.Clear(incident, 0, ports * N);
        if (start is null)
            return;
        for (var p = 0; p < ports; p++)
        for (var q = 0; q < ports; q++)
        {
            var into = incident.AsSpan(p * N, N);
            if (q <= p)
                Harmonics.AddScaled(into, start.Volts.AsSpan(q * N, N), reference.Inverse[(p * ports) + q]);
            if (q >= p)
                Harmonics.AddScaled(into, start.Amps.AsSpan(q * N, N), reference.Factor[(q * ports) + p]);
        }
    }
}
