namespace Ohmstead.Workshop.Days;

/// <summary>From a good order to better ones: a task, or a run of tasks, goes to another place; what is no worse is kept; now and then several go at once.</summary>
internal sealed class DayMoves
{
    private const int Patience = 1500;
    private const int Kicks = 5;
    private const int LongestRun = 3;

    private uint dice;

    public DayMoves(
        DayOrder day,
        int[] start,
        DayBudget budget,
        Func<(int Late, int EndsAt, long Sum), bool> isBest,
        CancellationToken cancel
    )
    {
        dice = budget.Seed == 0 ? 1 : budget.Seed;
        Best = [.. start];
        if (start.Length < 2)
            return;
        var best = day.Weigh(start);
        var (here, at, since) = (best, (int[])[.. start], 0);
        var tried = new int[start.Length];
        for (; Weighed < budget.Moves && !isBest(best); Weighed++)
        {
            cancel.ThrowIfCancellationRequested();
            at.CopyTo(tried, 0);
            if (since++ > Patience)
            {
                Best.CopyTo(tried, 0);
                for (var n = 0; n < Kicks; n++)
                    Move(tried);
                (since, here) = (0, (int.MaxValue, 0, 0));
            }
            else
                Move(tried);
            var found = day.Weigh(tried);
            if (found.CompareTo(here) > 0)
                continue;
            (here, at, tried) = (found, tried, at);
            if (found.CompareTo(best) >= 0)
                continue;
            (best, since) = (found, 0);
            at.CopyTo(Best, 0);
        }
    }

    public int[] Best { get; }

    public long Weighed { get; private set; }

    private void Move(int[] order)
    {
        var run = 1 + Next(Math.Min(LongestRun, order.Length - 1));
        var (from, to) = (Next(order.Length - run + 1), Next(order.Length - run + 1));
        var taken = order[from..(from + run)];
        if (from < to)
            Array.Copy(order, from + run, order, from, to - from);
        else
            Array.Copy(order, to, order, to + run, from - to);
        taken.CopyTo(order, to);
    }

    /// <summary>Marsaglia's xorshift: the same on every machine.</summary>
    private int Next(int below)
    {
        dice ^= dice << 13;
        dice ^= dice >> 17;
        dice ^= dice << 5;
        return (int)(dice % (uint)below);
    }
}
