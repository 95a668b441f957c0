using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Readings;

/// <summary>The sheet of one very unit: its type's, with the parts that were changed on it.</summary>
public static class OwnSheet
{
    /// <summary>Why the circuit of a unit cannot become so, in words; empty where it can.</summary>
    /// <param name="sheet">Of its type.</param>
    public static string WhyNot(BenchUnit unit, TypeSheet sheet, IEnumerable<PartChanged> changes)
    {
        var entries = changes.Select((c, n) => unit.Last with { Fact = c, Number = unit.LastNumber + n + 1 });
        return Of(unit with { Standing = unit.Standing.AddRange(entries) }, sheet) is { IsSound: false } broken
            ? $"That makes no circuit: {broken.Problems[0].Wrong}. Is every joint right?"
            : "";
    }

    /// <summary>The sheet of this unit; every problem when what was changed makes no circuit any more.</summary>
    public static Parsed<TypeSheet> Of(BenchUnit unit, TypeSheet sheet) => With(unit, sheet, Chances(unit));

    /// <summary>The sheet of this unit as the bench works by it: with the shop's limits where they are the stricter.</summary>
    public static Parsed<TypeSheet> OnBench(BenchUnit unit, TypeSheet sheet, Shop shop) =>
        Of(unit, sheet) is { IsSound: true, Value: { } own } ? new(ShopLimits.Bind(own, shop), []) : Of(unit, sheet);

    /// <summary>
    /// An element with everything that was changed on this unit: the one place where another part starts from. Its sliders have the chances
    /// of the day they were put in, for what was renewed since counts after every change. Null where it is not there.
    /// </summary>
    internal static Element? Part(BenchUnit unit, TypeSheet sheet, string element) =>
        With(unit, sheet, []).Value?.Elements.FirstOrDefault(e => e.Id == element);

    private static Parsed<TypeSheet> With(BenchUnit unit, TypeSheet sheet, IEnumerable<UnitChange> chances)
    {
        if (!unit.All<PartChanged>().Any())
            return new(sheet, []);
        var problems = new List<Problem>();
        var changes = unit.All<PartChanged>().SelectMany(p => PartText.Changes(p.Fact, problems));
        return UnitSheet.Of(sheet, changes.Concat(chances), problems);
    }

    /// <summary>How new each part is, by all that was done to it.</summary>
    private static IEnumerable<UnitChange> Chances(BenchUnit unit)
    {
        var last = new Dictionary<string, PartChange>(StringComparer.Ordinal);
        var rewired = new Dictionary<string, bool>(StringComparer.Ordinal);
        foreach (var (_, part) in unit.All<PartChanged>())
        {
            // Where its ends are says nothing of how new a part is.
            if (part.Change is PartChange.Moved)
                continue;
            // A part renewed or cleaned in place of a replaced one is as new as that was: its chances are lowered once.
            if (
                part.Change is not PartChange.Rewired
                && !(
                    part.Change is PartChange.Renewed or PartChange.Serviced && last.GetValueOrDefault(part.Element) == PartChange.Replaced
                )
            )
                last[part.Element] = part.Change;
            rewired[part.Element] = part.Change == PartChange.Rewired;
        }
        bool IsThere(string id) => last.GetValueOrDefault(id) != PartChange.Removed;
        var renewed = last.Where(l => l.Value is PartChange.Renewed or PartChange.Serviced).Select(l => l.Key);
        var again = rewired.Where(r => r.Value && IsThere(r.Key)).Select(r => r.Key);
        return
        [
            .. renewed.Order(StringComparer.Ordinal).Select(id => new PartRenewed($"$.{id}", id)),
            .. again.Order(StringComparer.Ordinal).Select(id => new PartRewired($"$.{id}", id)),
        ];
    }
}
