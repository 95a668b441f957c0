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
        part.Match(
            r =>
            {
                json["ohms"] = r.Ohms;
                Given(json, "ratedAmps", r.RatedAmps);
            },
            w => Put(json, w),
            l => (json["volts"], json["amps"]) = (l.Volts, l.Amps),
            r =>
            {
                (json["saturationAmps"], json["slopeVolts"]) = (r.SaturationAmps, r.SlopeVolts);
                (json["seriesOhms"], json["leakageOhms"]) = (r.SeriesOhms, r.LeakageOhms);
            },
            s =>
            {
                (json["control"], json["ohms"], json["openOhms"]) = (s.Control, s.Ohms, s.OpenOhms);
                json["closedIn"] = new JsonArray([.. s.ClosedIn.Select(p => JsonValue.Create(p))]);
                Given(json, "mostAmps", s.MostAmps);
            },
            c => json["farads"] = c.Farads
        );
        if (part.Colour.Length > 0)
            json["colour"] = part.Colour;
        Doubts(json, part.Spread, part.KindError, part.Percents);
        return json;
    }

    private static void Put(JsonObject json, Winding w)
    {
        if (w.IsOnCore)
            json["core"] = w.Core;
        (json["turns"], json["ohms"]) = (w.Turns, w.Ohms);
        if (w.IsOnCore)
            json["leakageHenries"] = w.LeakageHenries;
        Given(json, "mostAmps", w.MostAmps);
        Given(json, "taps", w.Taps.Select(t => new JsonObject { ["turn"] = t.Turn, ["to"] = t.To }));
        Given(json, "sliders", w.Sliders.Select(Whole));
    }

    private static JsonObject Whole(Slider s)
    {
        var json = new JsonObject
        {
            ["id"] = s.Id,
            ["control"] = s.Control,
            ["fromTurn"] = s.FromTurn,
            ["toTurn"] = s.ToTurn,
            ["to"] = s.To,
            ["contactOhms"] = s.ContactOhms,
            ["bridgesTurns"] = s.BridgesTurns,
        };
        Given(json, "mostAmps", s.MostAmps);
        Given(json, "offBelow", s.OffBelow);
        if (s.OffAbove < 1)
            json["offAbove"] = s.OffAbove;
        Doubts(json, s.Spread, s.KindError, s.Percents);
        return json;
    }

    private static void Doubts(
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

    private static void Given(JsonObject json, string name, double value)
    {
        if (value != 0)
            json[name] = value;
    }

    private static void Given(JsonObject json, string name, IEnumerable<JsonObject> items)
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
