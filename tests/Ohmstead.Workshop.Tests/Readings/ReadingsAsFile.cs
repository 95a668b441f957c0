using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>
/// What was read on a unit as the text of a readings file, written from its journal by the letter of docs/formats.md: what
/// <see cref="BenchReadings"/> says without a text is held against what is read from this one.
/// </summary>
internal static class ReadingsAsFile
{
    /// <summary>The readings that speak of the unit as it is now, with the conditions of each (docs/formats.md).</summary>
    /// <param name="model">The unit's own sheet (<see cref="OwnSheet"/>).</param>
    public static string Write(BenchUnit unit, UnitModel model, Shop shop)
    {
        var (sheet, root) = (model.Sheet, new JsonObject { ["ohmstead"] = ReadingsFile.Mark, ["sheet"] = model.Sheet.Id });
        if (unit.Bench.SupplyVolts is { } volts)
            root["supplyVolts"] = volts;
        var inHand = MeterInHand.Of(unit.Bench, shop);
        root["meter"] = new JsonObject(
            inHand.Errors.OrderBy(e => e.Key).Select(e => KeyValuePair.Create(ReadingReader.NameOf(e.Key), (JsonNode?)Error(e.Value)))
        );
        var taken = unit
            .CurrentReadings.Where(r => sheet.FindReading(r.Fact.ReadingId) is not null)
            .Select(r => (r.Entry.Number, Node: Reading(r.Fact, model, shop, inHand)));
        var waived = unit
            .CurrentWaivers.Where(w => sheet.FindReading(w.Fact.ReadingId) is not null)
            .Select(w => (w.Entry.Number, Node: Waived(w.Fact)));
        root["readings"] = new JsonArray([.. taken.Concat(waived).OrderBy(r => r.Number).Select(r => r.Node)]);
        root["told"] = new JsonObject(
            unit.Signs.Where(s => sheet.Observations.Any(o => o.Id == s.Key))
                .OrderBy(s => s.Key, StringComparer.Ordinal)
                .Select(s => KeyValuePair.Create(s.Key, (JsonNode?)Word(s.Value)))
        );
        return root.ToJsonString();
    }

    /// <summary>The readings of a unit, read from that text.</summary>
    public static Parsed<UnitReadings> Read(BenchUnit unit, UnitModel model, Shop shop) =>
        ReadingsFile.Read(Write(unit, model, shop), model.Sheet);

    private static JsonNode Reading(ReadingEntered fact, UnitModel model, Shop shop, Meter inHand)
    {
        var spec = model.Sheet.FindReading(fact.ReadingId)!;
        var shown = fact.Shown;
        // A journal that came in from elsewhere may hold what this tool refuses to enter.
        if (shown.Kind == ShownKind.OverRange && spec.Quantity is not (Quantity.Ohms or Quantity.InsulationOhms))
            shown = Shown.NotTaken("the meter's range was too low");
        var node = new JsonObject { ["id"] = fact.ReadingId, ["value"] = Value(shown) };
        if (shown.Why.Length > 0)
            node["why"] = shown.Why;
        // A reading is judged with the meter it was taken with: a better one taken up later makes it no better.
        if (MeterInHand.Of(fact.Bench, shop).For(spec.Quantity) is var own && own != inHand.For(spec.Quantity))
            node["meter"] = Error(own);
        var state = BenchConditions.StateOf(model, spec, fact.Bench, shop);
        // The line is said even where it is nominal: another line may stand at the top of the file.
        if (
            state.Source is { IsDirect: false } source
            && (BenchConditions.IsOnMains(model.Sheet, spec) || source.Volts != spec.State.Source!.Volts)
        )
            node["supplyVolts"] = source.Volts;
        if (state.Celsius != spec.State.Celsius)
            node["celsius"] = state.Celsius;
        var moved = state.Controls.Where(c => spec.State.Controls[c.Key] != c.Value).OrderBy(c => c.Key, StringComparer.Ordinal).ToList();
        if (moved.Count > 0)
            node["controls"] = new JsonObject(moved.Select(c => KeyValuePair.Create(c.Key, (JsonNode?)c.Value.Throttle)));
        if (!state.Loads.SequenceEqual(spec.State.Loads))
            node["loads"] = new JsonArray([.. state.Loads.Select(Load)]);
        return node;
    }

    private static JsonNode Load(LoadSpec load)
    {
        var node = new JsonObject
        {
            ["from"] = load.From,
            ["to"] = load.To,
            ["ohms"] = load.Ohms,
        };
        if (load.Henries != 0)
            node["henries"] = load.Henries;
        return node;
    }

    private static JsonNode? Value(Shown shown) =>
        shown.Kind switch
        {
            ShownKind.Value => JsonValue.Create(shown.Value),
            ShownKind.OverRange => "OL",
            ShownKind.Jumps => new JsonObject
            {
                ["jumps"] = new JsonArray([.. shown.Between.Select(b => b is { } v ? (JsonNode)v : "OL")]),
            },
            _ => null,
        };

    private static JsonNode Waived(ReadingWaived fact) =>
        new JsonObject
        {
            ["id"] = fact.ReadingId,
            ["value"] = null,
            ["why"] = fact.Why,
            ["waived"] = new JsonObject { ["by"] = fact.WaivedBy, ["instead"] = fact.Instead },
        };

    private static JsonObject Error(MeterError error)
    {
        var node = new JsonObject
        {
            ["percent"] = error.Percent,
            ["floor"] = error.Floor,
            ["shared"] = error.Shared,
            ["leadOhms"] = error.LeadOhms,
        };
        if (error.IsAveraging)
            node["averaging"] = true;
        return node;
    }

    private static string Word(Answer answer) =>
        answer switch
        {
            Answer.Yes => "yes",
            Answer.No => "no",
            _ => "unsure",
        };
}
