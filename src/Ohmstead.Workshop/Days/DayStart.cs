namespace Ohmstead.Workshop.Days;

/// <summary>A first order, by rules: of the tasks that can begin soonest, the one with the most after it, or the one due first.</summary>
internal static class DayStart
{
    public static (int[] Order, long Weighed) Best(DayOrder day)
    {
        int[][] orders =
        [
            Order(day, (u, k) => -day.Rest[u][k]),
            Order(day, (u, k) => day.Rest[u][k]),
            Order(day, (u, k) => day.ReadyAt(u) + day.Hands[u][k]),
        ];
        return (orders.MinBy(o => day.Weigh(o) is var (late, ends, sum) ? (late, ends, sum) : default)!, orders.Length);
    }

    private static int[] Order(DayOrder day, Func<int, int, int> rank)
    {
        var (order, hands) = (new List<int>(), day.Hours.StartsAt);
        int[] next = new int[day.Units],
            free = [.. Enumerable.Range(0, day.Units).Select(day.ReadyAt)];
        while (order.Count < day.Tasks)
        {
            var unit = Enumerable
                .Range(0, day.Units)
                .Where(u => next[u] < day.Hands[u].Length)
                .MinBy(u => (day.Hours.Fit(Math.Max(hands, free[u]), day.Hands[u][next[u]]), rank(u, next[u]), u));
            var minutes = day.Hands[unit][next[unit]];
            hands = day.Hours.Fit(Math.Max(hands, free[unit]), minutes) + minutes;
            free[unit] = hands + day.Waits[unit][next[unit]];
            next[unit]++;
            order.Add(unit);
        }
        return [.. order];
    }
}
