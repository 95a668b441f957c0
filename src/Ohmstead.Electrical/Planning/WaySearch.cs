namespace Ohmstead.Electrical.Planning;

/// <summary>
/// Best-first search over sets of steps (key hart-nilsson-raphael). A set that cannot be put in order grows by one group of
/// a step that is stuck; what is still missing is bounded from below by sharing each step's cost among all that might use it.
/// </summary>
internal sealed class WaySearch(StepTree tree)
{
    private readonly PriorityQueue<StepSet, (double Bound, int Number)> open = new();
    private readonly HashSet<StepSet> seen = [];
    private readonly double[] shares = new double[tree.Steps.Length];

    /// <summary>The cheapest set that holds <paramref name="start"/> and has an order, and a cost that none can be below.</summary>
    /// <param name="most">Sets looked at before it stops with the best found.</param>
    public (StepSet Way, double Bound) Run(StepSet start, int most)
    {
        var best = Greedy(start);
        var bestCost = tree.CostOf(best);
        Push(start, bestCost);
        for (var looked = 0; open.TryDequeue(out var set, out var rank); looked++)
        {
            if (rank.Bound >= bestCost - 1e-9)
                return (best, bestCost);
            if (looked >= most)
                return (best, rank.Bound);
            var stuck = Stuck(set);
            if (stuck.Count == 0)
                return (set, tree.CostOf(set));
            foreach (var grown in Grown(set, stuck))
            {
                // Large trees are not searched to their end: every few sets the way through this one is tried.
                if (
                    most < int.MaxValue
                    && looked % 64 == 0
                    && tree.CostOf(Greedy(grown)) is var cost
                    && cost < bestCost
                )
                    (best, bestCost) = (Greedy(grown), cost);
                Push(grown, bestCost);
            }
        }
        return (best, bestCost);
    }

    private void Push(StepSet set, double bestCost)
    {
        if (!seen.Add(set))
            return;
        var bound = tree.CostOf(set) + Missing(set);
        if (bound < bestCost - 1e-9)
            open.Enqueue(set, (bound, seen.Count));
    }

    /// <summary>The steps that have no place in an order of the set.</summary>
    private List<int> Stuck(StepSet set)
    {
        var (left, done) = (set.Steps().ToList(), tree.Empty);
        for (var before = -1; before != left.Count; )
        {
            before = left.Count;
            left.RemoveAll(s =>
            {
                if (!tree.CanBeDone(s, done))
                    return false;
                done = done.With(s);
                return true;
            });
        }
        return left;
    }

    /// <summary>
    /// The set with one more group. One stuck step none of whose groups is there yet must get one of them, so its groups are
    /// all that there is to try; where every stuck step has a group within the set (a ring), any of them may get another.
    /// </summary>
    private IEnumerable<StepSet> Grown(StepSet set, List<int> stuck)
    {
        var lacking = stuck.Where(s => tree.Groups[s].Length > 0 && !Array.Exists(tree.Groups[s], set.Holds)).ToList();
        var grow = lacking.Count > 0 ? [lacking.MinBy(s => tree.Groups[s].Length)] : stuck;
        return grow.SelectMany(s => tree.Groups[s]).Where(g => !set.Holds(g)).Select(set.With);
    }

    /// <summary>What a set at least still costs.</summary>
    private double Missing(StepSet set)
    {
        var lacking = set.Steps()
            .Where(s => tree.Groups[s].Length > 0 && !Array.Exists(tree.Groups[s], set.Holds))
            .ToList();
        if (lacking.Count == 0)
            return 0;
        Array.Clear(shares);
        foreach (var s in lacking)
        foreach (var step in tree.Groups[s].Aggregate((a, b) => a.With(b)).Steps())
            shares[step]++;
        return lacking.Sum(s =>
            tree.Groups[s]
                .Min(g => g.Steps().Where(step => !set.Has(step)).Sum(step => tree.Costs[step] / shares[step]))
        );
    }

    /// <summary>A way that takes, for each stuck step in turn, the group that adds least.</summary>
    private StepSet Greedy(StepSet set)
    {
        while (Stuck(set) is { Count: > 0 } stuck)
        {
            var next = Grown(set, stuck).ToList();
            if (next.Count == 0)
                throw new ArgumentException("the steps have no order in which they can be done");
            set = next.MinBy(s => tree.CostOf(s) + Missing(s));
        }
        return set;
    }
}
