using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Findings;

/// <summary>A sheet with the shop's own chances in place of its own: each fault's odds times what the shop learned, never 0 and never certain.</summary>
public static class ShopChances
{
    /// <summary>No history makes a fault rarer than this or surer than <see cref="MostPercent"/> before a reading [%].</summary>
    public const double LeastPercent = 0.01;

    /// <summary>The most [%].</summary>
    public const double MostPercent = 60;

    /// <summary>The sheet with these chances; the same object where there are none.</summary>
    public static TypeSheet In(TypeSheet sheet, ImmutableArray<ShopChance> chances)
    {
        if (chances.IsDefaultOrEmpty)
            return sheet;
        var odds = chances.ToDictionary(c => (c.Kind, c.Mode), c => c.Odds);
        return sheet with { Elements = [.. sheet.Elements.Select(e => Of(e, odds))] };
    }

    /// <summary>A chance whose odds are so many times as high, within the bounds.</summary>
    public static double Times(double percent, double odds) =>
        percent is <= 0 or >= 100 ? percent
        : percent * odds / (100 - percent + (percent * odds)) is var share ? Math.Clamp(100 * share, LeastPercent, MostPercent)
        : percent;

    private static Element Of(Element element, Dictionary<(string, string), double> odds)
    {
        var own = element with { Percents = Of(element.Kind, element.Percents, odds) };
        return own is not Winding w
            ? own
            : w with
            {
                Sliders = [.. w.Sliders.Select(s => s with { Percents = Of(ElementKind.Slider, s.Percents, odds) })],
            };
    }

    private static ImmutableDictionary<string, double> Of(
        ElementKind kind,
        ImmutableDictionary<string, double> percents,
        Dictionary<(string, string), double> odds
    )
    {
        foreach (var mode in kind.Faults())
            if (odds.TryGetValue((kind.Word(), mode.Mode), out var times))
                percents = percents.SetItem(mode.Mode, Times(percents.GetValueOrDefault(mode.Mode, mode.Percent), times));
        return percents;
    }
}
