using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
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

    /// <summary>The most people of a day.</summary>
    public const int MostPeople = 12;

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

    /// <summary>Who is there; empty where one person works alone.</summary>
    public ImmutableArray<DayBookPerson> People { get; init; } = [];

    /// <summary>The hours, from a minute of the day on.</summary>
    public DayHours HoursFrom(int now) => new([.. Free.Select(f => (f.From, f.To))], now);

    /// <summary>Who and what there is to plan for: who is at a task is free when it ends, and so is its tool.</summary>
    /// <param name="now">Minute of the day.</param>
    public DayTeam TeamAt(int now)
    {
        var hours = HoursFrom(now);
        var tasks = Units.SelectMany(u => u.Tasks).ToList();
        return new(
            People.IsEmpty
                ? [new("", hours)]
                :
                [
                    .. People.Select(p => new DayPerson(
                        p.Name,
                        hours.Within(p.From ?? 0, p.To ?? DayHours.Day) with
                        {
                            StartsAt = tasks.Where(t => t.IsGoingOn && t.By == p.Name).Select(t => t.HandsUntil(now)).Append(now).Max(),
                        }
                    )),
                ],
            [
                .. tasks
                    .Where(t => t.Tool.Length > 0 && (t.StartedAt ?? t.DoneAt) is not null)
                    .Select(t => new DayTool(t.Tool, t.HandsUntil(now) + (t.KeepsTool ? t.WaitMinutes : 0))),
            ],
            People.IsEmpty ? null : Free[^1].To
        );
    }

    /// <summary>What is left to do, for the planner: a unit with nothing left is left out, and what has begun goes on.</summary>
    /// <param name="now">Minute of the day: what ought to be done and is not ends now at the soonest.</param>
    public ImmutableArray<DayUnit> LeftAt(int now) =>
        [
            .. Units
                .Select(u => new DayUnit(
                    u.Id,
                    u.Tag,
                    [.. u.Tasks.Where(t => t.IsOpen).Select(t => t.Task)],
                    u.Tasks.Where(t => !t.IsOpen).Select(t => t.HandsUntil(now) + t.WaitMinutes).DefaultIfEmpty(0).Max(),
                    u.DueAt
                ))
                .Where(u => !u.Tasks.IsEmpty),
        ];

    /// <summary>What somebody is at; null where they are free.</summary>
    public (DayBookUnit Unit, int Task)? GoingOn(string person) =>
        Units
            .SelectMany(u => u.Tasks.Select((t, n) => (Unit: u, Task: n, What: t)))
            .Where(t => t.What.IsGoingOn && t.What.By == person)
            .Select(t => ((DayBookUnit, int)?)(t.Unit, t.Task))
            .FirstOrDefault();

    /// <summary>Units on which nothing is to be begun any more and which are not ready yet, with when they will be [min of the day].</summary>
    public ImmutableArray<(DayBookUnit Unit, int ReadyAt)> EndingAt(int now) =>
        [
            .. Units
                .Where(u => !u.Tasks.IsEmpty && !u.Tasks.Any(t => t.IsOpen))
                .Select(u => (u, ReadyAt: u.Tasks.Max(t => t.HandsUntil(now) + t.WaitMinutes)))
                .Where(u => u.ReadyAt > now),
        ];

    /// <summary>True where somebody is at the unit of a task, or has its tool.</summary>
    public bool IsTaken(Guid unit, int task)
    {
        var tool = Units.First(u => u.Id == unit).Tasks[task].Tool;
        return Units.Any(u =>
            u.Tasks.Any(t =>
                t.IsGoingOn && (u.Id == unit || (tool.Length > 0 && string.Equals(t.Tool, tool, StringComparison.OrdinalIgnoreCase)))
            )
        );
    }

    /// <summary>The place of a planned task among all of its unit.</summary>
    public int PlaceOf(Guid unit, int open) =>
        Units.First(u => u.Id == unit).Tasks.Select((t, n) => (t, n)).Where(t => t.t.IsOpen).ElementAt(open).n;

    /// <summary>What cannot be planned as it is, in words; empty where all can.</summary>
    [JsonIgnore]
    public string Problem
    {
        get
        {
            if (!People.IsEmpty && People.FirstOrDefault(p => Longest(p) <= 0) is { } absent)
                return $"{absent.Name} is never there within the hours of the day. Change one of the two.";
            var longest = People.IsEmpty ? HoursFrom(0).Longest : People.Max(Longest);
            return
                Units.SelectMany(u => u.Tasks, (u, t) => (u.Tag, Task: t)).FirstOrDefault(t => t.Task.IsOpen && t.Task.Minutes > longest)
                    is { Task: { } task, Tag: var tag }
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{tag}: “{task.Words}” takes {task.Minutes} min at one go. Your longest stretch is {longest} min. Split it, or free more time."
                )
                : "";
        }
    }

    private int Longest(DayBookPerson person) => HoursFrom(0).Within(person.From ?? 0, person.To ?? DayHours.Day).Longest;

    /// <summary>The book with one more person; the same where the name is empty or taken.</summary>
    public DayBook With(string name) =>
        name.Trim() is { Length: > 0 } said && !People.Any(p => string.Equals(p.Name, said, StringComparison.OrdinalIgnoreCase))
            ? this with
            {
                People = People.Add(new(said, null, null)),
            }
            : this;

    /// <summary>The book with a unit changed.</summary>
    public DayBook With(Guid unit, Func<DayBookUnit, DayBookUnit> change) =>
        this with
        {
            Units = [.. Units.Select(u => u.Id == unit ? change(u) : u)],
        };

    /// <summary>The book with a unit changed whose tasks are told by their places; null where they are no longer those that were shown.</summary>
    public DayBook? With(DayBookUnit shown, Func<DayBookUnit, DayBookUnit> change) =>
        Units.FirstOrDefault(u => u.Id == shown.Id) is { } now
        && now.Tasks.Select(t => t.Words).SequenceEqual(shown.Tasks.Select(t => t.Words))
            ? With(shown.Id, change)
            : null;

    /// <summary>The book with a task changed; null where the unit's tasks are no longer those that were shown.</summary>
    public DayBook? With(DayBookUnit shown, int task, Func<DayBookTask, DayBookTask> change) =>
        With(shown, u => u with { Tasks = u.Tasks.SetItem(task, change(u.Tasks[task])) });

    /// <summary>The book with a person's hours changed.</summary>
    public DayBook With(string person, Func<DayBookPerson, DayBookPerson> change) =>
        this with
        {
            People = [.. People.Select(p => p.Name == person ? change(p) : p)],
        };

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

/// <summary>Somebody who works on the day.</summary>
/// <param name="From">When they come; null for the hours of the day [min of the day].</param>
/// <param name="To">When they leave; null likewise.</param>
public sealed record DayBookPerson(string Name, int? From, int? To);
