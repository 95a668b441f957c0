using System.Collections.Immutable;

namespace Ohmstead.Workshop.Days;

/// <summary>Units, people and tools as numbers, and what an order of tasks comes to: unit by unit whose next task is done.</summary>
internal sealed class DayOrder
{
    /// <summary>Minutes of hands, by unit and task.</summary>
    public readonly int[][] Hands;

    /// <summary>Minutes of waiting after it.</summary>
    public readonly int[][] Waits;

    /// <summary>Hands and waits of a unit from a task on.</summary>
    public readonly int[][] Rest;

    /// <summary>Number of the tool that a task needs; -1 for none.</summary>
    public readonly int[][] Tool;

    /// <summary>Minutes for which it has that tool.</summary>
    public readonly int[][] ToolMinutes;

    private readonly int[] readyAt;
    private readonly int[] dueAt;
    private readonly int[] toolsFreeAt;
    private readonly DayRun run;

    public DayOrder(ImmutableArray<DayUnit> units, DayTeam team)
    {
        People = [.. team.People.Select(p => p.Hours)];
        Hands = [.. units.Select(u => u.Tasks.Select(t => t.Minutes).ToArray())];
        Waits = [.. units.Select(u => u.Tasks.Select(t => t.WaitMinutes).ToArray())];
        var names = units
            .SelectMany(u => u.Tasks)
            .Select(t => t.Tool)
            .Where(t => t.Length > 0)
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .ToList();
        Tool = [.. units.Select(u => u.Tasks.Select(t => names.FindIndex(n => IsSame(n, t.Tool))).ToArray())];
        ToolMinutes = [.. units.Select(u => u.Tasks.Select(t => t.Minutes + (t.KeepsTool ? t.WaitMinutes : 0)).ToArray())];
        StartsAt = People.Min(h => h.StartsAt);
        readyAt = [.. units.Select(u => Math.Max(u.ReadyAt, StartsAt))];
        dueAt = [.. units.Select(u => Math.Min(u.DueAt ?? int.MaxValue, team.ClosesAt ?? int.MaxValue))];
        toolsFreeAt = [.. names.Select(n => team.Tools.Where(t => IsSame(t.Name, n)).Select(t => t.FreeAt).DefaultIfEmpty(0).Max())];
        Longest = [.. People.Select(h => h.Longest)];
        Rest = new int[units.Length][];
        for (var u = 0; u < Rest.Length; u++)
        {
            Rest[u] = new int[Hands[u].Length + 1];
            for (var k = Hands[u].Length - 1; k >= 0; k--)
                Rest[u][k] = Rest[u][k + 1] + Hands[u][k] + Waits[u][k];
        }
        run = new(this);
    }

    /// <summary>A tool by another capital letter is the same one.</summary>
    private static bool IsSame(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    /// <summary>When each is there.</summary>
    public DayHours[] People { get; }

    /// <summary>The longest task that each can do.</summary>
    public int[] Longest { get; }

    /// <summary>Nothing is done before.</summary>
    public int StartsAt { get; }

    public int Units => Hands.Length;

    public int Tools => toolsFreeAt.Length;

    public int Tasks => Hands.Sum(h => h.Length);

    /// <summary>One pair of hands and nothing to share: the day that branches can go through.</summary>
    public bool IsAlone => People.Length == 1 && Tools == 0;

    public int ReadyAt(int unit) => readyAt[unit];

    public int ToolFreeAt(int tool) => toolsFreeAt[tool];

    /// <summary>By when it is wanted; the greatest number where nobody waits for it.</summary>
    public int DueAt(int unit) => dueAt[unit];

    public bool IsLate(int unit, int ready) => ready > dueAt[unit];

    /// <summary>When the first who can do it can begin a task of so many minutes.</summary>
    public int Fit(int from, int minutes)
    {
        var soonest = int.MaxValue;
        for (var p = 0; p < People.Length; p++)
            if (minutes <= Longest[p])
                soonest = Math.Min(soonest, People[p].Fit(from, minutes));
        return soonest;
    }

    /// <summary>When a unit is ready that has everybody for itself from some minute on.</summary>
    public int Alone(int unit, int task, int from)
    {
        for (var k = task; k < Hands[unit].Length; k++)
            from = Fit(from, Hands[unit][k]) + Hands[unit][k] + Waits[unit][k];
        return from;
    }

    /// <summary>Late units, the last minute and the sum of all, of an order.</summary>
    public (int Late, int EndsAt, long Sum) Weigh(ReadOnlySpan<int> order)
    {
        var (late, ends, sum) = (0, StartsAt, 0L);
        run.Begin();
        foreach (var u in order)
        {
            run.Do(u);
            if (run.Next[u] < Hands[u].Length)
                continue;
            var ready = run.Free[u];
            late += IsLate(u, ready) ? 1 : 0;
            ends = Math.Max(ends, ready);
            sum += ready;
        }
        return (late, ends, sum);
    }

    /// <summary>The order with its times, as time goes.</summary>
    public ImmutableArray<PlacedTask> Place(ReadOnlySpan<int> order)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedTask>(order.Length);
        run.Begin();
        foreach (var u in order)
        {
            var (from, who) = run.Do(u);
            var task = run.Next[u] - 1;
            placed.Add(new(u, task, from, from + Hands[u][task], run.Free[u], who));
        }
        return IsAlone ? placed.MoveToImmutable() : [.. placed.OrderBy(t => t.From).ThenBy(t => t.Person)];
    }
}
