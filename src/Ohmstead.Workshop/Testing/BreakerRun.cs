using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Testing;

/// <summary>A breaker that is being timed, from the journal alone.</summary>
/// <param name="StartedAt">When the load was switched on.</param>
public sealed record BreakerRun(BreakerStarted Started, DateTimeOffset StartedAt)
{
    /// <summary>A press shorter than this was none [s].</summary>
    public const double HoldSeconds = 1;

    /// <summary>What is being timed on a unit now; null for nothing.</summary>
    public static BreakerRun? Of(BenchUnit unit)
    {
        BreakerRun? run = null;
        foreach (var entry in unit.Standing)
            run = entry.Fact switch
            {
                BreakerStarted started => new(started, entry.At),
                BreakerTimed => null,
                _ => run,
            };
        return run;
    }

    /// <summary>The last timing of one breaker, counted or not; null for none.</summary>
    public static (Entry Entry, BreakerTimed Fact)? Last(BenchUnit unit, string breaker) =>
        unit.All<BreakerTimed>().LastOrDefault(b => b.Fact.Breaker == breaker) is { Entry: not null } last ? last : null;

    /// <summary>True when a press that began then was long enough to be meant.</summary>
    public static bool IsHeld(DateTimeOffset from, DateTimeOffset now) => (now - from).TotalSeconds >= HoldSeconds;

    /// <summary>When the last timing on a unit ended; null for none.</summary>
    public static DateTimeOffset? LastEnd(BenchUnit unit) =>
        unit.All<BreakerTimed>().Select(b => (DateTimeOffset?)b.Entry.At).LastOrDefault();

    /// <summary>Seconds since the load was switched on.</summary>
    public double SecondsAt(DateTimeOffset now) => Math.Max(0, (now - StartedAt).TotalSeconds);

    /// <summary>Whole seconds until the load has to be switched off; 0 from then on.</summary>
    public int LeftAt(DateTimeOffset now) => (int)Math.Ceiling(Math.Max(0, Math.Round(Started.StopSeconds - SecondsAt(now), 3)));

    /// <summary>True from the count on: the load is to be switched off, tripped or not.</summary>
    public bool IsOver(DateTimeOffset now) => LeftAt(now) == 0;
}
