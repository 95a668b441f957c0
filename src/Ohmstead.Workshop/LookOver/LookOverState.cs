using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
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
    /// <summary>Signs not asked yet.</summary>
    public int SignsLeft => Signs.Count(s => s.Answer is null);

    /// <summary>Parts not looked at yet.</summary>
    public int PartsLeft => Parts.Count(p => p.Noted is null);

    /// <summary>Works it out.</summary>
    /// <param name="sheet">The unit's type sheet; null while there is none: no signs are asked.</param>
    public static LookOverState Of(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        var signs = unit.Signs;
        var noted = unit.All<ConditionNoted>()
            .GroupBy(c => c.Fact.Item, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last().Fact, StringComparer.Ordinal);
        return new(
            [
                .. (sheet?.Observations ?? []).Select(o =>
                    (o, signs.TryGetValue(o.Id, out var answer) ? answer : (Answer?)null)
                ),
            ],
            [.. shop.LookOver.Select(i => (i, noted.GetValueOrDefault(i.Id)))],
            [.. unit.All<PhotoAdded>().Select(p => p.Fact).DistinctBy(p => p.Photo)],
            [.. unit.All<DamagePinned>()]
        );
    }
}
