using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Wiring;

/// <summary>The wire ends that a circuit has, and the terminals they sit on.</summary>
public static class WireEnds
{
    /// <summary>Kinds of elements with ends that are soldered; lugs of breakers and switches are the joints themselves.</summary>
    private static readonly string[] Kinds = ["wire", "winding", "rectifier", "resistor", "lamp"];

    /// <summary>Every wire end and its terminal, in the order of the sheet.</summary>
    public static ImmutableArray<(string End, string Terminal)> Of(TypeSheet sheet) =>
        [.. sheet.Elements.Where(e => Kinds.Contains(e.Kind, StringComparer.Ordinal)).SelectMany(EndsOf)];

    /// <summary>The terminals that have a wire end on them, in the order of the sheet.</summary>
    public static ImmutableArray<string> Terminals(TypeSheet sheet) => [.. Of(sheet).Select(e => e.Terminal).Distinct(StringComparer.Ordinal)];

    /// <summary>An end as it is said: "black wire from the common lug to post A, its end at post A".</summary>
    public static string Said(string end, TypeSheet sheet) => PartNames.End(sheet, end);

    /// <summary>
    /// The circuit keeps ends where they were found: each part that has some of them, with these on those terminals, as a change
    /// of this unit. Ends that the sheet does not have are left out. All at once, for half of an exchange makes no circuit.
    /// </summary>
    public static ImmutableArray<PartChanged> Keep(IEnumerable<(string End, string Terminal)> ends, TypeSheet own)
    {
        var changes = ImmutableArray.CreateBuilder<PartChanged>();
        foreach (var of in ends.GroupBy(e => Split(e.End).Element))
        {
            if (Json(own, of.Key) is not { } part)
                continue;
            var kept = of.Where(e => Put(part, Split(e.End).Which, e.Terminal)).Select(e => $"{e.End} on {e.Terminal}").ToList();
            if (kept.Count > 0)
                changes.Add(new PartChanged(of.Key, PartChange.Replaced, JsonSerializer.SerializeToElement(part), $"stays as found: {string.Join(", ", kept)}"));
        }
        return changes.ToImmutable();
    }

    private static bool Put(JsonObject part, string which, string terminal)
    {
        if (which is "from" or "to")
        {
            part[which] = terminal;
            return true;
        }
        if (!which.StartsWith("tap-", StringComparison.Ordinal) || part["taps"] is not JsonArray taps || !int.TryParse(which.AsSpan(4), NumberStyles.None, CultureInfo.InvariantCulture, out var n) || n < 1 || n > taps.Count)
            return false;
        taps[n - 1]!["to"] = terminal;
        return true;
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

    private static JsonObject? Json(TypeSheet own, string id) =>
        (own.Document["elements"] as JsonArray)?.OfType<JsonObject>().FirstOrDefault(e => (string?)e["id"] == id)?.DeepClone() as JsonObject;
}
