using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What a breaker test comes to, for the person at the bench.</summary>
internal static class BreakerWords
{
    public static ImmutableArray<string> Cautions { get; } =
    ["Hands off while it counts. Switch off at the count, tripped or not.", "Prefer 20 A to a dead short. Each short pits the roller."];

    public static ImmutableArray<string> Outside { get; } =
    [
        "A breaker guards the windings, not trains or wires.",
        "A short between two throttles never passes it.",
        "The room’s temperature shifts what it carries.",
        TestRecord.NoCertification,
    ];

    public static ImmutableArray<string> Of(string verdict, ImmutableArray<string> why, double cold, double stop, bool everyOutput)
    {
        var expected = double.IsFinite(cold)
            ? FormattableString.Invariant($"It should trip after {cold:0} s at the test amps.")
            : "At the test amps it should never trip.";
        var count = FormattableString.Invariant($"Switch off at {stop:0} s.");
        var does = why.IsEmpty
            ? ""
            : $" It {string.Join(" and ", why.Select(w => w == "trips early" ? "trips at less than the unit can give" : w == "slow" ? "is slow" : "is slow on a short"))}.";
        var then = verdict switch
        {
            "renew" => $"Replace it.{does}",
            "leave" => "Leave it.",
            _ => $"Leave it, and add a breaker outside.{does}{(everyOutput ? "" : " Not every post goes through it.")}",
        };
        return [$"{expected} {count}", then];
    }
}
