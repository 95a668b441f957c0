using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Testing;

/// <summary>The questions of a heat run.</summary>
internal static class HeatQuestion
{
    /// <summary>Where the rise is going.</summary>
    public static TestQuestion Of(HeatRunBegun begun, ImmutableArray<HeatRead> during, ImmutableArray<HeatCooled> cooling) =>
        TestQuestion.Of(
            "heat-run",
            [
                ("cold", new { ohms = begun.ColdOhms, celsius = begun.ColdCelsius }),
                ("repeatPercent", begun.RepeatPercent),
                (
                    "during",
                    during.Select(r => new
                    {
                        minutes = r.Minutes,
                        secondsAfter = r.SecondsAfter,
                        ohms = r.Ohms,
                        ambientCelsius = r.RoomCelsius,
                    })
                ),
                ("after", cooling.Select(c => new { seconds = c.Seconds, ohms = c.Ohms })),
                ("endMinutes", during[^1].Minutes),
                ("endCelsius", during[^1].RoomCelsius),
                ("limitKelvin", begun.LimitKelvin),
            ]
        );

    /// <summary>
    /// What it may carry for hours in another room, by the upper end of the range that its final rise lies in: half of all such units go
    /// above the middle.
    /// </summary>
    public static TestQuestion Elsewhere(
        HeatRunBegun begun,
        HeatRunEnded ended,
        double noLoadWatts,
        double copperWatts,
        double warmCelsius,
        HeatLine? line
    ) =>
        TestQuestion.Of(
            "rise-elsewhere",
            [
                ("noLoadWatts", noLoadWatts),
                ("loadWattsAt20", copperWatts),
                ("testAmps", begun.LoadAmps),
                ("testCelsius", ended.RoomCelsius),
                ("finalRiseKelvin", (ended.HighKelvin ?? ended.RiseKelvin).GetValueOrDefault()),
                ("limitKelvin", begun.LimitKelvin),
                ("mostAmpsCelsius", warmCelsius),
                .. line is null ? Array.Empty<(string, object)>() : [("testVolts", line.TestVolts), ("ratedVolts", line.RatedVolts)],
            ]
        );
}

/// <summary>The line of a heat run, and that of the plate [V].</summary>
public sealed record HeatLine(double TestVolts, double RatedVolts);
