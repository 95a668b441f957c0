using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>The lanes of a unit: from each post to the one that most readings share, and from blade to blade.</summary>
/// <param name="First">The post, or the first blade.</param>
/// <param name="Second">The common post, or the second blade.</param>
public readonly record struct Lane(string First, string Second)
{
    /// <summary>The lanes of a sheet: posts in the order of its readings, the mains last.</summary>
    public static ImmutableArray<Lane> Of(TypeSheet sheet)
    {
        var sides = new CircuitSides(sheet);
        var pairs = sheet
            .Readings.Where(r => !r.IsOpenCase && r.From.Length > 0 && r.Quantity != Quantity.InsulationOhms)
            .Select(r => (r.From, r.To))
            .Where(p => sides.IsMains(p.From) == sides.IsMains(p.To) && p.From != sides.Iron && p.To != sides.Iron)
            .ToList();
        var posts = pairs.Where(p => !sides.IsMains(p.From)).ToList();
        var common = posts.SelectMany(p => new[] { p.From, p.To }).GroupBy(t => t, StringComparer.Ordinal).MaxBy(g => g.Count())?.Key;
        return
        [
            .. posts
                .SelectMany(p => new[] { p.From, p.To })
                .Distinct(StringComparer.Ordinal)
                .Where(t => t != common)
                .Select(t => new Lane(t, common!)),
            .. pairs.Where(p => sides.IsMains(p.From)).Select(p => new Lane(p.From, p.To)).Take(1),
        ];
    }
}
