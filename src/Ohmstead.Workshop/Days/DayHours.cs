using System.Collections.Immutable;

namespace Ohmstead.Workshop.Days;

/// <summary>
/// When hands are free: the same hours every day, from a first minute on. What does not fit today goes on tomorrow; hands that began a
/// task end it before they leave.
/// </summary>
/// <param name="Free">From and to of each stretch, in order and apart [min of the day].</param>
/// <param name="StartsAt">Nothing is done before [min from the first midnight].</param>
public sealed record DayHours(ImmutableArray<(int From, int To)> Free, int StartsAt = 0)
{
    /// <summary>Minutes of a day.</summary>
    public const int Day = 24 * 60;

    /// <summary>The longest stretch: no task may be longer [min].</summary>
    public int Longest => Free.IsEmpty ? -1 : Free.Max(f => f.To - f.From);

    /// <summary>The part of these hours in which somebody is there.</summary>
    /// <param name="from">When they come [min of the day].</param>
    /// <param name="to">When they leave.</param>
    public DayHours Within(int from, int to) =>
        this with
        {
            Free = [.. Free.Select(f => (Math.Max(f.From, from), Math.Min(f.To, to))).Where(f => f.Item1 < f.Item2)],
        };

    /// <summary>When hands that are free from some minute on can begin a task of so many minutes.</summary>
    public int Fit(int from, int minutes)
    {
        from = Math.Max(from, StartsAt);
        for (var day = from / Day * Day; ; day += Day)
            foreach (var (begins, ends) in Free)
            {
                var start = Math.Max(from, day + begins);
                if (start + minutes <= day + ends)
                    return start;
            }
    }

    /// <summary>When so many minutes of free hands have gone by, in pieces or not.</summary>
    public int After(int from, int minutes)
    {
        from = Math.Max(from, StartsAt);
        if (minutes == 0)
            return from;
        for (var day = from / Day * Day; ; day += Day)
            foreach (var (begins, ends) in Free)
            {
                var start = Math.Max(from, day + begins);
                if (start >= day + ends)
                    continue;
                if (start + minutes <= day + ends)
                    return start + minutes;
                minutes -= day + ends - start;
            }
    }
}
