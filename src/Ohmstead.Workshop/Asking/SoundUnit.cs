using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Asking;

/// <summary>What was read on a sound unit of a type, as it travels with the type: no owner, no tag, no words.</summary>
/// <param name="Mark">By which the same unit is known when its readings come back; nothing else can be told from it.</param>
/// <param name="Readings">A readings file.</param>
public sealed record SoundUnit(string Mark, JsonElement Readings)
{
    private const int MarkLetters = 16;

    /// <summary>How many readings it has.</summary>
    public int Count => Readings.TryGetProperty("readings", out var all) ? all.GetArrayLength() : 0;

    /// <summary>The mark of a unit.</summary>
    public static string MarkOf(BenchUnit unit) => Convert.ToHexStringLower(SHA256.HashData(unit.Id.ToByteArray()))[..MarkLetters];

    /// <summary>The units that were found sound, with readings.</summary>
    public static ImmutableArray<SoundUnit> Of(IEnumerable<BenchUnit> units, UnitModel model, Shop shop) =>
        [
            .. units
                .Where(u => KindFit.IsFoundSound(u) && KindFit.Unfit(u).Length == 0)
                .Select(u => (Unit: u, Readings: BenchReadings.Of(u, model, shop).Value))
                .Where(u => u.Readings is not null && u.Readings.Readings.Any(IsTold))
                .Select(u => new SoundUnit(MarkOf(u.Unit), Json(u.Readings!, model.Sheet))),
        ];

    /// <summary>Those of two benches: of a unit that both have, what came last.</summary>
    public static ImmutableArray<SoundUnit> Together(IEnumerable<SoundUnit> known, IEnumerable<SoundUnit> came)
    {
        var all = came.ToList();
        return [.. known.Where(k => all.All(c => c.Mark != k.Mark)), .. all];
    }

    /// <summary>The readings as a sheet has them; what it does not ask for is passed over. Null where nothing is left.</summary>
    public UnitReadings? On(TypeSheet sheet)
    {
        if (JsonNode.Parse(Readings.GetRawText()) is not JsonObject file || file["readings"] is not JsonArray all)
            return null;
        file["sheet"] = sheet.Id;
        for (var n = all.Count - 1; n >= 0; n--)
            if (all[n] is not JsonObject o || sheet.FindReading((string?)o["id"] ?? "") is null)
                all.RemoveAt(n);
        return all.Count == 0 ? null : ReadingsFile.Read(file.ToJsonString(), sheet).Value;
    }

    private static bool IsTold(TakenReading reading) => reading.Outcome is Outcome.Value or Outcome.OverRange;

    private static JsonElement Json(UnitReadings readings, TypeSheet sheet)
    {
        var file = new JsonObject { ["ohmstead"] = ReadingsFile.Mark, ["supplyVolts"] = readings.SupplyVolts };
        file["meter"] = new JsonObject(
            readings
                .Meter.Errors.OrderBy(e => e.Key)
                .Select(e => KeyValuePair.Create(ReadingReader.NameOf(e.Key), (JsonNode?)Json(e.Value)))
        );
        file["readings"] = new JsonArray([.. readings.Readings.Where(IsTold).Select(r => Json(r, readings.StateOf(sheet, r.Spec)))]);
        return JsonSerializer.SerializeToElement(file, FactText.Options);
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
