using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Which readings the model can judge, and which are evidence.</summary>
public static class Judging
{
    /// <summary>A winding whose mean current is less than this share of its RMS carries no direct current.</summary>
    private const double DirectShare = 0.02;

    /// <summary>What a winding with less than this carries magnetizes nothing [A RMS]. Common practice, no source.</summary>
    private const double LeastAmps = 1e-3;

    /// <summary>
    /// False for a reading that cannot be solved on the nominal sound unit, and for the source's current and power while a rectifier
    /// drives direct current through a winding there: that saturates a real core, the model's core it does not. No band is given
    /// for such a reading. Behind a full-wave bridge no winding carries any.
    /// </summary>
    public static bool CanJudge(UnitModel model, ReadingSpec spec, ReadingState state) =>
        CanJudge(model, new FaultedCircuits(model, spec, state));

    /// <summary>
    /// True for a reading that may tell faults and values apart: one that can be judged, and not the source's current or power while a
    /// rectifier conducts, behind a bridge neither. A bridge with an open or shorted plate drives direct current through its winding,
    /// and then a real core draws more than the model: the right fault would be the one that explains the reading worst.
    /// </summary>
    public static bool IsEvidence(UnitModel model, ReadingSpec spec, ReadingState state)
    {
        var circuit = new FaultedCircuits(model, spec, state).Usual;
        var solved = new ReadingSolver().Solve(circuit, model.Nominal);
        return solved.Value is not null && !(IsOfTheSource(circuit.Reading) && solved.IsPeriodic);
    }

    internal static bool CanJudge(UnitModel model, FaultedCircuits circuits)
    {
        var solved = new ReadingSolver().Solve(circuits.Usual, model.Nominal);
        return solved.Value is not null
            && !(IsOfTheSource(circuits.Usual.Reading) && solved.IsPeriodic && HasDirect(model, circuits.Usual));
    }

    private static bool IsOfTheSource(ReadingSpec spec) => spec.Quantity is Quantity.AcAmps or Quantity.Watts;

    private static bool HasDirect(UnitModel model, ReadingCircuit circuit)
    {
        var spec = circuit.Reading with { Quantity = Quantity.DcVolts };
        var sensing = CircuitBuilder.BuildSensingWindings(model, spec, circuit.Conditions);
        var solver = new ReadingSolver();
        if (solver.Solve(sensing, model.Nominal).Value is null)
            return true;
        double Amps(Quantity quantity, int place) =>
            solver.Read(sensing.ReadAs(spec with { Quantity = quantity }, place), false).Value!.Value / CircuitBuilder.SenseOhms;
        for (var place = 0; place < sensing.Probes.Length; place++)
        {
            var direct = Math.Abs(Amps(Quantity.DcVolts, place));
            var all = double.Hypot(direct, Amps(Quantity.AcVolts, place));
            if (all > LeastAmps && direct > DirectShare * all)
                return true;
        }
        return false;
    }
}
