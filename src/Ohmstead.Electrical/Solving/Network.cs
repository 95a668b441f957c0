using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Runs the elimination of a circuit on the numbers of a unit: the real steps once, the complex steps once for each
/// frequency. Scratch of one thread; allocates only when a larger circuit than before arrives.
/// </summary>
internal sealed class Network
{
    private double[] g = new double[64];
    private Complex[] y = new Complex[64];
    private Complex[] coupling = new Complex[16];
    private Complex[] coreMatrix = new Complex[1];
    private Complex[] ratios = new Complex[16];
    private ReadingCircuit circuit = null!;
    private UnitValues values = null!;

    /// <summary>Loads the resistances and eliminates the nodes that touch nothing else.</summary>
    public void Begin(ReadingCircuit forCircuit, UnitValues withValues)
    {
        (circuit, values) = (forCircuit, withValues);
        var plan = circuit.Elimination;
        if (g.Length < plan.Slots)
            (g, y) = (new double[plan.Slots], new Complex[plan.Slots]);
        Array.Clear(g, 0, plan.Slots);
        for (var n = 0; n < circuit.Branches.Length; n++)
        {
            ref readonly var b = ref circuit.Branches.ItemRef(n);
            var slot = plan.BranchSlots[n];
            if (slot >= 0 && (circuit.IsDirect || !b.IsReactive))
                g[slot] += 1 / BranchValues.Ohms(circuit, b, values);
        }
        RunReal(plan.RealSteps);
    }

    /// <summary>The conductance of an edge slot after <see cref="Begin"/> [S].</summary>
    public double Conductance(int slot) => g[slot];

    private void RunReal(int[] steps)
    {
        for (var at = 0; at < steps.Length; )
        {
            var d = steps[at++];
            var edges = steps.AsSpan(at, d);
            at += d;
            var sum = 0.0;
            foreach (var e in edges)
                sum += g[e];
            var inverse = sum > 0 ? 1 / sum : 0;
            for (var j = 0; j < d; j++)
            {
                var ratio = g[edges[j]] * inverse;
                for (var k = j + 1; k < d; k++)
                    g[steps[at++]] += ratio * g[edges[k]];
            }
        }
    }

    /// <summary>Eliminates the nodes of windings and capacitors at one frequency; at 0 the cores induce nothing.</summary>
    public void Reduce(double omegaRadPerSecond, Frame frame)
    {
        var plan = circuit.Elimination;
        var cores = circuit.Model.Sheet.Cores.Length;
        Array.Clear(y, 0, plan.Slots);
        foreach (var slot in plan.AliveSlots)
            y[slot] = g[slot];
        LoadReactive(omegaRadPerSecond, cores);
        RunComplex(plan.ComplexSteps, cores);
        Collect(frame, cores, omegaRadPerSecond == 0);
    }

    private void LoadReactive(double omega, int cores)
    {
        var plan = circuit.Elimination;
        if (coupling.Length < plan.Couplings * cores)
            coupling = new Complex[plan.Couplings * cores];
        if (coreMatrix.Length < cores * cores)
            coreMatrix = new Complex[cores * cores];
        Array.Clear(coupling, 0, plan.Couplings * cores);
        Array.Clear(coreMatrix, 0, cores * cores);
        for (var n = 0; n < circuit.Branches.Length; n++)
        {
            ref readonly var b = ref circuit.Branches.ItemRef(n);
            if (!b.IsReactive)
                continue;
            if (b.Kind != BranchKind.Segment)
            {
                y[plan.BranchSlots[n]] += BranchValues.Siemens(b, values, omega);
                continue;
            }
            var (ohms, henries, turns) = BranchValues.SegmentOf(circuit, b, values);
            var admittance = SymmetricSystem.Reciprocal(new Complex(Math.Max(ohms, BranchValues.LeastOhms), omega * henries));
            y[plan.BranchSlots[n]] += admittance;
            if (omega == 0 || turns == 0)
                continue;
            var core = circuit.Model.WindingCores[b.Index];
            var c = admittance * turns;
            coupling[(plan.CouplingPlaces[b.A] * cores) + core] -= c;
            coupling[(plan.CouplingPlaces[b.B] * cores) + core] += c;
            coreMatrix[(core * cores) + core] += c * turns;
        }
        if (omega == 0)
            return;
        foreach (var b in circuit.Loops)
        {
            var (ohms, henries, turns) = BranchValues.SegmentOf(circuit, b, values);
            var core = circuit.Model.WindingCores[b.Index];
            coreMatrix[(core * cores) + core] +=
                turns * turns * SymmetricSystem.Reciprocal(new Complex(Math.Max(ohms, BranchValues.LeastOhms), omega * henries));
        }
        foreach (var w in circuit.Windings)
            if (BranchValues.TryShortedLoop(circuit, w, values, out var ohms, out var henries, out var turns))
            {
                var core = circuit.Model.WindingCores[w];
                coreMatrix[(core * cores) + core] += turns * turns * SymmetricSystem.Reciprocal(new Complex(ohms, omega * henries));
            }
    }

    private void RunComplex(int[] steps, int cores)
    {
        for (var at = 0; at < steps.Length; )
        {
            var place = steps[at++];
            var d = steps[at++];
            var around = steps.AsSpan(at, 2 * d);
            at += 2 * d;
            if (ratios.Length < d)
                ratios = new Complex[2 * d];
            var sum = Complex.Zero;
            for (var j = 0; j < d; j++)
                sum += y[around[2 * j]];
            if (sum == Complex.Zero)
            {
                at += d * (d - 1) / 2;
                continue;
            }
            var inverse = SymmetricSystem.Reciprocal(sum);
            for (var j = 0; j < d; j++)
                ratios[j] = y[around[2 * j]] * inverse;
            for (var j = 0; j < d; j++)
            for (var k = j + 1; k < d; k++)
                y[steps[at++]] += ratios[j] * y[around[2 * k]];
            for (var q = 0; q < cores; q++)
            {
                var own = coupling[(place * cores) + q];
                if (own == Complex.Zero)
                    continue;
                for (var j = 0; j < d; j++)
                    coupling[(around[(2 * j) + 1] * cores) + q] += ratios[j] * own;
                for (var r = 0; r < cores; r++)
                    coreMatrix[(q * cores) + r] -= own * coupling[(place * cores) + r] * inverse;
            }
        }
    }

    private void Collect(Frame frame, int cores, bool isDirect)
    {
        var plan = circuit.Elimination;
        var size = plan.Unknowns + cores;
        frame.Clear(size);
        foreach (var (slot, a, b) in plan.Remaining)
        {
            var admittance = y[slot];
            if (a >= 0)
                frame.Matrix[(a * size) + a] += admittance;
            if (b >= 0)
                frame.Matrix[(b * size) + b] += admittance;
            if (a >= 0 && b >= 0)
            {
                frame.Matrix[(a * size) + b] -= admittance;
                frame.Matrix[(b * size) + a] -= admittance;
            }
            else if (a == Elimination.DriveRow || b == Elimination.DriveRow)
            {
                frame.DriveSelf += admittance;
                if (Math.Max(a, b) >= 0)
                    frame.Drive[Math.Max(a, b)] += admittance;
            }
        }
        for (var q = 0; q < cores; q++)
        {
            var row = plan.Unknowns + q;
            if (isDirect)
                frame.Matrix[(row * size) + row] = Complex.One;
            else
                CollectCore(frame, cores, size, q, row);
        }
    }

    private void CollectCore(Frame frame, int cores, int size, int q, int row)
    {
        var plan = circuit.Elimination;
        for (var r = 0; r < cores; r++)
            frame.Matrix[(row * size) + plan.Unknowns + r] = coreMatrix[(q * cores) + r];
        for (var n = 0; n < plan.Rows.Length; n++)
        {
            if (plan.CouplingPlaces[n] < 0)
                continue;
            var c = coupling[(plan.CouplingPlaces[n] * cores) + q];
            if (plan.Rows[n] >= 0)
                frame.Matrix[(row * size) + plan.Rows[n]] = frame.Matrix[(plan.Rows[n] * size) + row] = c;
            else if (plan.Rows[n] == Elimination.DriveRow)
                frame.Drive[row] = -c;
        }
    }
}
