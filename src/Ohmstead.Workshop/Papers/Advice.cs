using System.Collections.Immutable;
using Ohmstead.Workshop.Cautions;

namespace Ohmstead.Workshop.Papers;

/// <summary>Usual words of the trade for the person who takes a unit home. Common practice, no source.</summary>
internal static class Advice
{
    /// <summary>At the foot of every paper.</summary>
    public const string Foot = "Tests recorded on this date. No certification.";

    /// <summary>The one caution of the owner's page.</summary>
    public const string OwnerCaution =
        "Never open it. Children: with an adult only. Pull the plug after use. Smell, smoke or a growl: plug out at once. "
        + "Never feed a post, never join two units at a track: a bare plug can then carry deadly volts.";

    /// <summary>The same on the page of a unit that is not to be plugged in.</summary>
    public const string OwnerCautionUnplugged = "Do not plug it in, not even once. Never open it. Keep it from children.";

    /// <summary>What wears a unit least.</summary>
    public const string GoodHabit = "Good habit: move the throttle now and then. The contact wears evenly.";

    /// <summary>What no reading shows, in one line.</summary>
    public const string NotTestedShort = "Heat over hours, breaker speed and touch current: not tested unless listed.";

    /// <summary>How to use it.</summary>
    public static ImmutableArray<string> Use { get; } =
    [
        "Start low. Turn down before you reverse.",
        "Never leave a stalled train on, nor one across the gap between two throttles.",
        "Feel the case every half hour. Too hot to hold is too hot to run.",
        "Pull the plug after use.",
    ];

    /// <summary>Cautions.</summary>
    public static ImmutableArray<string> Cautions { get; } =
    [
        "Mains inside. Never open it. Children: with an adult only.",
        "The old breaker guards the windings, not trains, wires or the house. Put a fast breaker or fuse in each track lead.",
        "Never feed a post: the bare plug would carry deadly volts. So do two units joined at the track.",
        .. CautionTable.For(Act.Run),
        "Smell, smoke, louder hum, cracked cord: pull the plug, bring it back.",
    ];

    /// <summary>What no reading of a sheet shows.</summary>
    public static ImmutableArray<string> NeverJudged { get; } =
    [
        "Heat over hours, breaker speed, touch current: not tested unless written down here.",
        "Whether it meets any code, or may be used by children or left alone: not judged.",
    ];
}
