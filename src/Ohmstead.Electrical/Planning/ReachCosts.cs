using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// What it costs to get to parts of a unit of which some steps are off already. Steps that lie before none of the parts that are ever
/// asked for are left out at once: no cheapest way holds one.
/// </summary>
public sealed class ReachCosts
{
    /// <summary>Looks at a step for all parts together in trees too large to be searched to the end: about a second.</summary>
    private const long MostLooks = 10_000_000;

    private readonly StepTree tree;
    private readonly StepSet off;
    private readonly long looks;
    private readonly Dictionary<StepSet, double> known = [];

    /// <param name="parts">Every step that will be asked for.</param>
    /// <param name="off">Steps that are off already; such that they could be.</param>
    /// <param name="asked">How often it will be asked, at most.</param>
    public ReachCosts(ImmutableArray<TakeApartStep> steps, IReadOnlyCollection<string> parts, double moneyPerHour, IReadOnlySet<string> off, int asked)
    {
        var before = Before(steps, parts);
        tree = new StepTree([.. steps.Where(s => before.Contains(s.Id))], moneyPerHour, off);
        this.off = off.Where(before.Contains).Aggregate(tree.Empty, (set, id) => set.With(tree.NumberOf[id]));
        IsProved = tree.Steps.Length <= TakeApartPlanner.ProvedSteps;
        looks = IsProved ? long.MaxValue : MostLooks / asked;
    }

    /// <summary>True when every cost is proved the least: false in trees that are too large for it.</summary>
    public bool IsProved { get; }

    /// <summary>The least expected cost to get to all of these.</summary>
    /// <param name="dear">From this cost on it need not be the least: nobody would pay it.</param>
    public double To(IEnumerable<string> parts, double dear = double.PositiveInfinity)
    {
        var start = Start(parts);
        if (known.TryGetValue(start, out var cost))
            return cost;
        tree.Looks = 0;
        cost = tree.CostOf(new WaySearch(tree).Run(start, looks, dear).Way);
        if (cost < dear)
            known[start] = cost;
        return cost;
    }

    /// <summary>What some way to all of these costs, found at once: the least is no more.</summary>
    public double AtMost(IEnumerable<string> parts) => tree.CostOf(new WaySearch(tree).Quick(Start(parts), !IsProved));

    private StepSet Start(IEnumerable<string> parts) => parts.Aggregate(off, (set, id) => set.With(tree.Musts[tree.NumberOf[id]]));

    /// <summary>The first of some steps that could not be off with only the others off, or null.</summary>
    public static string? NotOff(ImmutableArray<TakeApartStep> steps, IReadOnlyCollection<string> off)
    {
        var tree = new StepTree(steps, 0, ImmutableHashSet<string>.Empty);
        var set = off.Aggregate(tree.Empty, (all, id) => all.With(tree.NumberOf[id]));
        var could = tree.Order(set).Select(n => tree.Steps[n].Id).ToHashSet(StringComparer.Ordinal);
        return off.FirstOrDefault(id => !could.Contains(id));
    }

    /// <summary>The parts, and all steps that any way to them may hold.</summary>
    private static HashSet<string> Before(ImmutableArray<TakeApartStep> steps, IEnumerable<string> parts)
    {
        var byId = steps.ToDictionary(s => s.Id, StringComparer.Ordinal);
        var (before, open) = (new HashSet<string>(StringComparer.Ordinal), new Stack<string>(parts));
        while (open.TryPop(out var id))
        {
            if (!before.Add(id))
                continue;
            foreach (var earlier in byId[id].After.Concat(byId[id].AfterAny.SelectMany(g => g)))
                open.Push(earlier);
        }
        return before;
    }
}
