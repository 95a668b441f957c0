using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The sample sheet with most of it there several times.</summary>
internal static class RepeatedSheet
{
    /// <summary>Whole units side by side on one supply: each with its own core, windings, controls and readings.</summary>
    public static readonly string[] Supply = ["blade-1", "blade-2"];

    /// <summary>One unit with more on its secondary side: the core and what is on the primary side stay single.</summary>
    public static readonly string[] SupplyAndPrimary = [.. Supply, "lug-1", "lug-2", "primary-start", "primary-end", "iron", "core"];

    /// <summary>Fields that hold names of elements, terminals, cores, controls or readings.</summary>
    private static readonly HashSet<string> NameFields =
    [
        "id",
        "from",
        "to",
        "core",
        "control",
        "referenceWinding",
        "between",
        "joined",
        "lifted",
    ];

    /// <param name="copies">1 gives the sheet itself, without its gates.</param>
    /// <param name="single">Terminals and cores that all copies have in common; what stands between them alone occurs once.</param>
    public static TypeSheet Of(int copies, string[] single)
    {
        var sheet = TypeSheetFile.JsonOf(RepositoryRoot.Sample);
        foreach (var list in new[] { "near", "observations", "takeApart" })
            sheet.Remove(list);
        var kept = single.ToHashSet(StringComparer.Ordinal);
        foreach (var item in Items(sheet, "elements").Concat(Items(sheet, "readings")))
            if (TerminalsOf(item).All(single.Contains))
                kept.Add((string)item["id"]!);
        foreach (var list in new[] { "cores", "controls", "elements", "readings" })
            sheet[list] = new JsonArray([
                .. Enumerable
                    .Range(0, copies)
                    .SelectMany(k =>
                        Items(sheet, list)
                            .Where(i => k == 0 || !kept.Contains((string)i["id"]!))
                            .Select(i => Renamed(i, k, kept, isName: false))
                    ),
            ]);
        foreach (var r in Items(sheet, "readings"))
        {
            r["access"] = "closed";
            r.Remove("gate");
            r.Remove("needs");
        }
        return TypeSheetFile.Read(sheet.ToJsonString()).Required;
    }

    private static IEnumerable<JsonObject> Items(JsonObject sheet, string list) => sheet[list]!.AsArray().Select(i => i!.AsObject());

    /// <summary>The terminals that an element or a reading names.</summary>
    private static IEnumerable<string> TerminalsOf(JsonNode? node) =>
        node switch
        {
            JsonObject o => o.SelectMany(p => p.Key is "from" or "to" or "between" or "joined" ? Words(p.Value) : TerminalsOf(p.Value)),
            JsonArray a => a.SelectMany(TerminalsOf),
            _ => [],
        };

    private static IEnumerable<string> Words(JsonNode? node) => node is JsonArray a ? a.SelectMany(Words) : [(string)node!];

    /// <summary>The node with the names of copy k, but for those that are kept.</summary>
    private static JsonNode? Renamed(JsonNode? node, int k, HashSet<string> kept, bool isName) =>
        node switch
        {
            JsonObject o => new JsonObject(
                o.Select(p =>
                    p is { Key: "controls", Value: JsonObject positions }
                        ? KeyValuePair.Create(
                            p.Key,
                            (JsonNode?)
                                new JsonObject(positions.Select(c => KeyValuePair.Create(NameOf(c.Key, k, kept), c.Value?.DeepClone())))
                        )
                        : KeyValuePair.Create(p.Key, Renamed(p.Value, k, kept, NameFields.Contains(p.Key)))
                )
            ),
            JsonArray a => new JsonArray([.. a.Select(i => Renamed(i, k, kept, isName))]),
            JsonValue v when isName && v.TryGetValue<string>(out var s) => NameOf(s, k, kept),
            _ => node?.DeepClone(),
        };

    private static string NameOf(string name, int k, HashSet<string> kept) =>
        k == 0 || kept.Contains(name) ? name : FormattableString.Invariant($"{name}-{k + 1}");
}
