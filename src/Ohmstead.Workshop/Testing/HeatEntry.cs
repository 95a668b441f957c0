using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>Entering a heat run, from what was typed.</summary>
public static class HeatEntry
{
    /// <summary>Room temperatures at which a bench is worked at [°C].</summary>
    private const double LeastRoom = -10;
    private const double MostRoom = 60;
    private const double MostOhms = 1e6;

    /// <summary>The clock of a person and that of this machine differ by less [min].</summary>
    private const double ClockSlack = 1;

    /// <summary>Begins one: the unit is as warm as the room, and is switched on.</summary>
    /// <param name="locks">What locks the mains; nothing begins behind it.</param>
    public static TypedFact Begin(
        HeatRunState? before,
        ImmutableArray<LockReason> locks,
        HeatBeginTyped typed,
        TestBound limit,
        DateTimeOffset now
    )
    {
        if (!locks.IsEmpty)
            return Refused($"Locked. {LockReason.Briefly(locks)}");
        if (before is { IsRunning: true })
            return Refused("A heat run is on already. End it first.");
        var form = new TypedForm();
        var ohms = form.Number("Cold ohms", typed.ColdOhms, 1e-4, MostOhms);
        var room = form.Number("Room", typed.RoomCelsius, LeastRoom, MostRoom);
        var amps = form.Number("Load", typed.LoadAmps, 0.01, 200);
        var ago = form.Number("Minutes ago", typed.MinutesAgo, 0, 600);
        var every = form.Number("Minutes between readings", typed.EveryMinutes, 2, 60);
        var repeat = form.Number("Scatter of the ohmmeter", typed.RepeatPercent, 0.01, 5);
        return form.Problem.Length > 0
            ? Refused(form.Problem)
            : new(new HeatRunBegun(now.AddMinutes(-ago), ohms, room, amps, limit.Max.GetValueOrDefault(), limit.Source, repeat, every), "");
    }

    /// <summary>The plug is out for a reading, now.</summary>
    public static TypedFact Unplug(HeatRunState run, DateTimeOffset now) =>
        !run.IsRunning ? Refused("This heat run has ended.")
        : run.IsOff ? Refused(StaysOut)
        : run.Unplugged is not null ? Refused("The plug is out already. Type the ohms.")
        : new(new HeatUnplugged(run.MinutesAt(now)), "");

    private const string StaysOut = "The plug is out since the last reading. Read while it cools, or end the run.";

    /// <summary>A reading with the plug out.</summary>
    public static TypedFact Read(HeatRunState run, HeatReadTyped typed, DateTimeOffset now)
    {
        if (!run.IsRunning)
            return Refused("This heat run has ended.");
        if (run.IsOff)
            return Refused(StaysOut);
        var form = new TypedForm();
        var ohms = form.Number("Ohms", typed.Ohms, 1e-4, MostOhms);
        var room = form.Number("Room", typed.RoomCelsius, LeastRoom, MostRoom);
        var minutes = form.Number("Unplugged at", typed.Minutes, 0.01, 10_000);
        var seconds = form.Number("Seconds after", typed.SecondsAfter, 0, 600);
        if (form.Problem.Length > 0)
            return Refused(form.Problem);
        if (!run.Readings.IsEmpty && minutes <= run.Readings[^1].Minutes)
            return Refused($"The last reading was at {ValueText.Plain(run.Readings[^1].Minutes)} minutes. This one must be later.");
        if (minutes > run.MinutesAt(now) + ClockSlack)
            return Refused($"The run is only {ValueText.Plain(Math.Floor(run.MinutesAt(now)))} minutes old.");
        if (ohms < 0.5 * run.Begun.ColdOhms || ohms > 2 * run.Begun.ColdOhms)
            return Refused($"Cold it read {ValueText.Plain(run.Begun.ColdOhms)} Ω. Read the same winding with the same leads.");
        return new(new HeatRead(minutes, seconds, ohms, room) { StaysOut = typed.StaysOut }, "");
    }

    /// <summary>A reading while it cools, after the last switching off: the plug went in no more since then.</summary>
    public static TypedFact Cool(HeatRunState run, string secondsTyped, string ohmsTyped)
    {
        var form = new TypedForm();
        var seconds = form.Number("Seconds", secondsTyped, 1, 36_000);
        var ohms = form.Number("Ohms", ohmsTyped, 1e-4, MostOhms);
        return form.Problem.Length > 0 ? Refused(form.Problem)
            : !run.IsRunning ? Refused("This heat run has ended.")
            : !run.IsOff ? Refused("The plug is in again. Unplug, and save that reading as the last one: the plug stays out.")
            : seconds <= (run.Cooling.IsEmpty ? run.Readings[^1].SecondsAfter : run.Cooling[^1].Seconds)
                ? Refused("This one must be later than the last.")
            : new(new HeatCooled(seconds, ohms), "");
    }

    /// <summary>Ends it with what it came to.</summary>
    /// <param name="answer">By all its readings.</param>
    public static HeatRunEnded End(HeatRunState run, HeatRunAnswer answer) =>
        new(
            run.Readings[^1].Minutes,
            run.Readings[^1].RoomCelsius,
            answer.Final.RiseKelvin,
            answer.Final.LowKelvin,
            answer.Final.HighKelvin,
            answer.MayStop,
            ""
        );

    /// <summary>Gives it up.</summary>
    public static TypedFact GiveUp(string why) =>
        why.Trim().Length is 0 or > 400
            ? Refused("Say in a few words why.")
            : new(new HeatRunEnded(0, 0, null, null, null, "go on", why.Trim().TrimEnd('.')), "");

    /// <summary>What it may carry for hours in a warm room.</summary>
    /// <param name="line">The line and the plate's, where the line was noted; then a raised line is said too.</param>
    public static (LoadForHours? Fact, ImmutableArray<string> Words, string Refused) Carry(
        HeatRunState run,
        HeatCarryTyped typed,
        HeatLine? line = null
    )
    {
        var form = new TypedForm();
        var room = form.Number("Room", typed.RoomCelsius, LeastRoom, MostRoom);
        var idle = form.Number("No-load watts", typed.NoLoadWatts, 0, 2000);
        var copper = form.Number("Watts in the windings", typed.CopperWatts, 0.01, 2000);
        if (form.Problem.Length > 0)
            return (null, [], form.Problem);
        if (run.Ended is not { RiseKelvin: > 0 } ended)
            return (null, [], "The heat run has no end yet.");
        var (answer, refused) = HeatQuestion.Elsewhere(run.Begun, ended, idle, copper, room, line).Ask<RiseElsewhereAnswer>();
        return answer is null ? (null, [], refused) : (new LoadForHours(answer.MostAmps, room, idle, copper), answer.Words, "");
    }

    /// <summary>
    /// What the readings of a unit say of it, for <see cref="Carry"/>: what it takes with no load, and what its windings lose at the load
    /// of the run, by the drop of its posts. Empty where they do not say it. The room is a warm one.
    /// </summary>
    /// <param name="model">The unit's own sheet.</param>
    public static HeatCarryTyped Known(IEnumerable<BenchTest> tests, HeatRunState? run, UnitModel model, Shop shop)
    {
        var idle = tests.FirstOrDefault(t => t is { Sort: TestSort.NoLoadWatts, Taken.Values.Length: > 0 })?.Taken!.Values[0];
        var drop = tests
            .Where(t => t.Sort == TestSort.Regulation)
            .Select(t => PostDrop.Of(t, model, shop))
            .FirstOrDefault(d => d is not null);
        return new("30", Watts(idle), Watts(run is null ? null : drop?.LossWatts(run.Begun.LoadAmps)));
    }

    private static string Watts(double? watts) => watts is { } w ? ValueText.Plain(Math.Round(w, 1)) : "";

    private static TypedFact Refused(string why) => new(null, why);
}

/// <summary>What was typed to begin a heat run.</summary>
public sealed record HeatBeginTyped(
    string ColdOhms,
    string RoomCelsius,
    string LoadAmps,
    string MinutesAgo,
    string EveryMinutes,
    string RepeatPercent
);

/// <summary>What was typed of a reading.</summary>
/// <param name="StaysOut">It is the last one: the plug stays out.</param>
public sealed record HeatReadTyped(string Minutes, string SecondsAfter, string Ohms, string RoomCelsius, bool StaysOut = false);

/// <summary>What was typed for other rooms.</summary>
public sealed record HeatCarryTyped(string RoomCelsius, string NoLoadWatts, string CopperWatts);
