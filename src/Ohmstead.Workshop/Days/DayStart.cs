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
        var order = new List<int>();
        var run = new DayRun(day);
        while (order.Count < day.Tasks)
        {
            var unit = Enumerable
                .Range(0, day.Units)
                .Where(u => run.Next[u] < day.Hands[u].Length)
                .MinBy(u => (run.At(u).From, rank(u, run.Next[u]), u));
            run.Do(unit);
            order.Add(unit);
        }
        return [.. order];
    }
}
