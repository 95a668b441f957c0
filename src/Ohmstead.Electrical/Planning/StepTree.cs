using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>The take-apart steps of a sheet by number: what each costs and what has to be done before it.</summary>
internal sealed class StepTree
{
    private readonly int[][] after;

    public StepTree(ImmutableArray<TakeApartStep> steps, double moneyPerHour, IReadOnlySet<string> done)
    {
        Steps = steps;
        NumberOf = steps.Select((s, n) => (s.Id, n)).ToDictionary(p => p.Id, p => p.n, StringComparer.Ordinal);
        Costs = [.. steps.Select(s => done.Contains(s.Id) ? 0 : CostOf(s, moneyPerHour))];
        after = [.. steps.Select(s => s.After.Select(id => NumberOf[id]).ToArray())];
        var musts = new StepSet?[steps.Length];
        StepSet Must(int step)
        {
            if (musts[step] is { } known)
                return known;
            var set = Empty.With(step);
            // A ring of "after" ends here; it has no order and is found when the set is put in order.
            musts[step] = set;
            foreach (var before in after[step])
                set = set.With(Must(before));
            musts[step] = set;
            return set;
        }
        Musts = [.. Enumerable.Range(0, steps.Length).Select(Must)];
        Groups =
        [
            .. steps.Select(s =>
                s.AfterAny.Select(g => g.Aggregate(Empty, (set, id) => set.With(Musts[NumberOf[id]]))).ToArray()
            ),
        ];
    }

    public ImmutableArray<TakeApartStep> Steps { get; }

    public IReadOnlyDictionary<string, int> NumberOf { get; }

    /// <summary>Expected cost of each step, in money.</summary>
    public double[] Costs { get; }

    /// <summary>By step: itself and all that must be done before it, whichever way is taken.</summary>
    public StepSet[] Musts { get; }

    /// <summary>By step: its groups, one of which must be done before it; each with what must be done before that.</summary>
    public StepSet[][] Groups { get; }

    public StepSet Empty => StepSet.Empty(Steps.Length);

    public double CostOf(StepSet set) => set.Steps().Sum(s => Costs[s]);

    /// <summary>(minutes out and in)·rate + chance of a break·price.</summary>
    public static double CostOf(TakeApartStep s, double moneyPerHour) =>
        ((s.MinutesOut + s.MinutesIn) * moneyPerHour / 60) + (s.BreakPercent * s.Price / 100);

    /// <summary>True when nothing of a set that was done keeps the step from being done.</summary>
    public bool CanBeDone(int step, StepSet done) =>
        Array.TrueForAll(after[step], done.Has) && (Groups[step].Length == 0 || Array.Exists(Groups[step], done.Holds));

    /// <summary>The steps of the set in an order that can be done, as far as there is one; earlier steps of the sheet first.</summary>
    public List<int> Order(StepSet set)
    {
        var (order, done) = (new List<int>(), Empty);
        var left = set.Steps().ToList();
        while (left.FindIndex(s => CanBeDone(s, done)) is >= 0 and var at)
        {
            order.Add(left[at]);
            done = done.With(left[at]);
            left.RemoveAt(at);
        }
        return order;
    }
}
