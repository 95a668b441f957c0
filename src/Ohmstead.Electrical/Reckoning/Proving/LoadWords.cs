using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>What a load budget comes to, for the owner.</summary>
internal static class LoadWords
{
    /// <summary>Throttle habits; common practice, no source.</summary>
    public static ImmutableArray<string> Habits { get; } =
    [
        "Start below 8 V. No full-throttle starts.",
        "Turn to minimum before you reverse.",
        "Never leave a stalled train on.",
        "Never let a train stand across a gap between two throttles.",
        "Whistle in short calls.",
        "Feel the case every half hour.",
        "Unplug after use.",
    ];

    public static ImmutableArray<string> Of(ImmutableArray<PostLoad> posts, double total, double usable) =>
        [
            FormattableString.Invariant($"{total:0.0} of {usable:0.#} A used."),
            .. posts
                .Where(p => !p.Within)
                .Select(p =>
                    FormattableString.Invariant($"{p.Id}: {p.Amps:0.0} A is more than this post may give. Move something to another post.")
                ),
            .. posts
                .Where(p => p.WireTooThin == true)
                .Select(p =>
                    $"{p.Id}: the wire is too thin for its fuse.{(p.GaugeAwg is { } gauge ? FormattableString.Invariant($" Fit {gauge} AWG.") : "")}"
                ),
        ];
}
