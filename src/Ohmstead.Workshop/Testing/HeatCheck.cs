using System.Globalization;
using Ohmstead.Electrical.Reckoning.Standards;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Testing;

/// <summary>A heat run against its limit: it passes when its whole band lies below, fails when it lies above.</summary>
internal static class HeatCheck
{
    public static TestResult Of(BenchTest test, TestBound? limit, BenchUnit unit)
    {
        var run = HeatRunState.Done(unit)!;
        var ended = run.Ended!;
        var bound = new TestBound(null, run.Begun.LimitKelvin, "°C", run.Begun.LimitSource);
        var end = ended.MayStop switch
        {
            "below" => TestEnd.Pass,
            "above" => TestEnd.Fail,
            _ => TestEnd.NotJudged,
        };
        var load = $"at {ValueText.Plain(run.Begun.LoadAmps)} A, room {ValueText.Plain(ended.RoomCelsius)} °C";
        return new(
            test,
            limit is null ? null : bound,
            $"{Whole(ended.LowKelvin)}–{Whole(ended.HighKelvin)} °C of rise, {load}",
            end,
            [
                end switch
                {
                    TestEnd.Pass => "Pass: 9 chances in 10 that it stays in this range, all of it below the limit.",
                    TestEnd.Fail => "Fail: the whole range, 9 chances in 10, lies above the limit.",
                    _ => "Not judged: the limit lies inside the range. A longer run settles it.",
                },
                .. Warmth(end, run.Begun.LimitKelvin, ended),
                .. Carries(unit) is { } c
                    ? [$"For hours, at {ValueText.Plain(c.RoomCelsius)} °C in the room: at most {TestWords.AmpsAtMost(c.Amps)}."]
                    : Array.Empty<string>(),
            ],
            run.Question()
        );
    }

    /// <summary>Beside the verdict: warm by the stricter figure of the standard, or what its life is worth above the limit.</summary>
    private static IEnumerable<string> Warmth(TestEnd end, double limitKelvin, HeatRunEnded ended)
    {
        var warm = WindingClass.WarmOf(limitKelvin);
        var room = Whole(InsulationClass.RoomCelsius);
        if (end == TestEnd.Fail && ended.RiseKelvin - limitKelvin is { } over and > 0)
        {
            yield return $"About {Whole(over)} °C over.";
            // Only a class of insulation says how long it lasts.
            if (warm is not null)
                yield return $"In a room of {room} °C its insulation lasts {Lasts(over, 10)} by the 10 °C rule, {Lasts(over, 8)} by the 8 °C rule.";
        }
        else if (warm is { } kelvin && ended.HighKelvin > kelvin)
            yield return $"Warm: IEC 61558-1, table 1 (from memory) gives {Whole(kelvin + InsulationClass.RoomCelsius)} °C, a rise of {Whole(kelvin)} °C over a {room} °C room. The upper end of the range is above it.";
    }

    private static string Lasts(double over, double halving) =>
        InsulationClass.LifeTimes(over, halving).ToString("0.00", CultureInfo.InvariantCulture) is var times && times == "0.50"
            ? "half as long"
            : $"{times} times as long";

    /// <summary>What it may carry, where that was worked out after the run.</summary>
    public static LoadForHours? Carries(BenchUnit unit)
    {
        var run = unit.All<HeatRunEnded>().LastOrDefault(h => h.Fact.RiseKelvin is not null);
        return run.Entry is null ? null : unit.All<LoadForHours>().LastOrDefault(l => l.Entry.Number > run.Entry.Number).Fact;
    }

    private static string Whole(double? kelvin) => kelvin.GetValueOrDefault().ToString("0", CultureInfo.InvariantCulture);
}
