using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// The linear rest of a circuit at the harmonics that are solved: how it is seen from the conducting junctions, and what their currents do
/// to its outputs. Outputs are the cores and lamps, the probes, the source's current, and every junction, in this order.
/// </summary>
internal sealed class HarmonicResponse(PhasorSolver phasor, ConductingJunctions ports)
{
    private readonly SymmetricSystem system = new();
    private readonly List<Frame> frames = [];
    private Complex[] x = new Complex[8];
    private Complex[] impedances = [];
    private Complex[] transfers = [];
    private Complex[] open = [];
    private Complex[] openOut = [];
    private ReadingCircuit circuit = null!;

    public int Outputs => FirstJunction + circuit.Junctions.Length;

    /// <summary>The output that is the voltage of the first probes.</summary>
    public int FirstProbe => phasor.Parts;

    /// <summary>How many pairs of probes there are.</summary>
    public int Probes => circuit.Probes.Length;

    /// <summary>The output that is the source's current.</summary>
    public int Source => FirstProbe + Probes;

    /// <summary>The output that is the first junction's voltage.</summary>
    public int FirstJunction => Source + 1;

    /// <summary>The harmonics at which it is solved.</summary>
    public HarmonicGrid Grid { get; private set; } = HarmonicGrid.Few;

    /// <summary>By harmonic solved, port and port [Ω].</summary>
    public ReadOnlySpan<Complex> Impedances => impedances;

    /// <summary>By port: its voltage at the supply frequency while no junction takes current [V].</summary>
    public ReadOnlySpan<Complex> Open => open;

    /// <summary>Reduces a circuit at every harmonic solved.</summary>
    public void Begin(ReadingCircuit ofCircuit, Network network)
    {
        circuit = ofCircuit;
        Grid = HarmonicGrid.Of(circuit);
        while (frames.Count < Grid.Solved.Length)
            frames.Add(new());
        var omega = circuit.Model.Sheet.OmegaRadPerSecond;
        for (var h = 0; h < Grid.Solved.Length; h++)
            network.Reduce(omega * Grid.Solved[h], frames[h]);
    }

    /// <summary>Makes room for the ports there are.</summary>
    public void Reserve()
    {
        var (count, solvedAt) = (ports.Count, Grid.Solved.Length);
        if (impedances.Length < count * count * solvedAt)
            impedances = new Complex[count * count * solvedAt];
        if (transfers.Length < Outputs * count * solvedAt)
            transfers = new Complex[Outputs * count * solvedAt];
        if (open.Length < count)
            open = new Complex[count];
        if (openOut.Length < Outputs)
            openOut = new Complex[Outputs];
    }

    /// <summary>Solves at one of the harmonics with cores and lamps as they stand.</summary>
    public void Solve(int h)
    {
        var frame = frames[h];
        if (x.Length < frame.Size)
            x = new Complex[frame.Size];
        var solution = x.AsSpan(0, frame.Size);
        system.Load(frame.Matrix, frame.Size);
        phasor.AddParts(system, Grid.Solved[h], ports.IsLinear);
        system.Factor();
        for (var p = 0; p < ports.Count; p++)
            Drive(solution, h, p);
        if (Grid.Solved[h] == 1)
            DriveBySource(solution, frame);
    }

    private void Drive(Span<Complex> solution, int h, int port)
    {
        solution.Clear();
        var (a, b) = ports.RowsOf(port);
        if (a >= 0)
            solution[a] += 1;
        if (b >= 0)
            solution[b] -= 1;
        system.Solve(solution);
        for (var q = 0; q < ports.Count; q++)
            impedances[(((h * ports.Count) + q) * ports.Count) + port] = PortVolts(solution, q, 0);
        for (var o = 0; o < Outputs; o++)
            transfers[(((h * Outputs) + o) * ports.Count) + port] = OutputOf(solution, o, 0, frames[h], port);
    }

    private void DriveBySource(Span<Complex> solution, Frame frame)
    {
        frame.Drive.AsSpan(0, frame.Size).CopyTo(solution);
        phasor.AddDrive(solution, ports.IsLinear);
        for (var k = 0; k < frame.Size; k++)
            solution[k] *= phasor.SourceVolts;
        system.Solve(solution);
        for (var q = 0; q < ports.Count; q++)
            open[q] = PortVolts(solution, q, phasor.SourceVolts);
        for (var o = 0; o < Outputs; o++)
            openOut[o] = OutputOf(solution, o, phasor.SourceVolts, frame, -1);
    }

    /// <summary>An output at any harmonic, the responses between those solved interpolated, with the currents that the junctions take.</summary>
    public Complex Output(int output, int harmonic, WaveExchange waves)
    {
        var (place, share) = Grid.Between[harmonic];
        var (count, outputs) = (ports.Count, Outputs);
        var value = harmonic == 1 ? openOut[output] : Complex.Zero;
        for (var p = 0; p < count; p++)
        {
            var low = transfers[(((place * outputs) + output) * count) + p];
            var high = transfers[((((place + 1) * outputs) + output) * count) + p];
            value -= (low + (share * (high - low))) * waves.Current(p, harmonic);
        }
        return value;
    }

    private Complex PortVolts(ReadOnlySpan<Complex> solution, int port, Complex drive)
    {
        var (a, b) = ports.RowsOf(port);
        return PhasorSolver.Between(solution, a, b, drive);
    }

    /// <summary>An output of a solution; the source's current with what port p takes from it at once.</summary>
    private Complex OutputOf(ReadOnlySpan<Complex> solution, int output, Complex drive, Frame frame, int port)
    {
        if (output < FirstProbe)
            return phasor.PartVolts(solution, output, drive);
        if (output < Source)
            return ProbeVolts(circuit, output - FirstProbe, solution, drive);
        if (output >= FirstJunction)
        {
            var (j, rows) = (circuit.Junctions[output - FirstJunction], circuit.Elimination.Rows);
            return PhasorSolver.Between(solution, rows[j.A], rows[j.B], drive);
        }
        var amps = phasor.SourceCurrent(solution, drive, frame, ports.IsLinear);
        if (port < 0)
            return amps;
        var (a, b) = ports.RowsOf(port);
        return amps + (b == Elimination.DriveRow ? 1 : 0) - (a == Elimination.DriveRow ? 1 : 0);
    }

    /// <summary>The voltage between a pair of probes; 0 across a gap.</summary>
    public static Complex ProbeVolts(ReadingCircuit circuit, int place, ReadOnlySpan<Complex> solution, Complex drive)
    {
        var (a, b) = circuit.Probes[place];
        if (a < 0)
            return Complex.Zero;
        var plan = circuit.Elimination;
        if (plan.Parts[a] != plan.Parts[b])
            return Complex.Zero;
        return PhasorSolver.Between(solution, plan.Rows[a], plan.Rows[b], drive);
    }
}
