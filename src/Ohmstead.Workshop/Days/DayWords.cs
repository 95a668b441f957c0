using System.Globalization;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Days;

/// <summary>A plan in words.</summary>
public static class DayWords
{
    /// <summary>What is aimed at.</summary>
    public const string Goal = "Aim: as few units late as can be. Then the last one ready as early as can be.";

    /// <summary>A minute as a clock shows it, with the day where it is not today: "15:40", "tomorrow 9:00", "in 3 days, 9:00".</summary>
    public static string Clock(int minute)
    {
        var time = string.Create(CultureInfo.InvariantCulture, $"{minute / 60 % 24}:{minute % 60:00}");
        return (minute / DayHours.Day) switch
        {
            0 => time,
            1 => $"tomorrow {time}",
            var days => $"in {Counted.Of(days, "day")}, {time}",
        };
    }

    /// <summary>"33 min", "2 h 15 min", "1 day 4 h".</summary>
    public static string Span(int minutes) =>
        minutes < 60 ? $"{ValueText.Plain(minutes)} min"
        : minutes < DayHours.Day ? $"{ValueText.Plain(minutes / 60)} h{(minutes % 60 > 0 ? $" {ValueText.Plain(minutes % 60)} min" : "")}"
        : $"{Counted.Of(minutes / DayHours.Day, "day")}{(minutes % DayHours.Day >= 60 ? $" {ValueText.Plain(minutes % DayHours.Day / 60)} h" : "")}";

    /// <summary>The hours that a chart of the plan shows: from the first hands to today's last hours, or on to the end where that is tomorrow.</summary>
    /// <returns>First and last minute, and the minutes from one mark to the next.</returns>
    public static (int First, int Last, int Step) Axis(DayPlan plan, DayHours hours)
    {
        const int hour = 60;
        const int mostMarks = 10;
        var first = plan.Tasks[0].From / hour * hour;
        var last = Math.Min(Math.Max(plan.Tasks[^1].To, plan.EndsAt), (first / DayHours.Day * DayHours.Day) + hours.Free[^1].To);
        last = (Math.Max(last, plan.Tasks[^1].To) + hour - 1) / hour * hour;
        var step = hour;
        while ((last - first) / step > mostMarks)
            step *= 2;
        return (first, Math.Max(last, first + hour), step);
    }

    /// <summary>What was weighed: "Weighed 12,480 orders; no day with as few units late can end before 15:40. In every order at least 1 unit is late."</summary>
    public static string Weighed(DayPlan plan)
    {
        var orders = plan.Weighed == 1 ? "1 order" : $"{plan.Weighed.ToString("N0", CultureInfo.InvariantCulture)} orders";
        return $"Weighed {orders}; no day{(plan.LeastLate > 0 ? " with as few units late" : "")} can end before {Clock(plan.NoneEndsBefore)}{(plan.LeastLate > 0 ? $". In every order at least {Counted.Of(plan.LeastLate, "unit")} {(plan.LeastLate == 1 ? "is" : "are")} late" : "")}."
            + (plan.IsProved ? " No order is better than this one." : "");
    }

    /// <summary>How the whole day comes out, with the units that only have to end.</summary>
    /// <param name="now">Minute of the day.</param>
    public static string Outcome(DayPlan plan, DayBook book, int now)
    {
        var ending = book.EndingAt(now);
        var closes = book.People.IsEmpty ? int.MaxValue : book.Free[^1].To;
        var whole = plan with
        {
            Late = plan.Late + ending.Count(u => u.ReadyAt > Math.Min(u.Unit.DueAt ?? int.MaxValue, closes)),
            EndsAt = ending.Select(u => u.ReadyAt).Append(plan.Tasks.IsEmpty ? 0 : plan.EndsAt).Max(),
        };
        return Outcome(whole, plan.Tasks.Select(t => t.Unit).Distinct().Count() + ending.Length);
    }

    /// <summary>How it comes out: "All 4 units ready by 13:00." or which are late.</summary>
    public static string Outcome(DayPlan plan, int units) =>
        plan.Late == 0
            ? $"{Counted.All(units, "unit")} ready by {Clock(plan.EndsAt)}."
            : $"{Counted.Share(plan.Late, units, "unit")} ready late. The last one is ready {Clock(plan.EndsAt)}.";
}
