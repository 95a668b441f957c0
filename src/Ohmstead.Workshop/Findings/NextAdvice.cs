using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Findings;

/// <summary>A reading proposed next, and why.</summary>
public sealed record NextAdvice(NextReading Reading, ImmutableArray<string> Reasons)
{
    /// <summary>What begins its title where it is a doubted check: "Read again"; empty for what was not taken yet.</summary>
    public string Again { get; init; } = "";

    /// <summary>True for a doubted check that is to be read again.</summary>
    public bool IsAgain => Again.Length > 0;

    /// <summary>The reading to begin with: what says most, or the first of the sheet that can be taken; null for none.</summary>
    public static string? First(IReadOnlyList<NextAdvice> advice, IReadOnlyList<ReadingOffer> offers) =>
        advice.Count > 0 ? advice[0].Reading.Spec.Id : offers.FirstOrDefault(o => o is { IsOpen: true, IsToDo: true })?.Spec.Id;

    /// <summary>All readings as a list of them is read: what can be taken now by the advice, then what is locked, then what was taken.</summary>
    public static IEnumerable<ReadingOffer> InOrder(IReadOnlyList<NextAdvice> advice, IEnumerable<ReadingOffer> offers)
    {
        var places = advice.Select((a, place) => (a.Reading.Spec.Id, place)).ToDictionary(a => a.Id, a => a.place, StringComparer.Ordinal);
        return offers
            .OrderBy(o =>
                !o.IsToDo ? 2
                : o.IsOpen ? 0
                : 1
            )
            .ThenBy(o => places.GetValueOrDefault(o.Spec.Id, int.MaxValue));
    }

    /// <summary>
    /// The reading that comes after the one on the screen: the best of the advice that still holds, or the first of the sheet that
    /// can be taken and was not; null for none.
    /// </summary>
    /// <param name="shownId">The reading on the screen.</param>
    public static NextAdvice? After(string? shownId, IReadOnlyList<NextAdvice> advice, IReadOnlyList<ReadingOffer> offers) =>
        advice.FirstOrDefault(n =>
            n.Reading.Spec.Id != shownId
            && offers.FirstOrDefault(o => o.Spec.Id == n.Reading.Spec.Id) is { IsOpen: true } open
            && (n.IsAgain ? open.Doubted.Length > 0 : !open.IsMeasured)
        )
        ?? (
            offers.FirstOrDefault(o => o is { IsOpen: true, IsMeasured: false, IsToDo: true } && o.Spec.Id != shownId) is { } first
                ? new NextAdvice(new(first.Spec, 0, first.Spec.Minutes, []), [])
                : null
        );
}
