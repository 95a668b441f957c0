using System.Globalization;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Journal;

/// <summary>Tests, heat runs and timed breakers in short words, the same in the log, on screens and on papers.</summary>
public static class TestWords
{
    /// <summary>What was read: <c>18.2 V</c>, <c>OL</c>, <c>45 and 61 mV</c>, <c>18.2 V, mean of 4</c>.</summary>
    public static string Read(TestRead test) =>
        test.OverRangeAbove is not null ? "OL"
        : test.Values.IsEmpty ? "nothing"
        : test.Touch is not null
            ? $"{string.Join(" and ", test.Values.Select(v => ValueText.Plain(Math.Round(v * 1000, 3))))} mV, the plug one way and the other"
        : $"{Number(test.Values.Average())} {test.Limit.Unit}{(test.Values.Length > 1 ? $", mean of {ValueText.Plain(test.Values.Length)}" : "")}";

    /// <summary>How a heat run ended: <c>done: 43–69 °C of rise</c>.</summary>
    public static string Ended(HeatRunEnded run) =>
        run is { LowKelvin: { } low, HighKelvin: { } high }
            ? $"done: {Whole(low)}–{Whole(high)} °C of rise in the end"
            : $"given up: {run.Why}";

    /// <summary>What a breaker did: <c>opened after 43.2 s at 20 A</c>.</summary>
    public static string Timed(BreakerTimed timed) =>
        timed.Why.Length > 0 ? $"not timed, {timed.Why}"
        : timed.Opened ? $"opened after {ValueText.Plain(Math.Round(timed.Seconds, 1))} s at {ValueText.Plain(timed.Amps)} A"
        : $"not open after {ValueText.Plain(Math.Round(timed.Seconds, 1))} s at {ValueText.Plain(timed.Amps)} A, switched off";

    /// <summary>A limit in amps, never rounded up.</summary>
    public static string AmpsAtMost(double amps) => Amps(Math.Floor((amps * 10) + 1e-9) / 10);

    /// <summary>Amps in a tenth: <c>6.7 A</c>.</summary>
    public static string Amps(double amps) => $"{amps.ToString("0.0", CultureInfo.InvariantCulture)} A";

    /// <summary>A number in four digits, without needless zeros.</summary>
    public static string Number(double value) =>
        value.ToString("G4", CultureInfo.InvariantCulture) is var text && text.Contains('E', StringComparison.Ordinal)
            ? ValueText.Plain(value)
            : text;

    private static string Whole(double kelvin) => kelvin.ToString("0", CultureInfo.InvariantCulture);
}
