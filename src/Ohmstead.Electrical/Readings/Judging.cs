using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Which readings the model can judge.</summary>
public static class Judging
{
    /// <summary>
    /// False for the source's current and power while a rectifier conducts in the nominal sound unit: its direct current
    /// saturates a real core, the model's core it does not. Such a reading is predicted, and nothing is concluded from it.
    /// </summary>
    public static bool CanJudge(UnitModel model, ReadingSpec spec, ReadingState state) =>
        !IsOfTheSource(spec) || CanJudge(model, new FaultedCircuits(model, spec, state));

    internal static bool CanJudge(UnitModel model, FaultedCircuits circuits)
    {
        if (!IsOfTheSource(circuits.Usual.Reading))
            return true;
        var solver = new ReadingSolver();
        solver.Solve(circuits.Usual, model.Nominal);
        return !solver.WasPeriodic;
    }

    private static bool IsOfTheSource(ReadingSpec spec) => spec.Quantity is Quantity.AcAmps or Quantity.Watts;
}
