namespace Ohmstead.Workshop.Days;

/// <summary>How many units are late in every order.</summary>
internal static class DueBound
{
    /// <summary>
    /// Late are those that would be late with everybody for themselves. Of the others all hands must be off those due by some minute before
    /// it, and before what they still wait for by themselves; as many as then do not go together are late (Moore and Hodgson's rule, exact
    /// for an easier day, on which hands can be anywhere at any time). The same holds for what each tool must do, one thing at a time.
    /// </summary>
    public static int Of(DayOrder day)
    {
        var hands = new FreeHands(day.People, day.People.Length);
        int[] open = [.. Enumerable.Range(0, day.Units).Where(u => !day.IsLate(u, day.Alone(u, 0, day.ReadyAt(u))))];
        var most = Left(open.Select(u => new Due(day.Hands[u].Sum(), By(day, u, day.Waits[u][^1]))), m => hands.After(day.StartsAt, m));
        var one = new FreeHands(day.People, 1);
        for (var tool = 0; tool < day.Tools; tool++)
        {
            var (from, uses) = (Math.Max(day.StartsAt, day.ToolFreeAt(tool)), new List<Due>());
            var isKept = false;
            foreach (var u in open.Where(u => day.Tool[u].Contains(tool)))
            {
                var last = Array.LastIndexOf(day.Tool[u], tool);
                var minutes = Enumerable.Range(0, last + 1).Where(k => day.Tool[u][k] == tool).Sum(k => day.ToolMinutes[u][k]);
                isKept |= Enumerable.Range(0, last + 1).Any(k => day.Tool[u][k] == tool && day.ToolMinutes[u][k] > day.Hands[u][k]);
                uses.Add(new(minutes, By(day, u, day.Rest[u][last] - day.ToolMinutes[u][last])));
            }
            // A tool that runs through a wait needs nobody there.
            most = Math.Max(most, Left(uses, m => isKept ? from + m : one.After(from, m)));
        }
        return day.Units - open.Length + most;
    }

    /// <summary>Whatever comes after must fit in before it is due; a unit that nobody waits for may take as long as it likes.</summary>
    private static int By(DayOrder day, int unit, int rest) => day.DueAt(unit) == int.MaxValue ? int.MaxValue : day.DueAt(unit) - rest;

    /// <summary>The fewest that are late, of work that one after the other takes.</summary>
    /// <param name="after">When so many minutes of it are done at the soonest.</param>
    private static int Left(IEnumerable<Due> all, Func<int, int> after)
    {
        var (work, late, begun) = (0, 0, new PriorityQueue<int, int>());
        foreach (var (minutes, by) in all.OrderBy(d => d.By).ThenBy(d => d.Minutes))
        {
            work += minutes;
            begun.Enqueue(minutes, -minutes);
            if (by == int.MaxValue || after(work) <= by)
                continue;
            work -= begun.Dequeue();
            late++;
        }
        return late;
    }

    /// <param name="Minutes">How long it takes.</param>
    /// <param name="By">By when it must be done [min from the first midnight].</param>
    private readonly record struct Due(int Minutes, int By);
}
