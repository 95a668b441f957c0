namespace Ohmstead.Workshop.Days;

/// <summary>How much several people can do together, minute by minute.</summary>
/// <param name="most">So many of them at once.</param>
internal sealed class FreeHands(DayHours[] people, int most)
{
    /// <summary>Minutes of hands before each minute, as far as was asked.</summary>
    private readonly List<int> before = [0];

    /// <summary>When so many minutes of hands have gone by, shared out as well as can be.</summary>
    public int After(int from, int minutes)
    {
        ReachTo(from);
        var all = before[from] + minutes;
        while (before[^1] < all)
            ReachTo(before.Count - 1 + DayHours.Day);
        var at = before.BinarySearch(from, before.Count - from, all, null);
        if (at < 0)
            return ~at;
        while (at > from && before[at - 1] == all)
            at--;
        return at;
    }

    private void ReachTo(int minute)
    {
        while (before.Count <= minute)
        {
            var now = before.Count - 1;
            before.Add(before[now] + Math.Min(most, people.Count(p => IsThere(p, now))));
        }
    }

    private static bool IsThere(DayHours person, int minute) =>
        minute >= person.StartsAt && person.Free.Any(f => minute % DayHours.Day >= f.From && minute % DayHours.Day < f.To);
}
