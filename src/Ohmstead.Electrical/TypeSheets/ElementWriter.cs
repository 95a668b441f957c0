using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// Writes elements as JSON. An element that was read is written as it was read, except where its record says something else by now: fields
/// that this program does not know, and numbers as they were typed, stay.
/// </summary>
internal static class ElementWriter
{
    public static JsonObject Of(Element part)
    {
        var json = part.AsRead.Copy();
        var before = ElementReader.Read(new JsonCursor(part.AsRead.Json, "$", []));
        Put(json, Whole(part), before is null ? [] : Whole(before));
        return json;
    }

    public static JsonObject Of(SharedFault fault)
    {
        var json = fault.AsRead.Copy();
        var before = SharedFault.Read(new JsonCursor(fault.AsRead.Json, "$", []));
        Put(json, Whole(fault), before is null ? [] : Whole(before));
        return json;
    }

    private static JsonObject Whole(SharedFault fault) =>
        new()
        {
            ["id"] = fault.Id,
            ["elements"] = new JsonArray([.. fault.Elements.Select(e => JsonValue.Create(e))]),
            ["mode"] = fault.Mode,
            ["percent"] = fault.Percent,
        };

    /// <summary>Puts what is other now than it was before.</summary>
    private static void Put(JsonObject json, JsonObject now, JsonObject before)
    {
        foreach (var name in before.Select(f => f.Key).Where(name => !now.ContainsKey(name)))
            json.Remove(name);
        foreach (var (name, value) in now)
        {
            if (JsonNode.DeepEquals(value, before[name]))
                continue;
            if (json[name] is JsonObject own && value is JsonObject fields && before[name] is JsonObject was)
                Put(own, fields, was);
            else if (json[name] is JsonArray list && value is JsonArray items && IsOfSameParts(list, items))
                for (var n = 0; n < items.Count; n++)
                    Put(list[n]!.AsObject(), items[n]!.AsObject(), before[name]![n]!.AsObject());
            else
                json[name] = value!.DeepClone();
        }
    }

    private static bool IsOfSameParts(JsonArray list, JsonArray items) =>
        list.Count == items.Count && items.All(i => i is JsonObject) && list.All(i => i is JsonObject);

    /// <summary>All that a record says.</summary>
    private static JsonObject Whole(Element part)
    {
        var json = new JsonObject
        {
            ["id"] = part.Id,
            ["kind"] = part.Kind.Word(),
            ["from"] = part.From,
            ["to"] = part.To,
        };
        part.Put(json);
        if (part.Colour.Length > 0)
            json["colour"] = part.Colour;
        Doubts(json, part.Spread, part.KindError, part.Percents);
        return json;
    }

    internal static void Doubts(
        JsonObject json,
        SpreadOverrides spread,
        SpreadOverrides kindError,
        ImmutableDictionary<string, double> percents
    )
    {
        Given(json, "spread", spread.ByName);
        Given(json, "kindError", kindError.ByName);
        Given(json, "faults", percents);
    }

    internal static void Given(JsonObject json, string name, double value)
    {
        if (value != 0)
            json[name] = value;
    }

    internal static void Given(JsonObject json, string name, IEnumerable<JsonObject> items)
    {
        var list = new JsonArray([.. items]);
        if (list.Count > 0)
            json[name] = list;
    }

    private static void Given(JsonObject json, string name, ImmutableDictionary<string, double> values)
    {
        if (!values.IsEmpty)
            json[name] = new JsonObject(
                values.OrderBy(v => v.Key, StringComparer.Ordinal).Select(v => KeyValuePair.Create(v.Key, (JsonNode?)v.Value))
            );
    }
}
