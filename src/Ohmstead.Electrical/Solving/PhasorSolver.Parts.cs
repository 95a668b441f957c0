using System.Numerics;
using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

// What cores, lamps and junctions add to the equations at a harmonic, and what they have in a solution.
internal sealed partial class PhasorSolver
{
    /// <summary>Adds cores, lamps and the junctions that <paramref name="isLinear"/> holds to a system at a harmonic.</summary>
    public void AddParts(SymmetricSystem to, int harmonic, Func<int, bool>? isLinear)
    {
        var plan = circuit.Elimination;
        var cores = circuit.Model.Sheet.Cores.Length;
        for (var q = 0; q < cores && harmonic > 0; q++)
        {
            var turns = ReferenceTurns(q);
            to.Add(plan.Unknowns + q, -1, turns * turns * new Complex(1 / values.LossOhms[q], -Siemens[q] / harmonic));
        }
        for (var l = 0; l < circuit.Lamps.Length; l++)
        {
            var lamp = circuit.Lamps[l];
            if (lamp.A != lamp.B)
                to.Add(plan.Rows[lamp.A], plan.Rows[lamp.B], Siemens[cores + l]);
        }
        for (var n = 0; n < circuit.Junctions.Length; n++)
        {
            var j = circuit.Junctions[n];
            if (isLinear is null || isLinear(n))
                to.Add(plan.Rows[j.A], plan.Rows[j.B], values.Third[j.Element] / j.SlopeVolts);
        }
    }

    /// <summary>What lamps and junctions between the driven node and a kept node add to the right-hand side for 1 V of drive.</summary>
    public void AddDrive(Span<Complex> right, Func<int, bool>? isLinear)
    {
        var plan = circuit.Elimination;
        var cores = circuit.Model.Sheet.Cores.Length;
        for (var l = 0; l < circuit.Lamps.Length; l++)
            Drive(right, plan.Rows[circuit.Lamps[l].A], plan.Rows[circuit.Lamps[l].B], Siemens[cores + l]);
        for (var n = 0; n < circuit.Junctions.Length; n++)
        {
            var j = circuit.Junctions[n];
            if (isLinear is null || isLinear(n))
                Drive(right, plan.Rows[j.A], plan.Rows[j.B], values.Third[j.Element] / j.SlopeVolts);
        }
    }

    private static void Drive(Span<Complex> right, int a, int b, double siemens)
    {
        if (a == Elimination.DriveRow && b >= 0)
            right[b] += siemens;
        if (b == Elimination.DriveRow && a >= 0)
            right[a] += siemens;
    }

    /// <summary>Turns of a core's reference winding, full turns even where some are shorted.</summary>
    public double ReferenceTurns(int core) => values.Third[circuit.Model.ReferenceWindings[core]];

    /// <summary>Voltage between two rows of a solution in which the driven node stands at <paramref name="drive"/>.</summary>
    public static Complex Between(ReadOnlySpan<Complex> solution, int rowA, int rowB, Complex drive) =>
        At(solution, rowA, drive) - At(solution, rowB, drive);

    private static Complex At(ReadOnlySpan<Complex> solution, int row, Complex drive) =>
        row >= 0 ? solution[row]
        : row == Elimination.DriveRow ? drive
        : Complex.Zero;

    /// <summary>Voltage across a core's reference winding or a lamp in a solution.</summary>
    public Complex PartVolts(ReadOnlySpan<Complex> solution, int part, Complex drive)
    {
        var cores = circuit.Model.Sheet.Cores.Length;
        var plan = circuit.Elimination;
        if (part < cores)
            return ReferenceTurns(part) * solution[plan.Unknowns + part];
        var lamp = circuit.Lamps[part - cores];
        return Between(solution, plan.Rows[lamp.A], plan.Rows[lamp.B], drive);
    }

    /// <summary>Current that the source delivers in a solution in which the driven node stands at <paramref name="drive"/> [A].</summary>
    public Complex SourceCurrent(ReadOnlySpan<Complex> solution, Complex drive, Frame reduced, Func<int, bool>? isLinear)
    {
        var amps = reduced.DriveSelf * drive;
        for (var k = 0; k < reduced.Size; k++)
            amps -= reduced.Drive[k] * solution[k];
        var plan = circuit.Elimination;
        var cores = circuit.Model.Sheet.Cores.Length;
        for (var l = 0; l < circuit.Lamps.Length; l++)
            amps += Siemens[cores + l] * FromDrive(solution, drive, plan.Rows[circuit.Lamps[l].A], plan.Rows[circuit.Lamps[l].B]);
        for (var n = 0; n < circuit.Junctions.Length; n++)
        {
            var j = circuit.Junctions[n];
            if (isLinear is null || isLinear(n))
                amps += values.Third[j.Element] / j.SlopeVolts * FromDrive(solution, drive, plan.Rows[j.A], plan.Rows[j.B]);
        }
        return amps;
    }

    private static Complex FromDrive(ReadOnlySpan<Complex> solution, Complex drive, int a, int b) =>
        a == b ? Complex.Zero
        : a == Elimination.DriveRow ? drive - At(solution, b, drive)
        : b == Elimination.DriveRow ? drive - At(solution, a, drive)
        : Complex.Zero;
}
