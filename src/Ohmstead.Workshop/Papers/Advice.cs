using System.Collections.Immutable;

namespace Ohmstead.Workshop.Papers;

/// <summary>Usual words of the trade for the person who takes a unit home. Common practice, no source.</summary>
internal static class Advice
{
    /// <summary>At the foot of every paper.</summary>
    public const string Foot = "Tests recorded on this date; no certification.";

    /// <summary>How to use it.</summary>
    public static ImmutableArray<string> Use { get; } =
    [
        "Start low; turn down before you reverse.",
        "Never leave a stalled train on, nor one across the gap between two throttles.",
        "Feel the case every half hour: too hot to hold is too hot to run.",
        "Pull the plug after use.",
    ];

    /// <summary>Cautions.</summary>
    public static ImmutableArray<string> Cautions { get; } =
    [
        "Mains voltage inside: do not open it.",
        "Not for children alone.",
        "Its old breaker guards the windings, not trains, wires or the house: a fast breaker or fuse in each track lead is usual.",
        "Never feed a voltage into the posts: the bare plug would carry a deadly one. So do two units joined at the track.",
        "Smell, smoke, louder hum, cracked cord: pull the plug, bring it back.",
        "Local rules for old mains goods come first.",
    ];

    /// <summary>What no reading of a sheet tells.</summary>
    public static ImmutableArray<string> NeverJudged { get; } =
    [
        "Heat over hours, the breaker's speed, touch current: not tested unless written down here.",
        "Whether it meets any code, or may be used by children or left alone: not judged.",
    ];
}
