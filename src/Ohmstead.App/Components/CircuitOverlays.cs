using System.Collections.Immutable;
using Ohmstead.App.Background;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

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
            (diagnosis?.Faults ?? [])
                .SelectMany(f => f.Mode.Parts, (f, part) => (Part: part, Fault: f))
                .GroupBy(f => f.Part, f => f.Fault, StringComparer.Ordinal)
                .ToDictionary(
                    g => g.Key,
                    g => g.MaxBy(f => f.Probability)! is var f ? $"{PartNames.Mode(sheet, f.Mode)}, {ValueText.SureOf(f.Probability)}" : "",
                    StringComparer.Ordinal
                ),
            diagnosed?.View.PartTags
        );
    }

    /// <summary>Parts of a unit that are new in it.</summary>
    public static ImmutableHashSet<string> RenewedIn(BenchUnit unit) =>
        unit.All<PartChanged>()
            .Where(c => c.Fact.Change is PartChange.Renewed or PartChange.Replaced or PartChange.Added)
            .Select(c => c.Fact.Element)
            .ToImmutableHashSet(StringComparer.Ordinal);
}
