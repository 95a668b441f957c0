using System.Text.Json.Nodes;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Reads the readings of a unit for a kind that it may be.</summary>
public static class PossibleKinds
{
    /// <summary>The field by which a reading is marked as not belonging to the unit.</summary>
    private const string NotOfUnit = "notOfUnit";

    /// <summary>A kind with the readings of the unit, or why it cannot have them.</summary>
    /// <param name="text">The readings file; what sheet it names does not matter.</param>
    public static Parsed<PossibleKind> Read(string name, double chance, TypeSheet sheet, string text)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out _))
            return new(null, problems);
        var document = (JsonObject)JsonNode.Parse(text)!;
        // What a sheet does not ask for says nothing for or against its kind.
        if (document["told"] is JsonObject told)
            foreach (var id in told.Select(t => t.Key).Where(id => !sheet.Observations.Any(o => o.Id == id)).ToList())
                told.Remove(id);
        if (document["readings"] is JsonArray all)
        {
            for (var n = all.Count - 1; n >= 0; n--)
                if (all[n] is JsonObject o && o[NotOfUnit] is JsonValue v && v.TryGetValue<bool>(out var isNot) && isNot)
                    all.RemoveAt(n);
            foreach (var reading in all.OfType<JsonObject>())
            {
                ControlNames.Translate(reading, sheet);
                if (reading["state"] is JsonObject state)
                    ControlNames.Translate(state, sheet);
            }
            if (Lacks(sheet, all) is { } lack)
                return new(new PossibleKind(name, chance, sheet, null, lack), []);
        }
        var read = WholeReadings.Read(document.ToJsonString(), sheet, isOfAnySheet: true);
        return read.IsSound
            ? new(new PossibleKind(name, chance, read.Required.Sheet, read.Required.Readings, ""), [])
            : new(null, read.Problems);
    }

    /// <summary>What a kind does not have that a reading is taken at; null when it has all.</summary>
    private static string? Lacks(TypeSheet sheet, JsonArray readings)
    {
        var terminals = sheet.Elements.SelectMany(e => e.OtherTerminals.Append(e.From).Append(e.To)).ToHashSet(StringComparer.Ordinal);
        foreach (var reading in readings.OfType<JsonObject>())
        {
            var id = Word(reading["id"]);
            if (!reading.ContainsKey("quantity"))
            {
                if (id.Length > 0 && sheet.FindReading(id) is null)
                    return $"no reading {id}";
                continue;
            }
            if (Terminals(reading).FirstOrDefault(t => !terminals.Contains(t)) is { } missing)
                return $"no {missing}";
            if (
                reading["state"]?["lifted"] is JsonArray lifted
                && lifted.Select(Word).FirstOrDefault(id => id.Length > 0 && !sheet.Elements.Any(e => e.Id == id)) is { } part
            )
                return $"no {part}";
            if (reading["state"]?["controls"] is not JsonObject controls)
                continue;
            foreach (var (control, position) in controls)
                if (sheet.Controls.FirstOrDefault(c => c.Id == control) is not { } known)
                    return $"no {control}";
                else if (!ControlNames.Has(known, position))
                    return $"no {control}={position?.ToString()}";
        }
        return null;
    }

    private static IEnumerable<string> Terminals(JsonObject reading)
    {
        var state = reading["state"] as JsonObject;
        return new[]
        {
            reading["between"],
            state?["source"]?["from"],
            state?["source"]?["to"],
            state?["joined"],
            state?["loads"],
        }.SelectMany(Words);
    }

    private static IEnumerable<string> Words(JsonNode? at) =>
        at switch
        {
            JsonArray a => a.SelectMany(Words),
            JsonObject o => Words(o["from"]).Concat(Words(o["to"])),
            JsonValue v when v.TryGetValue<string>(out var s) && s.Length > 0 => [s],
            _ => [],
        };

    private static string Word(JsonNode? at) => at is JsonValue v && v.TryGetValue<string>(out var s) ? s : "";
}
