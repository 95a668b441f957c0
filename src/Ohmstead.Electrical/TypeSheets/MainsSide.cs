using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What of a circuit is joined to the plug by metal.</summary>
public static class MainsSide
{
    /// <summary>The terminals on the mains side: those that the plug reaches without crossing insulation.</summary>
    public static ImmutableHashSet<string> Of(TypeSheet sheet) =>
        Reach(
            sheet,
            sheet
                .Readings.Where(r => r.State.Source is { IsMains: true })
                .SelectMany(r => (string[])[r.State.Source!.From, r.State.Source.To])
        );

    /// <summary>The terminals that are joined to some by metal, these included.</summary>
    internal static ImmutableHashSet<string> Reach(TypeSheet sheet, IEnumerable<string> from)
    {
        var reached = new HashSet<string>(from, StringComparer.Ordinal);
        var metal = sheet.Elements.Where(e => e.Kind != ElementKind.Insulation).ToList();
        for (var before = -1; before != reached.Count; )
        {
            before = reached.Count;
            foreach (var e in metal)
                if (Terminals(e).Any(reached.Contains))
                    reached.UnionWith(Terminals(e));
        }
        return reached.ToImmutableHashSet(StringComparer.Ordinal);
    }

    internal static IEnumerable<string> Terminals(Element e) => e.OtherTerminals.Append(e.From).Append(e.To);
}
