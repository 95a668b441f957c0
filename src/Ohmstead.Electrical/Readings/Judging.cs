using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Which readings the model can judge.</summary>
public static class Judging
{
    /// <summary>
    /// False for a reading that cannot be solved on the nominal sound unit, and for the source's current and power while a rectifier
    /// conducts there: its direct current saturates a real core, the model's core it does not. Nothing is concluded from such a reading.
    /// </summary>
    public static bool CanJudge(UnitModel model, ReadingSpec spec, ReadingState state) =>
        CanJudge(model, new FaultedCircuits(model, spec, state));

    internal static bool CanJudge(UnitModel model, FaultedCircuits circuits)
    {
        var solved = new ReadingSolver().Solve(circuits.Usual, model.Nominal);
        return solved.Value is not null && !(IsOfTheSource(circuits.Usual.Reading) && solved.IsPeriodic);
    }

    private static bool IsOfTheSource(ReadingSpec spec) => spec.Quantity is Quantity.AcAmps or Quantity.Watts;
}
