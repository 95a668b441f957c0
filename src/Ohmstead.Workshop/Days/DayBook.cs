using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Days;

/// <summary>A day as a person set it up: the hours, the units and their tasks. Kept in versions, a document for each date.</summary>
/// <param name="Free">From and to of each stretch of free hands [min of the day].</param>
public sealed record DayBook(ImmutableArray<DayStretch> Free, ImmutableArray<DayBookUnit> Units)
{
    /// <summary>The kind of the documents.</summary>
    public const string DocumentKind = "day";

    /// <summary>The most units of a day.</summary>
    public const int MostUnits = 20;

    private const int MostMinutes = 60 * DayHours.Day;

    /// <summary>A usual day without units: 9 to 12 and 13 to 17. Common practice, no source.</summary>
    public static DayBook Usual { get; } = new([new(9 * 60, 12 * 60), new(13 * 60, 17 * 60)], []);

    /// <summary>The id of a date's document.</summary>
    public static string IdOf(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>As it is kept.</summary>
    public string Write() => JsonSerializer.Serialize(this, FactText.Options);

    /// <summary>Reads it; a usual day where it is of a later version.</summary>
    public static DayBook Read(string text)
    {
        try
        {
            return
                JsonSerializer.Deserialize<DayBook>(text, FactText.Options) is { Free.IsDefaultOrEmpty: false, Units.IsDefault: false } book
                ? book
                : Usual;
        }
        catch (JsonException)
        {
            return Usual;
        }
    }

    /// <summary>The hours, from a minute of the day on.</summary>
    public DayHours HoursFrom(int now) => new([.. Free.Select(f => (f.From, f.To))], now);

    /// <summary>What is left to do, for the planner: a unit with nothing left is left out, and a wait that has begun goes on.</summary>
    public ImmutableArray<DayUnit> Left =>
        [
            .. Units
                .Select(u => new DayUnit(
                    u.Id,
                    u.Tag,
                    [.. u.Tasks.Where(t => t.DoneAt is null).Select(t => new DayTask(t.Words, t.Minutes, t.WaitWords, t.WaitMinutes))],
                    u.Tasks.Where(t => t.DoneAt is not null).Select(t => t.DoneAt!.Value + t.WaitMinutes).DefaultIfEmpty(0).Max(),
                    u.DueAt
                ))
                .Where(u => !u.Tasks.IsEmpty),
        ];

    /// <summary>What cannot be planned as it is, in words; empty where all can.</summary>
    public string Problem
    {
        get
        {
            var longest = HoursFrom(0).Longest;
            return
                Units
                    .SelectMany(u => u.Tasks, (u, t) => (u.Tag, Task: t))
                    .FirstOrDefault(t => t.Task.DoneAt is null && t.Task.Minutes > longest)
                    is { Task: { } task, Tag: var tag }
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{tag}: “{task.Words}” takes {task.Minutes} min at one go. Your longest stretch is {longest} min. Split it, or free more time."
                )
                : "";
        }
    }

    /// <summary>The book with a unit changed.</summary>
    public DayBook With(Guid unit, Func<DayBookUnit, DayBookUnit> change) =>
        this with
        {
            Units = [.. Units.Select(u => u.Id == unit ? change(u) : u)],
        };

    /// <summary>The book with a task changed.</summary>
    public DayBook With(Guid unit, int task, Func<DayBookTask, DayBookTask> change) =>
        With(unit, u => u with { Tasks = u.Tasks.SetItem(task, change(u.Tasks[task])) });

    /// <summary>Minutes as typed: whole ones.</summary>
    public static (int Minutes, string Problem) Minutes(string text)
    {
        var (value, problem) = ShopEdit.Number(text, 0, MostMinutes);
        return problem.Length > 0 ? (0, problem) : ((int)Math.Round(value), "");
    }

    /// <summary>Hours as typed: 9:00, 12:00, 13:00, 17:00; a break that is left empty is none.</summary>
    public static (ImmutableArray<DayStretch> Free, string Problem) Hours(string from, string to, string breakFrom, string breakTo)
    {
        if (Time(from) is not { } begins || Time(to) is not { } ends || begins >= ends)
            return ([], "Your hours must begin before they end.");
        if (breakFrom.Length + breakTo.Length == 0)
            return ([new(begins, ends)], "");
        return Time(breakFrom) is { } off && Time(breakTo) is { } on && begins < off && off < on && on < ends
            ? ([new(begins, off), new(on, ends)], "")
            : ([], "The break must lie within your hours.");
    }

    /// <summary>A minute of the day as a time field has it: "09:00".</summary>
    public static string Field(int minute) => string.Create(CultureInfo.InvariantCulture, $"{minute / 60 % 24:00}:{minute % 60:00}");

    /// <summary>The minute of the day that a time field holds; null where it is empty.</summary>
    public static int? Time(string text) =>
        TimeOnly.TryParse(text, CultureInfo.InvariantCulture, out var time) ? (time.Hour * 60) + time.Minute : null;
}

/// <summary>A stretch of free hands [min of the day].</summary>
public sealed record DayStretch(int From, int To);

/// <summary>A unit of the day.</summary>
/// <param name="DueAt">Minute of the day by which it is wanted; null for no matter.</param>
public sealed record DayBookUnit(Guid Id, string Tag, ImmutableArray<DayBookTask> Tasks, int? DueAt);

/// <summary>A task of the day.</summary>
/// <param name="DoneAt">Minute of the day at which it was marked as done; null while it is not.</param>
public sealed record DayBookTask(string Words, int Minutes, string WaitWords, int WaitMinutes, int? DoneAt)
{
    /// <summary>A usual task, nothing of it done.</summary>
    public static DayBookTask Of(DayTask task) => new(task.Words, task.Minutes, task.WaitWords, task.WaitMinutes, null);
}
