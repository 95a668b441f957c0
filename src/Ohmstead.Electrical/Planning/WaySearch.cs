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
    /// <param name="most">Looks at a step, after which it stops with the best found.</param>
    public (StepSet Way, double Bound) Run(StepSet start, long most)
    {
        var isLarge = most < long.MaxValue;
        var best = Trimmed(Greedy(start, isLarge), start);
        var bestCost = tree.CostOf(best);
        var floor = isLarge ? new WayBound(tree).Of(start) : 0;
        Push(start, bestCost);
        for (var looked = 0; open.TryDequeue(out var set, out var rank); looked++)
        {
            if (Math.Max(rank.Bound, floor) >= bestCost - 1e-9)
                return (best, bestCost);
            if (tree.Looks >= most)
                return (best, Math.Max(rank.Bound, floor));
            var stuck = Stuck(set);
            if (stuck.Count == 0)
                return (set, tree.CostOf(set));
            foreach (var grown in Grown(set, stuck))
            {
                if (tree.Looks >= most)
                    return (best, Math.Max(rank.Bound, floor));
                // Large trees are not searched to their end: every few sets the way through this one is tried.
                if (isLarge && looked % TryEvery == 0 && Trimmed(Greedy(grown, isLarge), start) is var way && tree.CostOf(way) < bestCost)
                    (best, bestCost) = (way, tree.CostOf(way));
                Push(grown, bestCost);
            }
        }
        return (best, bestCost);
    }

    private const int TryEvery = 64;

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
        var left = set.Copied();
        foreach (var step in tree.Order(set))
            left.Remove(step);
        return [.. left.Steps()];
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
        var lacking = set.Steps().Where(s => tree.Groups[s].Length > 0 && !Array.Exists(tree.Groups[s], set.Holds)).ToList();
        if (lacking.Count == 0)
            return 0;
        tree.Looks += lacking.Count * (long)shares.Length / 4;
        Array.Clear(shares);
        foreach (var s in lacking)
        foreach (var step in tree.Groups[s].Aggregate((a, b) => a.With(b)).Steps())
            shares[step]++;
        return lacking.Sum(s =>
            tree.Groups[s].Min(g => g.Steps().Where(step => !set.Has(step)).Sum(step => tree.Costs[step] / shares[step]))
        );
    }

    /// <summary>A way that takes, for each stuck step in turn, the group that adds least.</summary>
    /// <param name="isLarge">True to leave out what is still missing after it: a look at every stuck step for every group.</param>
    private StepSet Greedy(StepSet set, bool isLarge)
    {
        while (Stuck(set) is { Count: > 0 } stuck)
        {
            var next = Grown(set, stuck).ToList();
            if (next.Count == 0)
                throw new ArgumentException("the steps have no order in which they can be done");
            set = next.MinBy(s => tree.CostOf(s) + (isLarge ? 0 : Missing(s)));
        }
        return set;
    }

    /// <summary>A way without the steps that it can do without, the dearest left out first.</summary>
    private StepSet Trimmed(StepSet way, StepSet start)
    {
        var kept = way;
        foreach (var step in way.Steps().Where(s => !start.Has(s)).OrderByDescending(s => tree.Costs[s]).ThenBy(s => s).ToList())
        {
            if (!kept.Has(step))
                continue;
            var without = kept.Copied();
            without.Remove(step);
            var done = tree.Empty;
            foreach (var s in tree.Order(without))
                done.Add(s);
            if (done.Holds(start))
                kept = done;
        }
        return kept;
    }
}
