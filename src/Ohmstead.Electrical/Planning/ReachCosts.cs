using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>
/// What it costs to get to parts of a unit of which some steps are off already. Steps that lie before none of the parts that are ever
/// asked for are left out at once: no cheapest way holds one.
/// </summary>
internal sealed class ReachCosts
{
    /// <summary>Looks at a step for one question in trees too large to be searched to the end: a fraction of a second.</summary>
    private const long MostLooks = 500_000;

    private readonly ImmutableArray<TakeApartStep> steps;
    private readonly double moneyPerHour;
    private readonly IReadOnlySet<string> off;
    private readonly StepTree tree;

    /// <param name="parts">Every step that will be asked for.</param>
    /// <param name="off">Steps that are off already; such that they could be.</param>
    public ReachCosts(ImmutableArray<TakeApartStep> steps, IReadOnlyCollection<string> parts, double moneyPerHour, IReadOnlySet<string> off)
    {
        var before = Before(steps, parts);
        this.steps = [.. steps.Where(s => before.Contains(s.Id))];
        (this.moneyPerHour, this.off) = (moneyPerHour, off);
        tree = new StepTree(this.steps, moneyPerHour, off);
    }

    /// <summary>True when every cost is proved the least: false in trees that are too large for it.</summary>
    public bool IsProved => steps.Length <= TakeApartPlanner.ProvedSteps;

    /// <summary>The least expected cost to get to all of these.</summary>
    public double To(IEnumerable<string> parts) => tree.CostOf(Cheapest(tree, parts));

    /// <summary>
    /// For each part either the way to it and something to pay then, or something else to pay instead: the cheapest choice of all. One
    /// search among steps, to which each part adds three: paying the one, which needs the part; paying the other; and having paid,
    /// which needs one of the two.
    /// </summary>
    /// <returns>The parts to get to, in the order given, and what all comes to.</returns>
    public (ImmutableArray<string> Chosen, double Cost) Choose(IReadOnlyList<PartChoice> parts)
    {
        static string Name(string what, int part) => FormattableString.Invariant($"\0{what} {part}");
        TakeApartStep Made(string id, double cost, string[] after, string[][] afterAny) =>
            new(id, id, [.. after], [.. afterAny.Select(g => g.ToImmutableArray())], 0, 0, 100, cost, [], "", 0);
        var made = parts.SelectMany(
            (p, n) =>
                new[]
                {
                    Made(Name("taken", n), p.CostWhenTaken, [p.Step], []),
                    Made(Name("left", n), p.CostWhenLeft, [], []),
                    Made(
                        Name("paid", n),
                        0,
                        [],
                        [
                            [Name("left", n)],
                            [Name("taken", n)],
                        ]
                    ),
                }
        );
        var choices = new StepTree([.. steps, .. made], moneyPerHour, off);
        var way = Cheapest(choices, parts.Select((_, n) => Name("paid", n)));
        bool Has(string what, int part) => way.Has(choices.NumberOf[Name(what, part)]);
        var (cost, allLeft) = (choices.CostOf(way), parts.Sum(p => p.CostWhenLeft));
        // In a tree too large to be searched to the end the best that was found may be worse than doing nothing.
        return allLeft <= cost ? ([], allLeft) : ([.. parts.Where((_, n) => Has("taken", n) && !Has("left", n)).Select(p => p.Step)], cost);
    }

    /// <summary>
    /// Of some steps those that could not be off with only the others off: what has to come off before them is not named. Where each has
    /// that and still none could have been the first, all that wait for one another.
    /// </summary>
    public static ImmutableArray<string> NotOff(ImmutableArray<TakeApartStep> steps, IReadOnlyCollection<string> off)
    {
        var named = off.ToHashSet(StringComparer.Ordinal);
        ImmutableArray<string> stuck =
        [
            .. steps
                .Where(s =>
                    named.Contains(s.Id)
                    && !(s.After.All(named.Contains) && (s.AfterAny.IsEmpty || s.AfterAny.Any(g => g.All(named.Contains))))
                )
                .Select(s => s.Id),
        ];
        if (!stuck.IsEmpty)
            return stuck;
        var tree = new StepTree(steps, 0, ImmutableHashSet<string>.Empty);
        var set = named.Aggregate(tree.Empty, (all, id) => all.With(tree.NumberOf[id]));
        var could = tree.Order(set).Select(n => tree.Steps[n].Id).ToHashSet(StringComparer.Ordinal);
        return [.. named.Where(id => !could.Contains(id))];
    }

    private StepSet Cheapest(StepTree among, IEnumerable<string> parts)
    {
        var done = off.Where(among.NumberOf.ContainsKey).Aggregate(among.Empty, (set, id) => set.With(among.NumberOf[id]));
        var start = parts.Aggregate(done, (set, id) => set.With(among.Musts[among.NumberOf[id]]));
        among.Looks = 0;
        return new WaySearch(among).Run(start, IsProved ? long.MaxValue : MostLooks).Way;
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

/// <summary>A part that is got to or left, and what is paid besides the way in either case.</summary>
internal sealed record PartChoice(string Step, double CostWhenTaken, double CostWhenLeft);
