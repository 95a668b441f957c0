using System.Collections.Immutable;

namespace Ohmstead.Workshop.Days;

/// <summary>Units and hours as numbers, and what an order of tasks comes to: each next task of a unit begins as soon as hands and unit are free.</summary>
internal sealed class DayOrder
{
    /// <summary>Minutes of hands, by unit and task.</summary>
    public readonly int[][] Hands;

    /// <summary>Minutes of waiting after it.</summary>
    public readonly int[][] Waits;

    /// <summary>Hands and waits of a unit from a task on.</summary>
    public readonly int[][] Rest;

    private readonly int[] readyAt;
    private readonly int[] dueAt;
    private readonly int[] free;
    private readonly int[] next;

    public DayOrder(ImmutableArray<DayUnit> units, DayHours hours)
    {
        Hours = hours;
        Hands = [.. units.Select(u => u.Tasks.Select(t => t.Minutes).ToArray())];
        Waits = [.. units.Select(u => u.Tasks.Select(t => t.WaitMinutes).ToArray())];
        readyAt = [.. units.Select(u => Math.Max(u.ReadyAt, hours.StartsAt))];
        dueAt = [.. units.Select(u => u.DueAt ?? int.MaxValue)];
        Rest = new int[units.Length][];
        for (var u = 0; u < Rest.Length; u++)
        {
            Rest[u] = new int[Hands[u].Length + 1];
            for (var k = Hands[u].Length - 1; k >= 0; k--)
                Rest[u][k] = Rest[u][k + 1] + Hands[u][k] + Waits[u][k];
        }
        (free, next) = (new int[units.Length], new int[units.Length]);
    }

    public DayHours Hours { get; }

    public int Units => Hands.Length;

    public int Tasks => Hands.Sum(h => h.Length);

    public int ReadyAt(int unit) => readyAt[unit];

    public bool IsLate(int unit, int ready) => ready > dueAt[unit];

    /// <summary>When a unit is ready that has hands for itself from some minute on.</summary>
    public int Alone(int unit, int task, int from)
    {
        for (var k = task; k < Hands[unit].Length; k++)
            from = Hours.Fit(from, Hands[unit][k]) + Hands[unit][k] + Waits[unit][k];
        return from;
    }

    /// <summary>Late units, the last minute and the sum of all, of an order: unit by unit whose next task is done.</summary>
    public (int Late, int EndsAt, long Sum) Weigh(ReadOnlySpan<int> order)
    {
        var (hands, late, ends, sum) = (Hours.StartsAt, 0, Hours.StartsAt, 0L);
        for (var u = 0; u < free.Length; u++)
            (free[u], next[u]) = (readyAt[u], 0);
        foreach (var u in order)
        {
            var k = next[u]++;
            hands = Hours.Fit(Math.Max(hands, free[u]), Hands[u][k]) + Hands[u][k];
            free[u] = hands + Waits[u][k];
            if (next[u] < Hands[u].Length)
                continue;
            late += IsLate(u, free[u]) ? 1 : 0;
            ends = Math.Max(ends, free[u]);
            sum += free[u];
        }
        return (late, ends, sum);
    }

    /// <summary>The order with its times.</summary>
    public ImmutableArray<PlacedTask> Place(ReadOnlySpan<int> order)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedTask>(order.Length);
        var hands = Hours.StartsAt;
        int[] at = [.. readyAt],
            done = new int[at.Length];
        foreach (var u in order)
        {
            var k = done[u]++;
            var from = Hours.Fit(Math.Max(hands, at[u]), Hands[u][k]);
            (hands, at[u]) = (from + Hands[u][k], from + Hands[u][k] + Waits[u][k]);
            placed.Add(new(u, k, from, hands, at[u]));
        }
        return placed.MoveToImmutable();
    }

    /// <summary>
    /// No order is through before: as if hands could leave a task and come back to it at no loss, always at what has the most after it
    /// (Jackson's preemptive rule, exact for that easier day), and no unit before it would be alone.
    /// </summary>
    /// <param name="from">Hands are free from here on.</param>
    /// <param name="tasks">The next task of each unit.</param>
    /// <param name="ready">When that can begin.</param>
    public int NoneEndsBefore(int from, ReadOnlySpan<int> tasks, ReadOnlySpan<int> ready)
    {
        var (bound, left) = (0, new List<(int Head, int Hands, int Tail)>());
        for (var u = 0; u < Hands.Length; u++)
        {
            var at = Math.Max(from, ready[u]);
            bound = Math.Max(bound, tasks[u] < Hands[u].Length ? Alone(u, tasks[u], at) : ready[u]);
            for (var k = tasks[u]; k < Hands[u].Length; k++)
            {
                at = Hours.Fit(at, Hands[u][k]);
                left.Add((at, Hands[u][k], Rest[u][k] - Hands[u][k]));
                at += Hands[u][k] + Waits[u][k];
            }
        }
        left.Sort((a, b) => a.Head.CompareTo(b.Head));
        var (open, now, place) = (new PriorityQueue<(int Hands, int Tail), int>(), from, 0);
        while (place < left.Count || open.Count > 0)
        {
            if (open.Count == 0)
                now = Math.Max(now, left[place].Head);
            for (; place < left.Count && left[place].Head <= now; place++)
                open.Enqueue((left[place].Hands, left[place].Tail), -left[place].Tail);
            var (hands, tail) = open.Dequeue();
            var end = Hours.After(now, hands);
            if (place < left.Count && left[place].Head < end)
            {
                var done = Worked(now, left[place].Head);
                now = left[place].Head;
                open.Enqueue((hands - done, tail), -tail);
                continue;
            }
            bound = Math.Max(bound, end + tail);
            now = end;
        }
        return bound;
    }

    /// <summary>Free hands between two minutes.</summary>
    private int Worked(int from, int to)
    {
        var sum = 0;
        for (var day = from / DayHours.Day * DayHours.Day; day < to; day += DayHours.Day)
            foreach (var (begins, ends) in Hours.Free)
                sum += Math.Max(0, Math.Min(to, day + ends) - Math.Max(from, day + begins));
        return sum;
    }
}
