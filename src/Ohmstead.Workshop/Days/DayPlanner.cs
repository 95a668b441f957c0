using System.Collections.Immutable;

namespace Ohmstead.Workshop.Days;

/// <summary>
/// Puts a day in order for one person or several, so that what waits by itself waits beside what hands do, and of what there is only one of
/// nobody waits for longer than must be. Few tasks of one person: by branch and bound, proved. Many: from a good order by moves of one task
/// or of a run of tasks, as long as the budget lasts, beside a bound that no order passes. The same day gives the same order.
/// </summary>
public static class DayPlanner
{
    /// <summary>Orders the units' tasks.</summary>
    /// <param name="units">Each with at least one task, none of them longer than <see cref="DayHours.Longest"/>.</param>
    public static DayPlan Plan(ImmutableArray<DayUnit> units, DayHours hours, DayBudget budget, CancellationToken cancel) =>
        Plan(units, DayTeam.Of(hours), budget, cancel);

    /// <summary>Orders the units' tasks for several people.</summary>
    /// <param name="units">Each with at least one task, none of them longer than somebody's <see cref="DayHours.Longest"/>.</param>
    public static DayPlan Plan(ImmutableArray<DayUnit> units, DayTeam team, DayBudget budget, CancellationToken cancel)
    {
        var day = new DayOrder(units, team);
        if (units.IsEmpty)
            return new([], 0, day.StartsAt, day.StartsAt, 0, true);
        var bound = DayBound.Of(day);
        var leastLate = DueBound.Of(day);
        var (best, weighed) = DayStart.Best(day);
        bool IsBest((int Late, int EndsAt, long Sum) found) => found.Late <= leastLate && found.EndsAt <= bound;
        var isProved = IsBest(day.Weigh(best));
        if (!isProved && day.IsAlone && day.Hands.Aggregate(1.0, (all, h) => all * (h.Length + 1)) <= budget.MostStates)
        {
            var branches = new DayBranches(day, best, budget.Nodes, cancel);
            (best, isProved) = (branches.Best, branches.IsDone);
            weighed += branches.Nodes;
        }
        if (!isProved)
        {
            var moves = new DayMoves(day, best, day.IsAlone ? budget : budget with { Moves = budget.Moves / 2 }, IsBest, cancel);
            best = moves.Best;
            weighed += moves.Weighed;
            isProved = IsBest(day.Weigh(best));
        }
        var (late, ends, _) = day.Weigh(best);
        return new(day.Place(best), late, ends, isProved ? ends : bound, weighed, isProved) { LeastLate = isProved ? late : leastLate };
    }
}

/// <summary>How much is weighed at most; counted, not timed.</summary>
/// <param name="MostStates">So many states of progress, and the branches are gone through.</param>
/// <param name="Nodes">Branches at most: four units take some thousands.</param>
/// <param name="Moves">Orders weighed by moves at most: a second for twelve units on a slow laptop.</param>
/// <param name="Seed">Of the moves.</param>
public sealed record DayBudget(int MostStates = 50_000, int Nodes = 400_000, int Moves = 200_000, uint Seed = 1)
{
    /// <summary>The usual one.</summary>
    public static DayBudget Usual { get; } = new();
}
