using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Circuits;

/// <summary>Sheets written another way that mean the same circuit, or nearly.</summary>
internal static class Rewritten
{
    /// <summary>Every terminal and element has another name, and cores, elements, taps and sliders stand in another order.</summary>
    public static JsonObject Renamed(JsonObject sheet, Random random)
    {
        var made = Plain(sheet);
        var names = Terminals(made).Distinct(StringComparer.Ordinal).ToArray();
        var order = Enumerable.Range(0, names.Length).ToArray();
        random.Shuffle(order);
        var terminals = names
            .Select((n, k) => (n, k))
            .ToDictionary(p => p.n, p => FormattableString.Invariant($"t{order[p.k]}"), StringComparer.Ordinal);
        var ids = Elements(made)
            .SelectMany(e => Items(e, "sliders").Prepend(e))
            .Select(e => Text(e, "id"))
            .Select((n, k) => (n, k))
            .ToDictionary(p => p.n, p => FormattableString.Invariant($"e{1000 - p.k}"), StringComparer.Ordinal);
        foreach (var e in Elements(made))
        foreach (var part in Items(e, "sliders").Concat(Items(e, "taps")).Prepend(e))
        {
            foreach (var field in new[] { "from", "to" })
                if (part[field] is JsonValue)
                    part[field] = terminals[Text(part, field)];
            if (part["id"] is not null)
                part["id"] = ids[Text(part, "id")];
        }
        foreach (var c in Items(made, "cores"))
            c["referenceWinding"] = ids[Text(c, "referenceWinding")];
        foreach (var group in made["near"]?.AsArray() ?? [])
            Replace(group!.AsArray(), terminals);
        foreach (var r in Items(made, "readings"))
            Rename(r, terminals, ids);
        foreach (
            var list in new[] { made["elements"], made["cores"] }
                .Concat(Elements(made).SelectMany(e => new[] { e["taps"], e["sliders"] }))
                .OfType<JsonArray>()
        )
            Shuffle(list, random);
        return made;
    }

    /// <summary>An end of an element moved to a terminal of its own, which a wire joins to the old one.</summary>
    public static JsonObject WithWire(JsonObject sheet, Random random, double ohms)
    {
        var made = Plain(sheet);
        var elements = Elements(made).ToArray();
        var moved = elements[random.Next(elements.Length)];
        var end = random.Next(2) == 0 ? "from" : "to";
        var old = Text(moved, end);
        moved[end] = "a-new-terminal";
        made["elements"]!
            .AsArray()
            .Insert(
                random.Next(elements.Length),
                new JsonObject
                {
                    ["id"] = "a-new-wire",
                    ["kind"] = "wire",
                    ["from"] = old,
                    ["to"] = "a-new-terminal",
                    ["ohms"] = ohms,
                }
            );
        return made;
    }

    /// <summary>A tap at some turn of some winding, to a terminal that nothing else uses.</summary>
    public static JsonObject WithUnusedTap(JsonObject sheet, Random random)
    {
        var made = Plain(sheet);
        var windings = Elements(made).Where(e => Text(e, "kind") == "winding").ToArray();
        var winding = windings[random.Next(windings.Length)];
        winding["taps"] ??= new JsonArray();
        var turn = Math.Round(winding["turns"]!.GetValue<double>() * random.NextDouble(), 3);
        winding["taps"]!.AsArray().Add(new JsonObject { ["turn"] = turn, ["to"] = "a-new-tap" });
        made["near"] ??= new JsonArray();
        made["near"]!.AsArray().Add(new JsonArray("a-new-tap"));
        return made;
    }

    /// <summary>A winding without taps and sliders as two in series, divided at some share of its turns.</summary>
    public static JsonObject InTwoParts(JsonObject sheet, Random random)
    {
        var made = Plain(sheet);
        var all = made["elements"]!.AsArray();
        var windings = Elements(made)
            .Where(e =>
                Text(e, "kind") == "winding" && Items(e, "taps").Count() + Items(e, "sliders").Count() == 0 && !IsReference(made, e)
            )
            .ToArray();
        if (windings.Length == 0)
            return made;
        var first = windings[random.Next(windings.Length)];
        var second = first.DeepClone().AsObject();
        var share = 0.1 + (0.8 * random.NextDouble());
        foreach (var (part, of) in new[] { (first, share), (second, 1 - share) })
        foreach (var field in new[] { "turns", "ohms", "leakageHenries" })
            if (part[field] is { } value)
                part[field] = of * value.GetValue<double>();
        second["id"] = "a-second-part";
        first["to"] = "a-new-middle";
        second["from"] = "a-new-middle";
        all.Add(second);
        return made;
    }

    /// <summary>The same, every reading read: by place in the sheet, so that names do not matter.</summary>
    public static double[] Readings(JsonObject sheet)
    {
        var unit = new BenchUnit(TypeSheetFile.Read(sheet.ToJsonString()).Required);
        return [.. unit.Model.Sheet.Readings.Select(r => unit.Read(r, unit.Model.Nominal))];
    }

    /// <summary>The circuit and the readings alone, without what names parts for other reasons.</summary>
    public static JsonObject Plain(JsonObject sheet)
    {
        var made = sheet.DeepClone().AsObject();
        foreach (var field in new[] { "observations", "takeApart" })
            made.Remove(field);
        foreach (var r in Items(made, "readings"))
            r["access"] = "closed";
        return made;
    }

    private static bool IsReference(JsonObject sheet, JsonObject winding) =>
        Items(sheet, "cores").Any(c => Text(c, "referenceWinding") == Text(winding, "id"));

    private static IEnumerable<JsonObject> Elements(JsonObject sheet) => Items(sheet, "elements");

    private static IEnumerable<JsonObject> Items(JsonObject at, string list) =>
        at[list] is JsonArray items ? items.Select(i => i!.AsObject()) : [];

    private static string Text(JsonObject at, string field) => at[field]!.GetValue<string>();

    private static IEnumerable<string> Terminals(JsonObject sheet) =>
        Elements(sheet)
            .SelectMany(e =>
                Items(e, "sliders").Concat(Items(e, "taps")).Select(p => Text(p, "to")).Append(Text(e, "from")).Append(Text(e, "to"))
            );

    private static void Rename(JsonObject reading, Dictionary<string, string> terminals, Dictionary<string, string> ids)
    {
        if (reading["between"] is JsonArray between)
            Replace(between, terminals);
        if (reading["state"] is not JsonObject state)
            return;
        foreach (var part in Items(state, "loads").Concat(state["source"] is JsonObject s ? [s] : []))
        foreach (var field in new[] { "from", "to" })
            part[field] = terminals[Text(part, field)];
        foreach (var strap in state["joined"]?.AsArray() ?? [])
            Replace(strap!.AsArray(), terminals);
        if (state["lifted"] is JsonArray lifted)
            Replace(lifted, ids);
    }

    private static void Replace(JsonArray list, Dictionary<string, string> names)
    {
        for (var n = 0; n < list.Count; n++)
            list[n] = names[list[n]!.GetValue<string>()];
    }

    private static void Shuffle(JsonArray list, Random random)
    {
        var items = list.ToArray();
        list.Clear();
        random.Shuffle(items);
        foreach (var i in items)
            list.Add(i);
    }
}
