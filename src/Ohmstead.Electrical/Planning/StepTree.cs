using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>The take-apart steps of a sheet by number: what each costs and what has to be done before it.</summary>
internal sealed class StepTree
{
    private readonly int[][] after;
    private readonly int[][][] groups;
    private readonly List<int>[] leadsTo;
    private readonly int[] waits;

    public StepTree(ImmutableArray<TakeApartStep> steps, double moneyPerHour, IReadOnlySet<string> done)
    {
        Steps = steps;
        NumberOf = steps.Select((s, n) => (s.Id, n)).ToDictionary(p => p.Id, p => p.n, StringComparer.Ordinal);
        Costs = [.. steps.Select(s => done.Contains(s.Id) ? 0 : CostOf(s, moneyPerHour))];
        after = [.. steps.Select(s => s.After.Select(id => NumberOf[id]).Distinct().ToArray())];
        groups = [.. steps.Select(s => s.AfterAny.Select(g => g.Select(id => NumberOf[id]).Distinct().ToArray()).ToArray())];
        leadsTo = [.. steps.Select(_ => new List<int>())];
        waits = new int[steps.Length];
        for (var s = 0; s < steps.Length; s++)
            foreach (var before in after[s].Concat(groups[s].SelectMany(g => g)).Distinct())
                leadsTo[before].Add(s);
        Musts = Landmarks();
        Groups = [.. groups.Select(gs => gs.Select(g => g.Aggregate(Empty, (set, m) => set.With(Musts[m]))).ToArray())];
    }

    public ImmutableArray<TakeApartStep> Steps { get; }

    public IReadOnlyDictionary<string, int> NumberOf { get; }

    /// <summary>Expected cost of each step, in money.</summary>
    public double[] Costs { get; }

    /// <summary>By step: itself and all that must be done before it, whichever way is taken.</summary>
    public StepSet[] Musts { get; }

    /// <summary>By step: its groups, one of which must be done before it; each with what must be done before that.</summary>
    public StepSet[][] Groups { get; }

    /// <summary>By step: the steps that must all be done before it.</summary>
    public IReadOnlyList<int[]> After => after;

    /// <summary>By step: its groups as the sheet has them.</summary>
    public IReadOnlyList<int[][]> PlainGroups => groups;

    /// <summary>Looks at a step so far: what a search has cost, the same on every machine.</summary>
    public long Looks { get; set; }

    public StepSet Empty => StepSet.Empty(Steps.Length);

    public double CostOf(StepSet set) => set.Steps().Sum(s => Costs[s]);

    /// <summary>(minutes out and in)·rate + chance of a break·price.</summary>
    public static double CostOf(TakeApartStep s, double moneyPerHour) =>
        ((s.MinutesOut + s.MinutesIn) * moneyPerHour / 60) + (s.BreakPercent * s.Price / 100);

    /// <summary>True when nothing of a set that was done keeps the step from being done.</summary>
    public bool CanBeDone(int step, StepSet done) =>
        Array.TrueForAll(after[step], done.Has)
        && (groups[step].Length == 0 || Array.Exists(groups[step], g => Array.TrueForAll(g, done.Has)));

    /// <summary>
    /// The steps of the set in an order that can be done, as far as there is one; earlier steps of the sheet first. Each step is
    /// looked at again only when one that it names was done.
    /// </summary>
    public List<int> Order(StepSet set)
    {
        var (order, done, ready) = (new List<int>(), set.Emptied(), new PriorityQueue<int, int>());
        Array.Fill(waits, 0);
        void Look(int step)
        {
            Looks++;
            if (waits[step] != 0 || !CanBeDone(step, done))
                return;
            waits[step] = 1;
            ready.Enqueue(step, step);
        }
        foreach (var step in set.Steps())
            Look(step);
        while (ready.TryDequeue(out var step, out _))
        {
            order.Add(step);
            done.Add(step);
            foreach (var next in leadsTo[step])
                if (set.Has(next))
                    Look(next);
        }
        return order;
    }

    /// <summary>
    /// By step, all that is done on every way to it: itself, what its "after" must have, and what all its groups have in common
    /// (key zhu-givan). The greatest sets for which that holds; a step that no way reaches keeps all.
    /// </summary>
    private StepSet[] Landmarks()
    {
        var all = Enumerable
            .Range(0, Steps.Length)
            .Aggregate(
                Empty,
                (set, s) =>
                {
                    set.Add(s);
                    return set;
                }
            );
        var sets = Enumerable.Repeat(all, Steps.Length).ToArray();
        var order = Order(all);
        for (var changed = true; changed; )
        {
            changed = false;
            foreach (var s in order)
            {
                var next = Empty.With(s);
                foreach (var before in after[s])
                    next.Join(sets[before]);
                StepSet? common = null;
                foreach (var group in groups[s])
                {
                    var way = group.Aggregate(
                        Empty,
                        (set, m) =>
                        {
                            set.Join(sets[m]);
                            return set;
                        }
                    );
                    common = common is { } so ? so.And(way) : way;
                }
                if (common is { } shared)
                    next.Join(shared);
                if (next.Equals(sets[s]))
                    continue;
                (sets[s], changed) = (next, true);
            }
        }
        return sets;
    }
}
