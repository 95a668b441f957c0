using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>What a thermal breaker does after it opened: the types of SAE J553 (key sae-j553), tested at 23 ± 3 °C.</summary>
/// <param name="Number">1 to 3.</param>
/// <param name="Does">In a sentence.</param>
public sealed record ResetType(int Number, string Does)
{
    /// <summary>All three.</summary>
    public static ImmutableArray<ResetType> All { get; } =
    [
        new(1, "Type 1 closes again by itself: the train starts while hands are on the track."),
        new(2, "Type 2 stays open while it has power. Unplug it to reset it."),
        new(3, "Type 3 is reset by hand: fit this one."),
    ];
}
