namespace Ohmstead.Workshop.Days;

/// <summary>
/// A day as it goes on: the next task of a unit begins as soon as the unit, its tool and somebody's hands are free; of those who can begin
/// then, whoever was idle for the shortest time.
/// </summary>
internal sealed class DayRun
{
    private readonly DayOrder day;
    private readonly int[] people;
    private readonly int[] tools;

    public DayRun(DayOrder day)
    {
        this.day = day;
        (Free, Next, people, tools) = (new int[day.Units], new int[day.Units], new int[day.People.Length], new int[day.Tools]);
        Begin();
    }

    /// <summary>When the next task of each unit can begin.</summary>
    public int[] Free { get; }

    /// <summary>Which task of each unit is next.</summary>
    public int[] Next { get; }

    /// <summary>Back to the beginning, with nothing done.</summary>
    public void Begin()
    {
        for (var u = 0; u < Free.Length; u++)
            Free[u] = day.ReadyAt(u);
        for (var t = 0; t < tools.Length; t++)
            tools[t] = day.ToolFreeAt(t);
        Array.Clear(Next);
        Array.Fill(people, day.StartsAt);
    }

    /// <summary>When the next task of a unit would begin, and in whose hands.</summary>
    public (int From, int Person) At(int unit)
    {
        var (minutes, tool) = (day.Hands[unit][Next[unit]], day.Tool[unit][Next[unit]]);
        var ready = tool < 0 ? Free[unit] : Math.Max(Free[unit], tools[tool]);
        var (from, who) = (int.MaxValue, 0);
        for (var p = 0; p < people.Length; p++)
        {
            if (minutes > day.Longest[p])
                continue;
            var at = day.People[p].Fit(Math.Max(people[p], ready), minutes);
            if (at < from || (at == from && people[p] > people[who]))
                (from, who) = (at, p);
        }
        return (from, who);
    }

    /// <summary>Does it.</summary>
    public (int From, int Person) Do(int unit)
    {
        var (from, who) = At(unit);
        var (task, tool) = (Next[unit]++, day.Tool[unit][Next[unit] - 1]);
        people[who] = from + day.Hands[unit][task];
        Free[unit] = people[who] + day.Waits[unit][task];
        if (tool >= 0)
            tools[tool] = from + day.ToolMinutes[unit][task];
        return (from, who);
    }
}
