using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What a heat run comes to, for the person at the bench.</summary>
internal static class HeatRunWords
{
    /// <summary>Up to here a forecast settles only what is far from the limit.</summary>
    private const double EarlyMinutes = 45;

    public static ImmutableArray<string> Cautions { get; } =
    [
        "Unplug before each reading. Hands off the unit while it is plugged in.",
        "Do not leave it alone near its limit. Smoke, a burnt smell, or a case too hot to touch: unplug at once.",
    ];

    public static ImmutableArray<string> Outside { get; } =
    ["This holds for one load all along, and a unit that was not moved or covered.", TestRecord.NoCertification];

    public static ImmutableArray<string> Of(string stop, double middle, double low, double high, double minutes, bool isOneCurve)
    {
        var going = FormattableString.Invariant($"It is going to about {middle:0} °C over the room, {low:0} to {high:0} in 90 of 100.");
        var then = stop switch
        {
            "below" => "You may stop: it stays below the limit.",
            "above" => "You may stop: it goes above the limit.",
            _ => minutes <= EarlyMinutes
                ? "Go on. So early it settles only what is far from the limit."
                : "Go on: the limit lies inside that range.",
        };
        return isOneCurve
            ? [going, then]
            : [going, then, "The readings do not lie on one curve. Was the load changed, or the unit moved or covered?"];
    }
}
