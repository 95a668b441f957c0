using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Readings;

/// <summary>The sheet of one very unit: its type's, with the parts that were changed on it.</summary>
public static class OwnSheet
{
    /// <summary>The unit's changes as the text of a unit file (docs/formats.md).</summary>
    private static string UnitText(BenchUnit unit, TypeSheet sheet)
    {
        var changes = new JsonArray();
        var last = new Dictionary<string, PartChange>(StringComparer.Ordinal);
        var rewired = new Dictionary<string, bool>(StringComparer.Ordinal);
        foreach (var (_, part) in unit.All<PartChanged>())
        {
            foreach (var change in Changes(part))
                changes.Add(change);
            // Where its ends are says nothing of how new a part is.
            if (part.Change is PartChange.Moved)
                continue;
            // A part renewed or cleaned in place of a replaced one is as new as that was: its chances are lowered once.
            if (
                part.Change is not PartChange.Rewired
                && !(
                    part.Change is PartChange.Renewed or PartChange.Serviced && last.GetValueOrDefault(part.Element) == PartChange.Replaced
                )
            )
                last[part.Element] = part.Change;
            rewired[part.Element] = part.Change == PartChange.Rewired;
        }
        bool IsThere(string id) => last.GetValueOrDefault(id) != PartChange.Removed;
        return new JsonObject
        {
            ["ohmstead"] = UnitFile.Mark,
            ["sheet"] = sheet.Id,
            ["changes"] = changes,
            ["renewed"] = Words(last.Where(l => l.Value is PartChange.Renewed or PartChange.Serviced).Select(l => l.Key)),
            ["rewired"] = Words(rewired.Where(r => r.Value && IsThere(r.Key)).Select(r => r.Key)),
        }.ToJsonString();
    }

    /// <summary>The sheet of this unit; every problem when what was changed makes no circuit any more.</summary>
    public static Parsed<TypeSheet> Of(BenchUnit unit, TypeSheet sheet) =>
        unit.All<PartChanged>().Any() ? UnitFile.Read(UnitText(unit, sheet), sheet) : new(sheet, []);

    /// <summary>The sheet of this unit as the bench works by it: with the shop's limits where they are the stricter.</summary>
    public static Parsed<TypeSheet> OnBench(BenchUnit unit, TypeSheet sheet, Shop shop) =>
        Of(unit, sheet) is { IsSound: true, Value: { } own } ? new(ShopLimits.Bind(own, shop), []) : Of(unit, sheet);

    private static IEnumerable<JsonObject> Changes(PartChanged part) =>
        part.Change switch
        {
            PartChange.Replaced when part.Part is { } p => [new JsonObject { ["replace"] = JsonNode.Parse(p.GetRawText()) }],
            PartChange.Added when part.Part is { } p => [new JsonObject { ["add"] = JsonNode.Parse(p.GetRawText()) }],
            PartChange.Removed => [new JsonObject { ["remove"] = part.Element }],
            PartChange.Moved when part.Part is { ValueKind: JsonValueKind.Object } ends => ends.EnumerateObject()
                .Select(e => new JsonObject { ["move"] = $"{part.Element}.{e.Name}", ["to"] = JsonNode.Parse(e.Value.GetRawText()) }),
            _ => [],
        };

    private static JsonArray Words(IEnumerable<string> words) => [.. words.Order(StringComparer.Ordinal).Select(w => (JsonNode)w)];
}
