using Ohmstead.App.Components;
using Ohmstead.Workshop.Plans;

namespace Ohmstead.App.Screens.Plans;

/// <summary>Where a line of a plan is done.</summary>
internal static class PlanLinks
{
    /// <summary>The screen of a line.</summary>
    public static string Of(Guid id, PlanLine line) =>
        line.Kind switch
        {
            PlanLineKind.TakeApart => $"/units/{id}/apart/step",
            PlanLineKind.Reading => $"/units/{id}/reading/{Uri.EscapeDataString(line.About)}",
            PlanLineKind.PutTogether => $"/units/{id}/apart/back",
            PlanLineKind.Check => $"/units/{id}/check",
            PlanLineKind.Looks => $"/units/{id}/plan#looks",
            _ => UnitLinks.Decide(id, line.About, line.Mode),
        };
}
