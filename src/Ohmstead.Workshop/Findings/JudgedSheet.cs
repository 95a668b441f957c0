using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Findings;

/// <summary>
/// The sheet of a unit with what hand and eye have found put into its chances: a fault seen not to be there has none, one seen
/// to be there is as good as certain. The readings then count under these chances like under any others, so a judgement also
/// moves what they say of every other fault.
/// </summary>
public static class JudgedSheet
{
    /// <summary>Odds of a million: only readings that could not be otherwise argue with an eye.</summary>
    private const double ConfirmedPercent = 99.9999;

    /// <summary>The standing judgements: the last of each fault, while its part has not been changed since.</summary>
    public static ImmutableDictionary<(string Element, string Mode), FindingJudged> Judgements(BenchUnit unit)
    {
        var changed = unit.All<PartChanged>()
            .GroupBy(p => p.Fact.Element, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Max(p => p.Entry.Number), StringComparer.Ordinal);
        return unit.All<FindingJudged>()
            .Where(f => f.Entry.Number > changed.GetValueOrDefault(f.Fact.Element))
            .GroupBy(f => (f.Fact.Element, f.Fact.Mode))
            .Select(g => g.Last().Fact)
            .Where(f => f.Judgement != Judgement.Open)
            .ToImmutableDictionary(f => (f.Element, f.Mode));
    }

    /// <summary>The unit's own sheet with these chances.</summary>
    /// <param name="shop">The shop's own chances of faults; those of the sheet where it has none.</param>
    public static TypeSheet Of(BenchUnit unit, TypeSheet own, ImmutableArray<ShopChance> shop = default)
    {
        own = ShopChances.In(own, shop);
        var judged = Judgements(unit);
        if (judged.IsEmpty)
            return own;
        return own with
        {
            Elements = [.. own.Elements.Select(e => Judge(e, judged))],
            SharedFaults = [.. own.SharedFaults.Select(f => Judge(f, judged))],
        };
    }

    /// <summary>What is seen on one part alone is not what all of them share.</summary>
    private static SharedFault Judge(SharedFault fault, ImmutableDictionary<(string Element, string Mode), FindingJudged> judged)
    {
        if (judged.TryGetValue((fault.Id, fault.Mode), out var fact))
            return fault with { Percent = fact.Judgement == Judgement.Confirmed ? ConfirmedPercent : 0 };
        return judged.Values.Any(j => j.Judgement == Judgement.Confirmed && fault.Elements.Contains(j.Element))
            ? fault with
            {
                Percent = 0,
            }
            : fault;
    }

    private static Element Judge(Element element, ImmutableDictionary<(string Element, string Mode), FindingJudged> judged)
    {
        var own = element with { Percents = Judge(element.Id, element.Kind, element.Percents, judged) };
        return own is not Winding w
            ? own
            : w with
            {
                Sliders = [.. w.Sliders.Select(s => s with { Percents = Judge(s.Id, ElementKind.Slider, s.Percents, judged) })],
            };
    }

    private static ImmutableDictionary<string, double> Judge(
        string id,
        ElementKind kind,
        ImmutableDictionary<string, double> percents,
        ImmutableDictionary<(string Element, string Mode), FindingJudged> judged
    )
    {
        foreach (var mode in kind.Faults())
            if (judged.TryGetValue((id, mode.Mode), out var fact))
                percents = percents.SetItem(mode.Mode, fact.Judgement == Judgement.Confirmed ? ConfirmedPercent : 0);
        return percents;
    }
}
