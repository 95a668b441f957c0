using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>The steps that are left until a part can be worked on.</summary>
/// <param name="Step">Id of the step to reach.</param>
/// <param name="Steps">How many steps there are.</param>
/// <param name="Minutes">Out only [min].</param>
public sealed record GetTo(string Step, int Steps, double Minutes)
{
    /// <summary>The cheapest order from where the unit is now; null where the sheet has no step that leads there.</summary>
    public static GetTo? Of(string element, BenchUnit unit, TypeSheet sheet, double moneyPerHour)
    {
        if (ReachFor.StepFor(element, sheet) is not { } step)
            return null;
        var state = ApartState.Of(unit, sheet);
        if (state.IsOff(step))
            return new(step, 0, 0);
        var plan = state.Plan([step], moneyPerHour);
        return new(step, plan.Steps.Length, plan.MinutesOut);
    }
}
