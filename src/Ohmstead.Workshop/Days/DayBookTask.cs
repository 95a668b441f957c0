using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Days;

/// <summary>A task of the day.</summary>
/// <param name="DoneAt">Minute of the day at which it was marked as done; null while it is not.</param>
public sealed record DayBookTask(string Words, int Minutes, string WaitWords, int WaitMinutes, int? DoneAt)
{
    /// <summary>What there is only one of and this needs; empty for none.</summary>
    public string Tool { get; init; } = "";

    /// <summary>True where the tool is needed through the wait as well.</summary>
    public bool KeepsTool { get; init; }

    /// <summary>Minute of the day at which somebody began it; null where nobody did.</summary>
    public int? StartedAt { get; init; }

    /// <summary>Who began it.</summary>
    public string By { get; init; } = "";

    /// <summary>True while nobody has begun it.</summary>
    [JsonIgnore]
    public bool IsOpen => DoneAt is null && StartedAt is null;

    /// <summary>True while somebody is at it.</summary>
    [JsonIgnore]
    public bool IsGoingOn => DoneAt is null && StartedAt is not null;

    /// <summary>As if nobody had begun it.</summary>
    [JsonIgnore]
    public DayBookTask Opened => this with { DoneAt = null, StartedAt = null, By = "" };

    /// <summary>For the planner.</summary>
    [JsonIgnore]
    public DayTask Task => new(Words, Minutes, WaitWords, WaitMinutes, Tool, KeepsTool);

    /// <summary>A usual task, nothing of it done.</summary>
    public static DayBookTask Of(DayTask task) =>
        new(task.Words, task.Minutes, task.WaitWords, task.WaitMinutes, null) { Tool = task.Tool, KeepsTool = task.KeepsTool };

    /// <summary>
    /// When hands were or will be free of it [min of the day]. What goes on is not over before somebody says so: it ends a minute from now
    /// at the soonest, and nobody else is told to begin on its unit or with its tool.
    /// </summary>
    public int HandsUntil(int now) => DoneAt ?? Math.Max(now + 1, (StartedAt ?? now) + Minutes);
}
