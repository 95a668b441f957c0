using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// Readings with direct current: the ohmmeter (1 mA, at most 3 V), the insulation tester (500 V, junctions left out) and the
/// direct-current source (at most 30 V). Star–mesh elimination down to the source's two nodes, so that paths of very
/// different conductance keep their digits; junctions by Newton's method on their companion models.
/// </summary>
internal sealed class DirectSolver(Network network)
{
    private const double MeterAmps = 1e-3;
    private const double MeterVolts = 3;
    private const int MostRounds = 200;
    private const double Tolerance = 1e-10;

    private double[] kept = new double[64];
    private double[] work = new double[64];
    private double[] injected = new double[8];
    private double[] volts = new double[8];
    private double[] sums = new double[8];
    private double[] junctionVolts = new double[4];
    private int size;
    private ReadingCircuit circuit = null!;
    private UnitValues values = null!;

    public Solution Solve(ReadingCircuit forCircuit, UnitValues withValues)
    {
        (circuit, values) = (forCircuit, withValues);
        network.Begin(circuit, values);
        Collect();
        var isInsulation = circuit.Spec.Quantity == Quantity.InsulationOhms;
        var junctions = isInsulation ? 0 : circuit.Junctions.Length;
        if (isInsulation)
            return Solution.Of(Resistance(SolveAt(500, true, 0, out _, out _), 500), new Ending(1, 0, true));
        var isOhms = circuit.Spec.Quantity == Quantity.Ohms;
        var (amps, limit) = isOhms ? (MeterAmps, MeterVolts) : (circuit.State.Source!.DirectAmps, SourceSpec.MostLowVolts);
        var across = SolveAt(amps, false, junctions, out var rounds, out var residual);
        var atLimit = !(across <= limit);
        if (atLimit)
        {
            var drawn = SolveAt(limit, true, junctions, out var more, out residual);
            rounds += more;
            if (isOhms)
                across = Resistance(drawn, limit) * amps;
        }
        var ending = new Ending(rounds, residual, residual <= 1e-6);
        return Solution.Of(isOhms ? Math.Min(across / amps, Solution.NoPathOhms) : Probe(), ending);
    }

    private static double Resistance(double amps, double volts) => amps > volts / Solution.NoPathOhms ? volts / amps : Solution.NoPathOhms;

    private double Probe()
    {
        if (circuit.Spec.Quantity == Quantity.AcVolts)
            return 0;
        var parts = circuit.Elimination.Parts;
        var (a, b) = circuit.Probe;
        return parts[a] == parts[b] ? volts[Row(a)] - volts[Row(b)] : 0;
    }

    /// <summary>Rows of the dense remainder: unknowns first, then the driven node, then everything held at zero.</summary>
    private int Row(int node) => Row(circuit.Elimination, circuit.Elimination.Rows[node]);

    private static int Row(Elimination plan, int row) =>
        row switch
        {
            Elimination.DriveRow => plan.Unknowns,
            Elimination.GroundRow => plan.Unknowns + 1,
            _ => row,
        };

    private void Collect()
    {
        var plan = circuit.Elimination;
        size = plan.Unknowns + 2;
        if (kept.Length < size * size)
            (kept, work) = (new double[size * size], new double[size * size]);
        if (volts.Length < size)
            (volts, injected, sums) = (new double[size], new double[size], new double[size]);
        if (junctionVolts.Length < circuit.Junctions.Length)
            junctionVolts = new double[circuit.Junctions.Length];
        Array.Clear(kept, 0, size * size);
        foreach (var (slot, a, b) in plan.Remaining)
        {
            var (ra, rb) = (Row(plan, a), Row(plan, b));
            if (ra != rb)
                AddTo(kept, ra, rb, network.Conductance(slot));
        }
    }

    private void AddTo(double[] matrix, int a, int b, double siemens)
    {
        matrix[(a * size) + b] += siemens;
        matrix[(b * size) + a] += siemens;
    }

    /// <summary>Solves with the source at <paramref name="level"/> (volts or amps); returns the amps or volts that result.</summary>
    private double SolveAt(double level, bool isVoltage, int junctions, out int rounds, out double residual)
    {
        Array.Clear(junctionVolts, 0, circuit.Junctions.Length);
        var result = 0.0;
        residual = 0;
        for (rounds = 1; rounds <= MostRounds; rounds++)
        {
            Array.Copy(kept, work, size * size);
            Array.Clear(injected, 0, size);
            for (var n = 0; n < junctions; n++)
                AddCompanion(n);
            result = Eliminate(level, isVoltage);
            residual = 0;
            for (var n = 0; n < junctions; n++)
                residual = Math.Max(residual, UpdateJunction(n));
            if (residual < Tolerance)
                break;
        }
        return result;
    }

    private void AddCompanion(int n)
    {
        var j = circuit.Junctions[n];
        var (a, b, sign) = (Row(j.A), Row(j.B), values.Flag[j.Element] ? -1 : 1);
        if (a == b)
            return;
        var (saturation, slope) = (values.Third[j.Element], j.SlopeVolts);
        var e = Math.Exp(junctionVolts[n] / slope);
        var siemens = saturation * e / slope;
        var amps = (saturation * (e - 1)) - (siemens * junctionVolts[n]);
        AddTo(work, a, b, siemens);
        injected[a] -= sign * amps;
        injected[b] += sign * amps;
    }

    /// <summary>Newton's step of a junction, limited as exponentials need; returns its relative size.</summary>
    private double UpdateJunction(int n)
    {
        var j = circuit.Junctions[n];
        var next = (volts[Row(j.A)] - volts[Row(j.B)]) * (values.Flag[j.Element] ? -1 : 1);
        var slope = j.SlopeVolts;
        var now = junctionVolts[n];
        var critical = slope * Math.Log(slope / (Math.Sqrt(2) * values.Third[j.Element]));
        if (next > critical && Math.Abs(next - now) > 2 * slope)
            next =
                now > 0
                    ? now + (slope * Math.Log(1 + Math.Max((next - now) / slope, -0.99)))
                    : slope * Math.Log(Math.Max(next / slope, 1.1));
        next = Math.Min(next, slope * 600);
        junctionVolts[n] = next;
        return Math.Abs(next - now) / (slope + Math.Abs(next));
    }

    private double Eliminate(double level, bool isVoltage)
    {
        var (unknowns, drive, ground) = (size - 2, size - 2, size - 1);
        for (var k = 0; k < unknowns; k++)
        {
            var sum = 0.0;
            for (var i = k + 1; i < size; i++)
                sum += work[(k * size) + i];
            sums[k] = sum;
            if (sum <= 0)
                continue;
            for (var i = k + 1; i < size; i++)
            {
                var ratio = work[(k * size) + i] / sum;
                if (ratio == 0)
                    continue;
                injected[i] += ratio * injected[k];
                for (var j = i + 1; j < size; j++)
                    AddTo(work, i, j, ratio * work[(k * size) + j]);
            }
        }
        var siemens = work[(drive * size) + ground];
        volts[ground] = 0;
        var result =
            isVoltage ? (siemens * level) - injected[drive]
            : siemens > 0 ? (level + injected[drive]) / siemens
            : double.PositiveInfinity;
        volts[drive] = isVoltage ? level : Math.Min(result, 1e6);
        for (var k = unknowns - 1; k >= 0; k--)
        {
            var total = injected[k];
            for (var i = k + 1; i < size; i++)
                total += work[(k * size) + i] * volts[i];
            volts[k] = sums[k] > 0 ? total / sums[k] : 0;
        }
        return result;
    }
}
