using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What a verdict comes to, for the person at the bench.</summary>
internal static class VerdictWords
{
    public static ImmutableArray<string> TouchCautions { get; } =
    ["Clip on with the plug out. Plug in, hands off, read, plug out.", "Read it against a proved earth only. Without one it says nothing."];

    /// <summary>What lets so much touch current through: a joint to the line; else dirt or damp, or a capacitor. Nothing beside a pass.</summary>
    public static ImmutableArray<string> OfTouch(string verdict, TouchReading touch, double milliamps) =>
        touch.Nanofarads(milliamps) is not { } nanofarads ? ["Plug out. Something joins it to the line. Do the cold checks again."]
        : verdict == "pass" ? []
        :
        [
            "Look for dirt or damp first.",
            FormattableString.Invariant(
                $"A capacitor of {(nanofarads < 10 ? Math.Round(nanofarads, 1) : Math.Round(nanofarads))} nF from the line to what you clipped on would explain it too."
            ),
        ];

    public static ImmutableArray<string> Of(string verdict, TestLimit limit, double? outside)
    {
        var said = verdict switch
        {
            "pass" => $"Pass: {limit.Words}, with the meter’s error.",
            "close-pass" => $"Close pass: inside {limit.Words}, but by less than the meter’s error.",
            "close-fail" => $"Close fail: outside {limit.Words}, but by less than the meter’s error.",
            _ => $"Fail: outside {limit.Words}, with the meter’s error.",
        };
        var further = verdict is "close-pass" or "close-fail" ? " Read it four times, or with a better meter." : "";
        var chance = outside is { } share
            ?
            [
                $"Really outside the limit: {(share > 0.9995 ? "more than 99.9" : share < 0.0005 ? "fewer than 0.1" : FormattableString.Invariant($"{100 * share:0.0}"))} chances in 100.",
            ]
            : ImmutableArray<string>.Empty;
        return
        [
            said + further,
            .. chance,
            .. limit.Source.Length > 0
                ? [$"Limit: {string.Join(", ", new[] { limit.Source, limit.Edition, limit.Clause }.Where(p => p.Length > 0))}."]
                : ImmutableArray<string>.Empty,
        ];
    }
}
