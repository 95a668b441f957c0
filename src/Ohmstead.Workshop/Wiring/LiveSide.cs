using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Wiring;

/// <summary>The part of a circuit that is live when the plug is in.</summary>
public static class LiveSide
{
    private static readonly ConditionalWeakTable<TypeSheet, ImmutableHashSet<string>> Kept = [];

    /// <summary>
    /// The points of the plug: where the readings above 30 V are fed, and the two blades while the type is not known; none for a unit
    /// without mains.
    /// </summary>
    public static ImmutableArray<string> Plug(TypeSheet sheet) =>
        UntypedIds.IsOne(sheet) ? UntypedIds.Plug
        : sheet.Readings.FirstOrDefault(r => r.State.Source is { IsMains: true })?.State.Source is { } source ? [source.From, source.To]
        : [];

    /// <summary>The terminals joined to the plug by anything but insulation.</summary>
    public static ImmutableHashSet<string> Of(TypeSheet sheet) => Kept.GetValue(sheet, Find);

    /// <summary>True when a part has an end on the mains side, or beside it, where a blob of solder would reach.</summary>
    public static bool IsAt(TypeSheet sheet, Element part)
    {
        var live = Of(sheet);
        string[] ends = [part.From, part.To, .. part.OtherTerminals];
        return part.Kind != ElementKind.Insulation
            && (live.Overlaps(ends) || sheet.Near.Any(n => n.Any(live.Contains) && n.Any(t => ends.Contains(t))));
    }

    private static ImmutableHashSet<string> Find(TypeSheet sheet)
    {
        var live = Plug(sheet).ToImmutableHashSet(StringComparer.Ordinal).ToBuilder();
        bool grew;
        do
        {
            grew = false;
            foreach (var e in sheet.Elements.Where(e => e.Kind != ElementKind.Insulation))
            {
                string[] ends = [e.From, e.To, .. e.OtherTerminals];
                if (ends.Any(live.Contains))
                    foreach (var end in ends)
                        grew |= live.Add(end);
            }
        } while (grew);
        return live.ToImmutable();
    }
}
