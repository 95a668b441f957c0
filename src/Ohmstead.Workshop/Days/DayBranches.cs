namespace Ohmstead.Workshop.Days;

/// <summary>
/// Every order, branch by branch: a branch ends where its bound says that nothing better comes of it, or where another one came to the
/// same tasks done with hands and units free no later.
/// </summary>
internal sealed class DayBranches
{
    private readonly DayOrder day;
    private readonly int most;
    private readonly CancellationToken cancel;
    private readonly int[] order;
    private readonly Dictionary<long, List<int[]>> seen = [];
    private (int Late, int EndsAt) best;

    public DayBranches(DayOrder day, int[] start, int most, CancellationToken cancel)
    {
        (this.day, this.most, this.cancel, Best, order) = (day, most, cancel, start, new int[start.Length]);
        var (late, ends, _) = day.Weigh(start);
        best = (late, ends);
        IsDone = Go(0, day.StartsAt, new int[day.Units], [.. Enumerable.Range(0, day.Units).Select(day.ReadyAt)], 0, day.StartsAt);
    }

    public int[] Best { get; private set; }

    public long Nodes { get; private set; }

    /// <summary>True when every branch was gone through or cut.</summary>
    public bool IsDone { get; }

    private bool Go(int depth, int hands, int[] next, int[] free, int late, int ends)
    {
        if (++Nodes > most)
            return false;
        cancel.ThrowIfCancellationRequested();
        if (depth == order.Length)
        {
            if ((late, ends).CompareTo(best) < 0)
                (best, Best) = ((late, ends), [.. order]);
            return true;
        }
        if (IsCut(hands, next, free, late, ends))
            return true;
        foreach (
            var u in Enumerable
                .Range(0, next.Length)
                .Where(u => next[u] < day.Hands[u].Length)
                .OrderBy(u => Begin(u, hands, next, free))
                .ThenByDescending(u => day.Rest[u][next[u]])
        )
        {
            var (k, from, wasFree) = (next[u], Begin(u, hands, next, free), free[u]);
            var to = from + day.Hands[u][k];
            (order[depth], next[u], free[u]) = (u, k + 1, to + day.Waits[u][k]);
            var isLast = k + 1 == day.Hands[u].Length;
            var wentThrough = Go(
                depth + 1,
                to,
                next,
                free,
                late + (isLast && day.IsLate(u, free[u]) ? 1 : 0),
                isLast ? Math.Max(ends, free[u]) : ends
            );
            (next[u], free[u]) = (k, wasFree);
            if (!wentThrough)
                return false;
        }
        return true;
    }

    private int Begin(int unit, int hands, int[] next, int[] free) => day.Fit(Math.Max(hands, free[unit]), day.Hands[unit][next[unit]]);

    private bool IsCut(int hands, int[] next, int[] free, int late, int ends)
    {
        var least = late;
        for (var u = 0; u < next.Length; u++)
            if (next[u] < day.Hands[u].Length && day.IsLate(u, day.Alone(u, next[u], Math.Max(hands, free[u]))))
                least++;
        if (least > best.Late || (least == best.Late && Math.Max(ends, DayBound.Alone(day, hands, next, free)) >= best.EndsAt))
            return true;
        var key = 0L;
        for (var u = 0; u < next.Length; u++)
            key = (key * (day.Hands[u].Length + 1)) + next[u];
        int[] state = [late, ends, hands, .. free.Select((f, u) => next[u] < day.Hands[u].Length ? Math.Max(f, hands) : 0)];
        if (!seen.TryGetValue(key, out var others))
            seen[key] = others = [];
        if (others.Any(o => IsNoLater(o, state)))
            return true;
        others.RemoveAll(o => IsNoLater(state, o));
        others.Add(state);
        return false;
    }

    private static bool IsNoLater(int[] one, int[] other)
    {
        for (var n = 0; n < one.Length; n++)
            if (one[n] > other[n])
                return false;
        return true;
    }
}
