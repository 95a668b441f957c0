using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>All that is known of one part or terminal of a unit.</summary>
/// <param name="Name">As it is said at the bench.</param>
/// <param name="Kind">Null for a terminal.</param>
/// <param name="Values">What the sheet gives it, each with its name and unit.</param>
/// <param name="Changes">What was done to it, in words, first to last.</param>
/// <param name="Faults">Faults of it that are worth a word, most probable first.</param>
/// <param name="Readings">Readings that touch it, those that were taken first; otherwise in sheet order.</param>
/// <param name="Photos">Photos of it.</param>
public sealed record KnownPart(
    string Id,
    string Name,
    ElementKind? Kind,
    ImmutableArray<(string Name, string Value)> Values,
    ImmutableArray<string> Changes,
    ImmutableArray<FaultProbability> Faults,
    ImmutableArray<ReadingOffer> Readings,
    ImmutableArray<PhotoAdded> Photos
)
{
    /// <summary>A fault less probable than this is left out [probability].</summary>
    public const double WorthAWord = 0.01;

    /// <summary>What is known of a part; null when the sheet has no element, slider or terminal of this id.</summary>
    /// <param name="own">The unit's own sheet.</param>
    /// <param name="diagnosis">Null while none is worked out.</param>
    public static KnownPart? Of(string id, BenchUnit unit, TypeSheet own, ImmutableArray<ReadingOffer> offers, DiagnosisResult? diagnosis)
    {
        if (PartFigures.Of(own, id) is not { } figures)
            return null;
        return new(
            id,
            figures.Kind is null ? PartNames.Terminal(own, id) : PartNames.Of(own, id),
            figures.Kind,
            figures.Values,
            [.. unit.All<PartChanged>().Where(c => c.Fact.Element == id).Select(c => FactWords.Of(c.Fact, own))],
            [.. (diagnosis?.Faults ?? []).Where(f => f.Mode.Parts.Contains(id) && f.Probability >= WorthAWord)],
            [.. offers.Where(o => Touches(o, id, figures.Terminals)).OrderBy(o => o.Last is null)],
            [.. unit.All<PhotoAdded>().Where(p => p.Fact.About == id).Select(p => p.Fact)]
        );
    }

    /// <summary>
    /// The chance that each element or slider is at fault, by id: that of its most probable fault, and so a lower bound where
    /// several of its faults compete.
    /// </summary>
    public static ImmutableDictionary<string, double> Suspicion(DiagnosisResult diagnosis) =>
        MostProbable(diagnosis).ToImmutableDictionary(f => f.Key, f => f.Value.Probability, StringComparer.Ordinal);

    /// <summary>What is most probably wrong with each element or slider, in words, by id.</summary>
    public static ImmutableDictionary<string, string> Suspected(TypeSheet own, DiagnosisResult diagnosis) =>
        MostProbable(diagnosis)
            .ToImmutableDictionary(
                f => f.Key,
                f => $"{PartNames.Mode(own, f.Value.Mode)}, {ValueText.SureOf(f.Value.Probability)}",
                StringComparer.Ordinal
            );

    /// <summary>Parts of a unit that are new in it, by id.</summary>
    public static ImmutableHashSet<string> Renewed(BenchUnit unit) =>
        unit.All<PartChanged>()
            .Where(c => c.Fact.Change is PartChange.Renewed or PartChange.Replaced or PartChange.Added)
            .Select(c => c.Fact.Element)
            .ToImmutableHashSet(StringComparer.Ordinal);

    private static Dictionary<string, FaultProbability> MostProbable(DiagnosisResult diagnosis) =>
        diagnosis
            .Faults.SelectMany(f => f.Mode.Parts, (f, part) => (Part: part, Fault: f))
            .GroupBy(f => f.Part, f => f.Fault, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.MaxBy(f => f.Probability)!, StringComparer.Ordinal);

    private static bool Touches(ReadingOffer offer, string id, ImmutableArray<string> terminals) =>
        terminals.Contains(offer.Spec.From)
        || terminals.Contains(offer.Spec.To)
        || offer.State.Lifted.Contains(id)
        || (offer.State.Source is { } source && (terminals.Contains(source.From) || terminals.Contains(source.To)))
        || offer.State.Loads.Any(l => terminals.Contains(l.From) || terminals.Contains(l.To));
}
