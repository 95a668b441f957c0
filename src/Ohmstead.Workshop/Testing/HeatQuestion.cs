using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Testing;

/// <summary>The questions of a heat run.</summary>
internal static class HeatQuestion
{
    /// <summary>Where the rise is going.</summary>
    public static TestQuestion Of(HeatRunBegun begun, ImmutableArray<HeatRead> during, ImmutableArray<HeatCooled> cooling)
    {
        var asked = TestQuestion.Begin("heat-run");
        asked["cold"] = new JsonObject { ["ohms"] = begun.ColdOhms, ["celsius"] = begun.ColdCelsius };
        asked["repeatPercent"] = begun.RepeatPercent;
        asked["during"] = new JsonArray([
            .. during.Select(r => new JsonObject
            {
                ["minutes"] = r.Minutes,
                ["secondsAfter"] = r.SecondsAfter,
                ["ohms"] = r.Ohms,
                ["ambientCelsius"] = r.RoomCelsius,
            }),
        ]);
        if (!cooling.IsEmpty)
            asked["after"] = new JsonArray([.. cooling.Select(c => new JsonObject { ["seconds"] = c.Seconds, ["ohms"] = c.Ohms })]);
        (asked["endMinutes"], asked["endCelsius"]) = (during[^1].Minutes, during[^1].RoomCelsius);
        asked["limitKelvin"] = begun.LimitKelvin;
        return TestQuestion.Of(asked);
    }

    /// <summary>What it may carry for hours in another room.</summary>
    public static TestQuestion Elsewhere(
        HeatRunBegun begun,
        double roomCelsius,
        double riseKelvin,
        double noLoadWatts,
        double copperWatts,
        double warmCelsius
    )
    {
        var asked = TestQuestion.Begin("rise-elsewhere");
        (asked["noLoadWatts"], asked["loadWattsAt20"]) = (noLoadWatts, copperWatts);
        (asked["testAmps"], asked["testCelsius"]) = (begun.LoadAmps, roomCelsius);
        (asked["finalRiseKelvin"], asked["limitKelvin"]) = (riseKelvin, begun.LimitKelvin);
        asked["mostAmpsCelsius"] = warmCelsius;
        return TestQuestion.Of(asked);
    }
}
