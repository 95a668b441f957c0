using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Testing;

/// <summary>The last heat run of a unit, from its journal alone: whoever opens it again goes on where it was.</summary>
/// <param name="Readings">In between, in the order of the clock.</param>
/// <param name="Cooling">After the last switching off.</param>
/// <param name="Unplugged">The plug is out for a reading since then; null when it is not.</param>
/// <param name="Ended">How it ended; null while it runs.</param>
public sealed record HeatRunState(
    HeatRunBegun Begun,
    ImmutableArray<HeatRead> Readings,
    ImmutableArray<HeatCooled> Cooling,
    DateTimeOffset? Unplugged,
    HeatRunEnded? Ended
)
{
    /// <summary>So many readings are needed before anything can be said.</summary>
    public const int Least = 3;

    /// <summary>The winding is read so long after the plug is out [s].</summary>
    public const double ReadAfterSeconds = 20;

    /// <summary>The last run; null where there was none.</summary>
    public static HeatRunState? Of(BenchUnit unit) => All(unit).LastOrDefault();

    /// <summary>The last run that came to an end and was not given up; null where there is none.</summary>
    public static HeatRunState? Done(BenchUnit unit) => All(unit).LastOrDefault(r => r.Ended?.RiseKelvin is not null);

    private static List<HeatRunState> All(BenchUnit unit)
    {
        var runs = new List<HeatRunState>();
        foreach (var entry in unit.Standing)
            if (entry.Fact is HeatRunBegun begun)
                runs.Add(new(begun, [], [], null, null));
            else if (runs is [.., { Ended: null } run])
                runs[^1] = entry.Fact switch
                {
                    HeatUnplugged => run with { Unplugged = entry.At },
                    HeatRead read => run with { Readings = run.Readings.Add(read), Unplugged = null },
                    HeatCooled cooled => run with { Cooling = run.Cooling.Add(cooled) },
                    HeatRunEnded ended => run with { Ended = ended, Unplugged = null },
                    _ => run,
                };
        return runs;
    }

    /// <summary>True while it runs.</summary>
    public bool IsRunning => Ended is null;

    /// <summary>True from the last reading on: the plug stays out, and the unit cools.</summary>
    public bool IsOff => IsRunning && Readings is [.., { StaysOut: true }];

    /// <summary>Seconds since the last reading's switching off.</summary>
    public double SecondsOffAt(DateTimeOffset now) => Readings.IsEmpty ? 0 : 60 * (MinutesAt(now) - Readings[^1].Minutes);

    /// <summary>True when the next reading is called for, or the ohms are to be read: the clock sounds its tone.</summary>
    public bool IsCalledAt(DateTimeOffset now) =>
        IsRunning && !IsOff && (Unplugged is null ? SecondsToNext(now) <= 0 : SecondsToRead(now) <= 0);

    /// <summary>Whole seconds until the next reading is called for; 0 or less from then on.</summary>
    public double SecondsToNext(DateTimeOffset now) => Math.Ceiling((NextAt - now).TotalSeconds);

    /// <summary>Whole seconds until the winding is read, the plug being out; 0 or less from then on, and while it is in.</summary>
    public double SecondsToRead(DateTimeOffset now) => Unplugged is { } at ? Math.Ceiling(ReadAfterSeconds - (now - at).TotalSeconds) : 0;

    /// <summary>So many readings are still needed before anything can be said.</summary>
    public int Missing => Math.Max(0, Least - Readings.Length);

    /// <summary>Minutes since it was first switched on.</summary>
    public double MinutesAt(DateTimeOffset now) => (now - Begun.SwitchedOnAt).TotalMinutes;

    /// <summary>When the next reading is called for.</summary>
    public DateTimeOffset NextAt => Begun.SwitchedOnAt.AddMinutes((Readings.IsEmpty ? 0 : Readings[^1].Minutes) + Begun.EveryMinutes);

    /// <summary>What is asked of the readings so far, or of the first so many of them.</summary>
    public TestQuestion Question(int? first = null)
    {
        var during = Readings[..(first ?? Readings.Length)];
        var isAll = during.Length == Readings.Length;
        return HeatQuestion.Of(Begun, during, isAll ? Cooling : []);
    }

    /// <summary>How much warmer than the room the winding was at a reading [K].</summary>
    public double RiseAt(HeatRead read) =>
        WindingMetal.Copper.CelsiusOf(read.Ohms, new ColdWinding(Begun.ColdOhms, Begun.ColdCelsius)) - read.RoomCelsius;

    /// <summary>The forecast after each reading from the third on: it narrows. A tenth of a second each.</summary>
    /// <param name="known">Of an earlier look: what was asked before is not worked out again.</param>
    public ImmutableArray<HeatStep> Forecasts(ImmutableArray<HeatStep> known)
    {
        var steps = ImmutableArray.CreateBuilder<HeatStep>();
        for (var n = Least; n <= Readings.Length; n++)
        {
            var question = Question(n);
            if (known.FirstOrDefault(k => k.Question == question) is { } again)
                steps.Add(again);
            else if (question.Ask<HeatRunAnswer>().Answer is { } answer)
                steps.Add(new(Readings[n - 1].Minutes, answer, question));
        }
        return steps.ToImmutable();
    }
}

/// <summary>What was said after so many minutes, and what was asked for it.</summary>
public sealed record HeatStep(double Minutes, HeatRunAnswer Answer, TestQuestion Question);
