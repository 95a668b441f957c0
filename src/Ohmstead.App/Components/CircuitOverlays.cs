using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Components;

/// <summary>What screens lay over a circuit.</summary>
internal static class CircuitOverlays
{
    /// <summary>A reading as it is offered: controls and lifted parts as they really are, probes, the band, what was last shown.</summary>
    public static Overlay Of(TypeSheet sheet, ReadingOffer offer, Expectation? band) =>
        Overlay.Of(
            sheet,
            offer.Spec with
            {
                State = offer.State,
            },
            band?.Band ?? "",
            offer.Last is { Fact.Shown: { Kind: not ShownKind.NotTaken } shown } ? ShownText.Write(shown, offer.Spec.Quantity) : ""
        );

    /// <summary>A path set upright, with what is most probably wrong with its parts.</summary>
    /// <param name="diagnosed">Null while none is worked out.</param>
    public static Ladder Ladder(
        TypeSheet sheet,
        MeasuredPath path,
        ImmutableDictionary<string, ControlPosition> controls,
        Diagnosed? diagnosed
    )
    {
        var diagnosis = diagnosed?.Result;
        return Workshop.Drawing.Ladder.Of(
            sheet,
            path,
            controls,
            diagnosis is null ? Overlay.None.Suspicion : KnownPart.Suspicion(diagnosis),
            diagnosis is null ? ImmutableDictionary<string, string>.Empty : KnownPart.Suspected(sheet, diagnosis),
            diagnosed?.View.PartTags
        );
    }
}
