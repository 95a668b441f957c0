using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Wiring;

/// <summary>The wire ends that a circuit has, and the terminals they sit on.</summary>
public static class WireEnds
{
    /// <summary>Every wire end and its terminal, in the order of the sheet.</summary>
    public static ImmutableArray<(string End, string Terminal)> Of(TypeSheet sheet) =>
        [.. sheet.Elements.Where(e => PartKind.Of(e.Kind).AreEndsSoldered).SelectMany(EndsOf)];

    /// <summary>The wire ends on a terminal as the sheet has them.</summary>
    public static IEnumerable<string> On(TypeSheet sheet, string terminal) =>
        Of(sheet).Where(e => e.Terminal == terminal).Select(e => e.End);

    /// <summary>The terminals that have a wire end on them, in the order of the sheet.</summary>
    public static ImmutableArray<string> Terminals(TypeSheet sheet) =>
        [.. Of(sheet).Select(e => e.Terminal).Distinct(StringComparer.Ordinal)];

    /// <summary>An end as it is said: "black wire from the common lug to post A, its end at post A".</summary>
    public static string Said(string end, TypeSheet sheet) => PartNames.End(sheet, end);

    /// <summary>
    /// The circuit keeps ends where they are: each part that has some of them, with these on those terminals, as a change of this
    /// unit. Nothing else of the part is in it, so that no earlier change is undone. Ends that the unit does not have are left out.
    /// All at once, for half of an exchange makes no circuit.
    /// </summary>
    public static ImmutableArray<PartChanged> Keep(IEnumerable<(string End, string Terminal)> ends, TypeSheet own)
    {
        var known = Of(own).Select(e => e.End).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. ends.Where(e => known.Contains(e.End))
                .GroupBy(e => Split(e.End).Element, StringComparer.Ordinal)
                .Select(part => new PartChanged(
                    part.Key,
                    PartChange.Moved,
                    JsonSerializer.SerializeToElement(part.ToDictionary(e => Split(e.End).Which, e => e.Terminal)),
                    ""
                )),
        ];
    }

    private static IEnumerable<(string End, string Terminal)> EndsOf(Element e)
    {
        yield return ($"{e.Id}.from", e.From);
        yield return ($"{e.Id}.to", e.To);
        if (e is not Winding w)
            yield break;
        for (var n = 0; n < w.Taps.Length; n++)
            yield return (string.Create(CultureInfo.InvariantCulture, $"{e.Id}.tap-{n + 1}"), w.Taps[n].To);
    }

    private static (string Element, string Which) Split(string end)
    {
        var dot = end.LastIndexOf('.');
        return dot < 0 ? (end, "") : (end[..dot], end[(dot + 1)..]);
    }
}
