using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>What was read on a unit as the text of a readings file, to be read by the sheet of the same type on another bench.</summary>
public static class ReadingsText
{
    /// <summary>True for a reading that goes into it: a number, or OL.</summary>
    public static bool IsTold(TakenReading reading) => reading.Outcome is Outcome.Value or Outcome.OverRange;

    /// <summary>The readings as a sheet has them; what it does not ask for is passed over. Null where nothing is left.</summary>
    public static UnitReadings? Read(string text, TypeSheet sheet)
    {
        if (JsonNode.Parse(text) is not JsonObject file || file["readings"] is not JsonArray all)
            return null;
        file["sheet"] = sheet.Id;
        for (var n = all.Count - 1; n >= 0; n--)
            if (all[n] is not JsonObject o || sheet.FindReading((string?)o["id"] ?? "") is null)
                all.RemoveAt(n);
        return all.Count == 0 ? null : ReadingsFile.Read(file.ToJsonString(), sheet).Value;
    }

    /// <summary>A readings file of the numbers and OLs; no word is in it.</summary>
    public static string Write(UnitReadings readings, TypeSheet sheet)
    {
        var file = new JsonObject { ["ohmstead"] = ReadingsFile.Mark, ["supplyVolts"] = readings.SupplyVolts };
        file["meter"] = new JsonObject(
            readings
                .Meter.Errors.OrderBy(e => e.Key)
                .Select(e => KeyValuePair.Create(ReadingReader.NameOf(e.Key), (JsonNode?)Json(e.Value)))
        );
        file["readings"] = new JsonArray([.. readings.Readings.Where(IsTold).Select(r => Json(r, readings.StateOf(sheet, r.Spec)))]);
        return file.ToJsonString();
    }

    /// <param name="usual">The state that the sheet says, at the line's volts.</param>
    private static JsonObject Json(TakenReading reading, ReadingState usual)
    {
        var (state, json) = (reading.State, new JsonObject { ["id"] = reading.Spec.Id });
        json["value"] = reading.Outcome == Outcome.OverRange ? "OL" : reading.Value;
        if (state.Source is { IsDirect: false } source && source.Volts != usual.Source?.Volts)
            json["supplyVolts"] = source.Volts;
        if (!state.Loads.SequenceEqual(usual.Loads))
            json["loads"] = new JsonArray([
                .. state.Loads.Select(l => new JsonObject
                {
                    ["from"] = l.From,
                    ["to"] = l.To,
                    ["ohms"] = l.Ohms,
                    ["henries"] = l.Henries,
                }),
            ]);
        if (state.Celsius != usual.Celsius)
            json["celsius"] = state.Celsius;
        var moved = state.Controls.Where(c => !usual.Controls.TryGetValue(c.Key, out var at) || !at.Equals(c.Value)).ToList();
        if (moved.Count > 0)
            json["controls"] = new JsonObject(
                moved
                    .OrderBy(c => c.Key, StringComparer.Ordinal)
                    .Select(c => KeyValuePair.Create(c.Key, (JsonNode?)(c.Value.Selector.Length > 0 ? c.Value.Selector : c.Value.Throttle)))
            );
        if (reading.OwnError is { } own)
            json["meter"] = Json(own);
        return json;
    }

    private static JsonObject Json(MeterError error)
    {
        var json = new JsonObject
        {
            ["percent"] = error.Percent,
            ["floor"] = error.Floor,
            ["shared"] = error.Shared,
            ["leadOhms"] = error.LeadOhms,
        };
        if (error.IsAveraging)
            json["averaging"] = true;
        return json;
    }
}
