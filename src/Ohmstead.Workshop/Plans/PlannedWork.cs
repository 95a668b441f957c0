using System.Collections.Immutable;

namespace Ohmstead.Workshop.Plans;

/// <summary>Work on one part, before it has its place in the plan.</summary>
/// <param name="About">Element, slider or part of the look-over.</param>
/// <param name="Mode">Fault mode; empty for none.</param>
/// <param name="Words">"Roller 1: clean, then replace".</param>
/// <param name="Under">Why, or how sure.</param>
/// <param name="Sort">For the minutes of earlier units.</param>
/// <param name="UsualMinutes">Where nothing was logged [min].</param>
/// <param name="Percent">Chance that it is needed [%].</param>
/// <param name="StopWhen">When the job ends there; empty for never.</param>
internal sealed record PlannedWork(
    string About,
    string Mode,
    string Words,
    string Under,
    WorkSort Sort,
    double UsualMinutes,
    ImmutableArray<PlanPart> Parts,
    double Percent,
    string StopWhen
);
