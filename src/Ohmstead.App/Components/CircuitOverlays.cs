using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Components;

/// <summary>What screens lay over a circuit.</summary>
internal static class CircuitOverlays
{
    /// <summary>A reading as it is offered: controls and lifted parts as they really are, probes, the band, what was last shown.</summary>
    public static Overlay Of(ReadingOffer offer, Expectation? band) =>
        Overlay.Of(
            offer.Spec with
            {
                State = offer.State,
            },
            band?.Band ?? "",
            offer.Last is { Fact.Shown: { Kind: not ShownKind.NotTaken } shown }
                ? ShownText.Write(shown, offer.Spec.Quantity)
                : ""
        );

    /// <summary>Parts of a unit that are new in it.</summary>
    public static ImmutableHashSet<string> RenewedIn(BenchUnit unit) =>
        unit.All<PartChanged>()
            .Where(c => c.Fact.Change is PartChange.Renewed or PartChange.Replaced or PartChange.Added)
            .Select(c => c.Fact.Element)
            .ToImmutableHashSet(StringComparer.Ordinal);
}
