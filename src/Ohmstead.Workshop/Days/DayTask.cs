using System.Collections.Immutable;

namespace Ohmstead.Workshop.Days;

/// <summary>Something that hands do on a unit, and what goes on by itself after it.</summary>
/// <param name="Words">"Roller: replace".</param>
/// <param name="Minutes">Of hands, at one go [min].</param>
/// <param name="WaitWords">"glue sets", "parts come"; empty for no wait.</param>
/// <param name="WaitMinutes">Until the next thing on this unit can begin, or until it is ready [min].</param>
/// <param name="Tool">What there is only one of and this needs, "load bank"; empty for none.</param>
/// <param name="KeepsTool">True where the tool is needed through the wait as well.</param>
public sealed record DayTask(
    string Words,
    int Minutes,
    string WaitWords = "",
    int WaitMinutes = 0,
    string Tool = "",
    bool KeepsTool = false
);

/// <summary>A unit of the day: its tasks one after another.</summary>
/// <param name="ReadyAt">Nothing on it before [min from the first midnight].</param>
/// <param name="DueAt">Later is late; null where nobody waits for it [min from the first midnight].</param>
public sealed record DayUnit(Guid Id, string Tag, ImmutableArray<DayTask> Tasks, int ReadyAt = 0, int? DueAt = null);

/// <summary>A task in its place.</summary>
/// <param name="Unit">Place of the unit in the list.</param>
/// <param name="Task">Place of the task in the unit.</param>
/// <param name="From">When hands begin [min from the first midnight].</param>
/// <param name="To">When they are free again.</param>
/// <param name="ReadyAt">When its wait is over.</param>
/// <param name="Person">Whose hands: the place in the list of people.</param>
public sealed record PlacedTask(int Unit, int Task, int From, int To, int ReadyAt, int Person = 0);

/// <summary>Who works on the day.</summary>
/// <param name="Hours">When their hands are free.</param>
public sealed record DayPerson(string Name, DayHours Hours);

/// <summary>What there is only one of.</summary>
/// <param name="FreeAt">Until then it is in use [min from the first midnight].</param>
public sealed record DayTool(string Name, int FreeAt = 0);

/// <summary>Who and what a day is planned for.</summary>
/// <param name="People">One at least; each does every task alone.</param>
/// <param name="Tools">Those in use now; a tool that a task names and that is not here is free.</param>
/// <param name="ClosesAt">When the day is over: later is late for every unit; null for no matter [min from the first midnight].</param>
public sealed record DayTeam(ImmutableArray<DayPerson> People, ImmutableArray<DayTool> Tools, int? ClosesAt = null)
{
    /// <summary>One pair of hands.</summary>
    public static DayTeam Of(DayHours hours) => new([new("", hours)], []);
}

/// <summary>A day in order: first as few units late as can be, then the last one ready as early as can be.</summary>
/// <param name="Tasks">In the order of time.</param>
/// <param name="Late">How many units are ready after they are due.</param>
/// <param name="EndsAt">When the last unit is ready [min from the first midnight].</param>
/// <param name="NoneEndsBefore">No order with as few units late can be through earlier than this.</param>
/// <param name="Weighed">How many orders were weighed.</param>
/// <param name="IsProved">True where no order is better.</param>
public sealed record DayPlan(ImmutableArray<PlacedTask> Tasks, int Late, int EndsAt, int NoneEndsBefore, long Weighed, bool IsProved)
{
    /// <summary>In no order are fewer units late.</summary>
    public int LeastLate { get; init; }
}
