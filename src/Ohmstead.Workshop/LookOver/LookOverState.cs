using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.LookOver;

/// <summary>How far the look-over of a unit has come.</summary>
/// <param name="Signs">The sheet's observations with their last answers; null for one not asked yet.</param>
/// <param name="Parts">The shop's look-over list with what was last noted; null for one not looked at yet.</param>
/// <param name="Photos">Every photo once, first taken first.</param>
/// <param name="Damage">Every mark that stands.</param>
public sealed record LookOverState(
    ImmutableArray<(Observation Sign, Answer? Answer)> Signs,
    ImmutableArray<(LookOverItem Item, ConditionNoted? Noted)> Parts,
    ImmutableArray<PhotoAdded> Photos,
    ImmutableArray<(Entry Entry, DamagePinned Fact)> Damage
)
{
    /// <summary>Symptoms that can be asked now and were not.</summary>
    public int SignsLeft => Signs.Count(s => s.Answer is null && !Waits(s.Sign));

    /// <summary>True for a symptom that is seen only with the cover off, while the cover is on.</summary>
    public bool Waits(Observation sign) => !IsOpened && SymptomsInWords.IsUnderCover(sign);

    /// <summary>Parts that can be looked at now and were not.</summary>
    public int PartsLeft => Parts.Count(p => p.Noted is null && !Waits(p.Item));

    /// <summary>True for a part under the cover while the cover is on.</summary>
    public bool Waits(LookOverItem item) => !IsOpened && item.IsUnderCover;

    /// <summary>Parts to be replaced, of which no new one was put in since.</summary>
    public ImmutableArray<LookOverItem> ToReplace { get; private init; } = [];

    /// <summary>Symptoms that the owner's words speak of, and what they say; for those not asked yet.</summary>
    public ImmutableDictionary<string, string> Ticked { get; private init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>True while a part of it is off: then what lies under the cover can be looked at.</summary>
    public bool IsOpened { get; private init; }

    /// <summary>Works it out.</summary>
    /// <param name="sheet">The unit's type sheet; null while there is none: no signs are asked.</param>
    public static LookOverState Of(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        var signs = unit.Signs;
        var noted = unit.All<ConditionNoted>()
            .GroupBy(c => c.Fact.Item, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);
        return new(
            [.. (sheet?.Observations ?? []).Select(o => (o, signs.TryGetValue(o.Id, out var answer) ? answer : (Answer?)null))],
            [.. shop.LookOver.Select(i => (i, noted.GetValueOrDefault(i.Id).Fact))],
            [.. unit.All<PhotoAdded>().Select(p => p.Fact).DistinctBy(p => p.Photo)],
            [.. unit.All<DamagePinned>()]
        )
        {
            ToReplace =
            [
                .. shop.LookOver.Where(i =>
                    noted.TryGetValue(i.Id, out var last)
                    && last.Fact.Decision == Decision.Renew
                    && !PartsOfItem.IsNewSince(unit, sheet, i.Id, last.Entry.Number)
                ),
            ],
            Ticked = SymptomsInWords.Of(unit.Card.Complaint, (sheet?.Observations ?? []).Where(o => !signs.ContainsKey(o.Id))),
            IsOpened = sheet is not null && !ApartState.Of(unit, sheet).Off.IsEmpty,
        };
    }
}
