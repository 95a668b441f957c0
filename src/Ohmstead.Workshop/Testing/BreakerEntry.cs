using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Testing;

/// <summary>Entering a timed breaker: what a screen sends is looked at once more before it counts.</summary>
public static class BreakerEntry
{
    /// <summary>Begins: the load is switched on now.</summary>
    /// <param name="locks">What locks the mains; nothing begins behind it.</param>
    public static TypedFact Start(BenchUnit unit, ImmutableArray<LockReason> locks, string breaker, BreakerPlan plan, DateTimeOffset now)
    {
        if (!locks.IsEmpty)
            return new(null, $"Locked. {LockReason.Briefly(locks)}");
        if (BreakerRun.Of(unit) is not null)
            return new(null, "A breaker is being timed already.");
        if (CoolLeft(unit, plan, now) is > 0 and var left)
            return new(null, $"Let it cool: {Clock(left)} left. Warm, it opens early and says nothing.");
        var at = plan.Expected;
        return new(new BreakerStarted(breaker, plan.Amps, plan.Answer.StopSeconds, Finite(at.LowSeconds), Finite(at.HighSeconds)), "");
    }

    /// <summary>The one act while it counts, held for a second: it opened; from the count on, the load is switched off.</summary>
    /// <param name="heldFrom">When the press began: that is when it opened.</param>
    public static TypedFact Held(BenchUnit unit, DateTimeOffset heldFrom, DateTimeOffset now)
    {
        if (BreakerRun.Of(unit) is not { } run)
            return new(null, "Nothing is being timed.");
        // Clocks count in steps: a second that was held is a second.
        if ((now - heldFrom).TotalSeconds < BreakerRun.HoldSeconds - 0.05 || heldFrom < run.StartedAt)
            return new(null, "Hold it for one second.");
        var opened = !run.IsOver(heldFrom);
        return new(
            new BreakerTimed(
                run.Started.Breaker,
                run.Started.Amps,
                opened ? Math.Round(run.SecondsAt(heldFrom), 2) : run.Started.StopSeconds,
                opened,
                ""
            ),
            ""
        );
    }

    /// <summary>The load was switched off before it opened: smoke, or a mistake. That says nothing of the breaker.</summary>
    /// <param name="heldFrom">When the press began.</param>
    public static TypedFact Early(BenchUnit unit, DateTimeOffset heldFrom, DateTimeOffset now) =>
        Held(unit, heldFrom, now) is { Fact: BreakerTimed timed } held
            ? held with
            {
                Fact = timed with { Opened = false, Why = "stopped by hand" },
            }
            : Held(unit, heldFrom, now);

    /// <summary>Seconds until the next timing counts as one from cold.</summary>
    public static double CoolLeft(BenchUnit unit, BreakerPlan plan, DateTimeOffset now) =>
        BreakerRun.LastEnd(unit) is { } end ? Math.Max(0, plan.CoolSeconds - (now - end).TotalSeconds) : 0;

    /// <summary>Minutes and seconds: <c>5:38</c>.</summary>
    public static string Clock(double seconds)
    {
        var whole = (int)Math.Ceiling(Math.Max(0, seconds));
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }

    /// <summary>The amps that were typed, and why they are refused.</summary>
    public static (double Amps, string Problem) Amps(string typed)
    {
        var (amps, problem) = ShopEdit.Number(typed, 0.05, 100);
        return (amps, problem.Length > 0 ? $"Amps: {problem}" : "");
    }

    private static double? Finite(double seconds) => double.IsFinite(seconds) ? seconds : null;
}
