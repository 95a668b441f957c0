using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Testing;

/// <summary>Which posts a breaker guards.</summary>
internal static class BreakerReach
{
    /// <summary>True when no pair of posts that is read on mains is joined by metal once every breaker is open.</summary>
    public static bool HoldsEveryPost(TypeSheet sheet)
    {
        // A breaker in the mains lead guards every post.
        var mains = MainsSide.Of(sheet);
        var breakers = sheet.Elements.Where(e => e.Kind == ElementKind.Breaker).ToList();
        if (breakers.Exists(b => mains.Contains(b.From)))
            return true;
        var metal = sheet.Elements.Where(e => e.Kind is not (ElementKind.Insulation or ElementKind.Breaker)).ToList();
        return sheet
            .Readings.Where(r =>
                r.Quantity is Quantity.AcVolts or Quantity.DcVolts
                && BenchConditions.IsOnMains(sheet, r)
                && !r.IsOpenCase
                && !mains.Contains(r.From)
            )
            .All(r => !Reach(metal, r.From).Contains(r.To));
    }

    private static HashSet<string> Reach(List<Element> metal, string from)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal) { from };
        for (var before = 0; before != reached.Count; )
        {
            before = reached.Count;
            foreach (var element in metal)
            {
                string[] ends = [.. element.OtherTerminals, element.From, element.To];
                if (ends.Any(reached.Contains))
                    reached.UnionWith(ends);
            }
        }
        return reached;
    }
}
