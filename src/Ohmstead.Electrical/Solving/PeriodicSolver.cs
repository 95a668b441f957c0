using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The periodic steady state where junctions conduct. The linear rest is seen from the junctions as impedances at the
/// harmonics (0 to <see cref="Harmonics.Highest"/>); waves run between it and the junctions until they repeat
/// (<see cref="WaveExchange"/>). Cores and lamps follow at the RMS of all harmonics.
/// </summary>
internal sealed class PeriodicSolver(PhasorSolver phasor)
{
    private const int MostRounds = 300;
    private const int MostOuter = 30;
    private const double WaveTolerance = 1e-8;

    /// <summary>For the waves of the first operating point, the linear solution's, which is not theirs yet.</summary>
    private const double FirstWaveTolerance = 1e-4;

    private const double PartTolerance = 1e-6;

    /// <summary>A smaller correction of the operating point than this is felt at the supply frequency and the mean only.</summary>
    private const double SmallCorrection = 0.01;

    private readonly SymmetricSystem system = new();
    private readonly Frame[] frames = [.. Harmonics.Solved.Select(_ => new Frame())];
    private readonly WaveExchange waves = new();
    private Complex[] x = new Complex[8];
    private Complex[] impedances = [];
    private Complex[] transfers = [];
    private Complex[] open = [];
    private Complex[] openOut = [];
    private readonly Complex[] probe = new Complex[Harmonics.Highest];
    private double[] squares = [];
    private double[] step = [];
    private double[] lastStep = [];
    private double[] lastOff = [];
    private double[] jacobian = [];
    private double[] phasorLogVolts = [];
    private double[] phasorJacobian = [];
    private double[] solved = [];
    private int[] active = [];
    private bool[] isActive = [];
    private ReadingCircuit circuit = null!;
    private UnitValues values = null!;

    /// <summary>Number of conducting junctions found by <see cref="FindConducting"/>.</summary>
    public int Conducting { get; private set; }

    /// <summary>Mean of the probe voltage [V].</summary>
    public double ProbeMean { get; private set; }

    /// <summary>RMS of the probe voltage without its mean [V].</summary>
    public double ProbeRms { get; private set; }

    /// <summary>The alternating part of the probe voltage as an averaging meter scaled for a sine shows it [V].</summary>
    public double ProbeAveraged() => Harmonics.SineScaledAverage(probe);

    /// <summary>The probe voltage at the samples of a period [V].</summary>
    public double[] ProbeWave() => Harmonics.Wave(probe);

    /// <summary>The voltage of an element's junction at the samples of a period [V]; null where it does not conduct.</summary>
    public double[]? JunctionWave(int element)
    {
        for (var p = 0; p < Conducting; p++)
            if (circuit.Junctions[active[p]].Element == element)
                return waves.Volts(p).ToArray();
        return null;
    }

    /// <summary>RMS current of the source, direct part included [A].</summary>
    public double SourceAmps { get; private set; }

    /// <summary>Mean power of the source [W].</summary>
    public double SourceWatts { get; private set; }

    /// <summary>Cores and lamps, the probe, the source's current, and every junction.</summary>
    private int Outputs => phasor.Parts + 2 + circuit.Junctions.Length;

    /// <summary>Finds the junctions whose peak voltage in the phasor solution exceeds a twentieth of their slope voltage.</summary>
    public bool FindConducting(ReadingCircuit forCircuit, UnitValues withValues)
    {
        (circuit, values) = (forCircuit, withValues);
        var count = circuit.Junctions.Length;
        if (active.Length < count)
            (active, isActive) = (new int[count], new bool[count]);
        Conducting = 0;
        var rows = circuit.Elimination.Rows;
        for (var n = 0; n < count; n++)
        {
            var j = circuit.Junctions[n];
            var volts = PhasorSolver.Between(phasor.Unknowns, rows[j.A], rows[j.B], phasor.SourceVolts);
            isActive[n] = Conducts(n, volts.Magnitude * Math.Sqrt(2));
            if (isActive[n])
                active[Conducting++] = n;
        }
        return Conducting > 0;
    }

    private bool Conducts(int junction, double peakVolts) => peakVolts > 0.05 * circuit.Junctions[junction].SlopeVolts;

    /// <summary>
    /// Solves with the conducting junctions; one that the others' currents wake joins them, and it is solved again.
    /// </summary>
    /// <param name="start">Another's solution to start from, where the same junctions conduct; where it leads nowhere, waves at rest.</param>
    public Ending Solve(Network network, PeriodicStart? start)
    {
        Reserve();
        phasor.LogVolts.AsSpan(0, phasor.Parts).CopyTo(phasorLogVolts);
        var omega = circuit.Model.Sheet.OmegaRadPerSecond;
        for (var h = 0; h < Harmonics.Solved.Length; h++)
            network.Reduce(omega * Harmonics.Solved[h], frames[h]);
        var rounds = 0;
        while (true)
        {
            var near = start?.Fits(circuit, values, active.AsSpan(0, Conducting)) == true ? start : null;
            var ending = SolveWithActive(near);
            rounds += ending.Rounds;
            if (near is not null && !ending.HasConverged)
            {
                phasorLogVolts.AsSpan(0, phasor.Parts).CopyTo(phasor.LogVolts);
                phasor.SetAdmittances();
                ending = SolveWithActive(null);
                rounds += ending.Rounds;
            }
            if (!WakeOthers())
                return ending with { Rounds = rounds };
        }
    }

    private bool WakeOthers()
    {
        var before = Conducting;
        for (var n = 0; n < circuit.Junctions.Length; n++)
        {
            // Where mean and harmonics add up this is more than the peak; a junction too many costs only time.
            if (isActive[n] || !Conducts(n, Math.Sqrt(2 * squares[phasor.Parts + 2 + n])))
                continue;
            isActive[n] = true;
            active[Conducting++] = n;
        }
        return Conducting > before;
    }

    /// <summary>Keeps the last solution as a start for others.</summary>
    public void Keep(PeriodicStart into)
    {
        var parts = phasor.Parts;
        into.Begin(circuit, values, active.AsSpan(0, Conducting), parts);
        waves.Keep(into);
        for (var p = 0; p < parts; p++)
            into.Above[p] = phasor.LogVolts[p] - phasorLogVolts[p];
        for (var n = 0; n < parts * parts; n++)
            into.Learned[n] = jacobian[n] - phasorJacobian[n];
    }

    private Ending SolveWithActive(PeriodicStart? near)
    {
        Reserve();
        phasor.FillJacobian(phasorJacobian);
        phasorJacobian.AsSpan(0, phasor.Parts * phasor.Parts).CopyTo(jacobian);
        waves.Begin(circuit, values, active.AsSpan(0, Conducting), near);
        if (near is not null)
            MoveTo(near);
        var rounds = 0;
        var (waveResidual, residual, isSmall) = (0.0, 0.0, false);
        for (var outer = 0; outer < MostOuter; outer++)
        {
            for (var h = 0; h < (isSmall ? 2 : Harmonics.Solved.Length); h++)
                SolveHarmonic(h);
            var tolerance = outer == 0 ? FirstWaveTolerance : WaveTolerance;
            rounds += waves.Run(impedances, open, MostRounds, tolerance, out waveResidual);
            residual = Collect();
            if (residual < PartTolerance && outer > 0)
                break;
            isSmall = residual < SmallCorrection;
            // The first residual holds what the first waves lack: only a step far larger than that teaches anything.
            if (outer > 0)
                Learn(outer > 1 ? 0 : 100 * FirstWaveTolerance);
            Correct();
        }
        var worst = Math.Max(residual, waveResidual);
        return new(rounds, worst, worst < 1e-4);
    }

    private void MoveTo(PeriodicStart near)
    {
        var parts = phasor.Parts;
        for (var p = 0; p < parts; p++)
            phasor.LogVolts[p] = phasorLogVolts[p] + near.Above[p];
        for (var n = 0; n < parts * parts; n++)
            jacobian[n] += near.Learned[n];
        phasor.SetAdmittances();
    }

    private void Correct()
    {
        var parts = phasor.Parts;
        step.AsSpan(0, parts).CopyTo(lastOff);
        jacobian.AsSpan(0, parts * parts).CopyTo(solved);
        SmallSolve.InPlace(solved, step, parts);
        for (var p = 0; p < parts; p++)
        {
            lastStep[p] = Math.Clamp(step[p], -1, 1);
            phasor.LogVolts[p] += lastStep[p];
        }
        phasor.SetAdmittances();
    }

    /// <summary>
    /// Broyden's correction of the Jacobian by what the last step did: where junctions conduct it can be far from the phasor
    /// solution's.
    /// </summary>
    private void Learn(double leastStep)
    {
        var parts = phasor.Parts;
        var length = 0.0;
        for (var p = 0; p < parts; p++)
            length += lastStep[p] * lastStep[p];
        if (length <= leastStep * leastStep)
            return;
        for (var i = 0; i < parts; i++)
        {
            var miss = lastOff[i] - step[i];
            for (var k = 0; k < parts; k++)
                miss -= jacobian[(i * parts) + k] * lastStep[k];
            for (var k = 0; k < parts; k++)
                jacobian[(i * parts) + k] += miss * lastStep[k] / length;
        }
    }

    private void Reserve()
    {
        var (ports, solvedAt, parts) = (Conducting, Harmonics.Solved.Length, phasor.Parts);
        if (impedances.Length < ports * ports * solvedAt)
            impedances = new Complex[ports * ports * solvedAt];
        if (transfers.Length < Outputs * ports * solvedAt)
            transfers = new Complex[Outputs * ports * solvedAt];
        if (open.Length < ports)
            open = new Complex[ports];
        if (openOut.Length < Outputs)
            (openOut, squares) = (new Complex[Outputs], new double[Outputs]);
        if (step.Length < parts)
            (step, lastStep, lastOff, phasorLogVolts) = (new double[parts], new double[parts], new double[parts], new double[parts]);
        if (jacobian.Length < parts * parts)
            (jacobian, phasorJacobian, solved) = (new double[parts * parts], new double[parts * parts], new double[parts * parts]);
    }

    private bool IsLinear(int junction) => !isActive[junction];

    private void SolveHarmonic(int h)
    {
        var (frame, harmonic, ports, outputs) = (frames[h], Harmonics.Solved[h], Conducting, Outputs);
        if (x.Length < frame.Size)
            x = new Complex[frame.Size];
        var solution = x.AsSpan(0, frame.Size);
        system.Load(frame.Matrix, frame.Size);
        phasor.AddParts(system, harmonic, isLinear ??= IsLinear);
        system.Factor();
        for (var p = 0; p < ports; p++)
        {
            solution.Clear();
            var (a, b) = PortRows(p);
            if (a >= 0)
                solution[a] += 1;
            if (b >= 0)
                solution[b] -= 1;
            system.Solve(solution);
            for (var q = 0; q < ports; q++)
                impedances[(((h * ports) + q) * ports) + p] = PortVolts(solution, q, 0);
            for (var o = 0; o < outputs; o++)
                transfers[(((h * outputs) + o) * ports) + p] = Output(solution, o, 0, frame, p);
        }
        if (harmonic != 1)
            return;
        frame.Drive.AsSpan(0, frame.Size).CopyTo(x);
        phasor.AddDrive(solution, isLinear);
        for (var k = 0; k < frame.Size; k++)
            solution[k] *= phasor.SourceVolts;
        system.Solve(solution);
        for (var q = 0; q < ports; q++)
            open[q] = PortVolts(solution, q, phasor.SourceVolts);
        for (var o = 0; o < outputs; o++)
            openOut[o] = Output(solution, o, phasor.SourceVolts, frame, -1);
    }

    private Func<int, bool>? isLinear;

    /// <summary>Rows of a conducting junction, in the direction in which it conducts.</summary>
    private (int A, int B) PortRows(int port)
    {
        var j = circuit.Junctions[active[port]];
        var rows = circuit.Elimination.Rows;
        return values.Flag[j.Element] ? (rows[j.B], rows[j.A]) : (rows[j.A], rows[j.B]);
    }

    private Complex PortVolts(ReadOnlySpan<Complex> solution, int port, Complex drive)
    {
        var (a, b) = PortRows(port);
        return PhasorSolver.Between(solution, a, b, drive);
    }

    /// <summary>An output of a solution; the source's current with what port p takes from it at once.</summary>
    private Complex Output(ReadOnlySpan<Complex> solution, int output, Complex drive, Frame frame, int port)
    {
        if (output < phasor.Parts)
            return phasor.PartVolts(solution, output, drive);
        if (output == phasor.Parts)
            return Probe(circuit, solution, drive);
        if (output > phasor.Parts + 1)
        {
            var j = circuit.Junctions[output - phasor.Parts - 2];
            return PhasorSolver.Between(solution, circuit.Elimination.Rows[j.A], circuit.Elimination.Rows[j.B], drive);
        }
        var amps = phasor.SourceCurrent(solution, drive, frame, isLinear);
        if (port < 0)
            return amps;
        var (a, b) = PortRows(port);
        return amps + (b == Elimination.DriveRow ? 1 : 0) - (a == Elimination.DriveRow ? 1 : 0);
    }

    /// <summary>The probe's voltage; 0 across a gap.</summary>
    public static Complex Probe(ReadingCircuit circuit, ReadOnlySpan<Complex> solution, Complex drive)
    {
        if (circuit.ProbeA < 0)
            return Complex.Zero;
        var plan = circuit.Elimination;
        if (plan.Parts[circuit.ProbeA] != plan.Parts[circuit.ProbeB])
            return Complex.Zero;
        return PhasorSolver.Between(solution, plan.Rows[circuit.ProbeA], plan.Rows[circuit.ProbeB], drive);
    }

    /// <summary>Sums the outputs over the harmonics; returns how far the operating point is from the RMS of all harmonics.</summary>
    private double Collect()
    {
        var (ports, parts, outputs) = (Conducting, phasor.Parts, Outputs);
        Array.Clear(squares, 0, outputs);
        for (var k = 0; k < Harmonics.Highest; k++)
        {
            var (place, share) = Harmonics.Between[k];
            for (var o = 0; o < outputs; o++)
            {
                var value = k == 1 ? openOut[o] : Complex.Zero;
                for (var p = 0; p < ports; p++)
                {
                    var low = transfers[(((place * outputs) + o) * ports) + p];
                    var high = transfers[((((place + 1) * outputs) + o) * ports) + p];
                    value -= (low + (share * (high - low))) * waves.Current(p, k);
                }
                if (o == parts)
                    probe[k] = value;
                if (o == parts && k == 0)
                    ProbeMean = value.Real;
                if (o == parts + 1 && k == 1)
                    SourceWatts = phasor.SourceVolts * value.Real;
                if (k > 0 || o != parts)
                    squares[o] += (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
            }
        }
        (ProbeRms, SourceAmps) = (Math.Sqrt(squares[parts]), Math.Sqrt(squares[parts + 1]));
        var worst = 0.0;
        for (var p = 0; p < parts; p++)
        {
            step[p] = Math.Log(Math.Max(Math.Sqrt(squares[p]), 1e-9)) - phasor.LogVolts[p];
            worst = Math.Max(worst, Math.Abs(step[p]));
        }
        return worst;
    }
}
