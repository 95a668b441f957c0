using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// Finds the cheapest set of steps that reaches something, over steps that need all of some and any group of others. A
/// step counts once however many need it. Method: docs/methods/planning.md.
/// </summary>
public static class TakeApartPlanner
{
    /// <summary>Money for an hour at the bench, unless the shop says otherwise. Common practice, no source.</summary>
    public const double UsualRate = 50;

    /// <summary>Trees up to this size are searched until the cheapest way is proved.</summary>
    public const int ProvedSteps = 60;

    /// <summary>Looks at a step in larger trees: about half a second.</summary>
    private const long MostLooks = 5_000_000;

    /// <summary>Plans the way to some steps of a sheet.</summary>
    /// <param name="steps">The take-apart steps; their ids are known and there is an order (the sheet's check sees to it).</param>
    /// <param name="reach">Ids of the steps to reach.</param>
    /// <param name="moneyPerHour">What an hour at the bench costs.</param>
    /// <param name="done">Ids of steps already done: they cost nothing.</param>
    /// <exception cref="ArgumentException">An id to reach is no step.</exception>
    public static TakeApartPlan Plan(
        ImmutableArray<TakeApartStep> steps,
        IReadOnlyCollection<string> reach,
        double moneyPerHour = UsualRate,
        IReadOnlySet<string>? done = null
    )
    {
        done ??= ImmutableHashSet<string>.Empty;
        var tree = new StepTree(steps, moneyPerHour, done);
        if (reach.FirstOrDefault(id => !tree.NumberOf.ContainsKey(id)) is { } unknown)
            throw new ArgumentException($"\"{unknown}\" is no step", nameof(reach));
        var start = reach.Concat(done).Aggregate(tree.Empty, (set, id) => set.With(tree.Musts[tree.NumberOf[id]]));
        var most = steps.Length <= ProvedSteps ? long.MaxValue : MostLooks;
        var (best, bound) = new WaySearch(tree).Run(start, most);
        return Describe(tree, best, bound, moneyPerHour, done);
    }

    private static TakeApartPlan Describe(StepTree tree, StepSet way, double bound, double moneyPerHour, IReadOnlySet<string> done)
    {
        var order = tree.Order(way).Select(n => tree.Steps[n]).Where(s => !done.Contains(s.Id)).ToImmutableArray();
        var cost = tree.CostOf(way);
        return new TakeApartPlan(
            order,
            order.Sum(s => s.MinutesOut),
            order.Sum(s => s.MinutesIn),
            100 * (1 - order.Aggregate(1.0, (whole, s) => whole * (1 - (s.BreakPercent / 100)))),
            cost,
            Math.Min(bound, cost),
            [
                .. Enumerable
                    .Range(0, tree.Steps.Length)
                    .Where(n => !way.Has(n) && tree.CanBeDone(n, way))
                    .Select(n => tree.Steps[n])
                    .Select(s => new StepOnTheWay(s, s.MinutesOut + s.MinutesIn, StepTree.CostOf(s, moneyPerHour)))
                    .OrderBy(s => s.ExtraCost),
            ]
        );
    }
}
