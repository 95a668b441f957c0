namespace Ohmstead.Workshop.Days;

/// <summary>What no order can pass: when the last unit is ready at the soonest.</summary>
internal static class DayBound
{
    /// <summary>Of a whole day.</summary>
    public static int Of(DayOrder day)
    {
        int[] ready = [.. Enumerable.Range(0, day.Units).Select(day.ReadyAt)];
        return day.IsAlone ? Alone(day, day.StartsAt, new int[day.Units], ready) : Shared(day);
    }

    /// <summary>
    /// No order is through before: as if hands could leave a task and come back to it at no loss, always at what has the most after it
    /// (Jackson's preemptive rule, exact for that easier day), and no unit before it would be alone. For one pair of hands.
    /// </summary>
    /// <param name="from">Hands are free from here on.</param>
    /// <param name="tasks">The next task of each unit.</param>
    /// <param name="ready">When that can begin.</param>
    public static int Alone(DayOrder day, int from, ReadOnlySpan<int> tasks, ReadOnlySpan<int> ready)
    {
        var (bound, left) = (0, new List<(int Head, int Hands, int Tail)>());
        for (var u = 0; u < day.Units; u++)
        {
            var at = Math.Max(from, ready[u]);
            bound = Math.Max(bound, tasks[u] < day.Hands[u].Length ? day.Alone(u, tasks[u], at) : ready[u]);
            for (var k = tasks[u]; k < day.Hands[u].Length; k++)
            {
                at = day.Fit(at, day.Hands[u][k]);
                left.Add((at, day.Hands[u][k], day.Rest[u][k] - day.Hands[u][k]));
                at += day.Hands[u][k] + day.Waits[u][k];
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
            var end = day.People[0].After(now, hands);
            if (place < left.Count && left[place].Head < end)
            {
                var done = Worked(day.People[0], now, left[place].Head);
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
    private static int Worked(DayHours hours, int from, int to)
    {
        var sum = 0;
        for (var date = from / DayHours.Day * DayHours.Day; date < to; date += DayHours.Day)
            foreach (var (begins, ends) in hours.Free)
                sum += Math.Max(0, Math.Min(to, date + ends) - Math.Max(from, date + begins));
        return sum;
    }

    /// <summary>
    /// For several people and tools. Of tasks that cannot begin before some minute, all the work must be done after it, by as many hands as
    /// are there; and after the last of them there is still the least that comes after any of them. So for every minute and every rest, and
    /// so for the tasks of each tool, which does one at a time.
    /// </summary>
    private static int Shared(DayOrder day)
    {
        var (bound, hands, tools) = (
            day.StartsAt,
            new List<Body>(),
            Enumerable.Range(0, day.Tools).Select(_ => new List<Body>()).ToArray()
        );
        for (var u = 0; u < day.Units; u++)
        {
            var at = day.ReadyAt(u);
            for (var k = 0; k < day.Hands[u].Length; k++)
            {
                at = day.Fit(at, day.Hands[u][k]);
                var (minutes, rest) = (day.Hands[u][k], day.Rest[u][k]);
                hands.Add(new(at, minutes, rest - minutes, false));
                if (day.Tool[u][k] is >= 0 and var tool)
                {
                    var uses = day.ToolMinutes[u][k];
                    tools[tool].Add(new(Math.Max(at, day.ToolFreeAt(tool)), uses, rest - uses, uses > minutes));
                }
                at += minutes + day.Waits[u][k];
            }
            bound = Math.Max(bound, at);
        }
        bound = Math.Max(bound, Least(hands, new FreeHands(day.People, day.People.Length).After));
        // A tool that runs through a wait needs nobody there.
        var one = new FreeHands(day.People, 1);
        foreach (var tool in tools)
            bound = Math.Max(bound, Least(tool, tool.Exists(t => t.IsKept) ? (from, minutes) => from + minutes : one.After));
        return bound;
    }

    /// <summary>The latest that any choice of minute and rest asks for.</summary>
    private static int Least(List<Body> tasks, Func<int, int, int> after)
    {
        var bound = 0;
        tasks.Sort((a, b) => b.Tail.CompareTo(a.Tail));
        foreach (var head in tasks.Select(t => t.Head).Distinct())
        {
            var work = 0;
            foreach (var task in tasks.Where(t => t.Head >= head))
            {
                work += task.Minutes;
                bound = Math.Max(bound, after(head, work) + task.Tail);
            }
        }
        return bound;
    }

    /// <param name="Head">It cannot begin before [min from the first midnight].</param>
    /// <param name="Minutes">How long it takes.</param>
    /// <param name="Tail">What comes after it at least [min].</param>
    /// <param name="IsKept">True where a tool goes on by itself after the hands.</param>
    private readonly record struct Body(int Head, int Minutes, int Tail, bool IsKept);
}
