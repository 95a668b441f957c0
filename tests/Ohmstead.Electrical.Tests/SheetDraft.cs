using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests;

/// <summary>A small type sheet put together in a test. It goes through the file reader, as every sheet does.</summary>
internal sealed class SheetDraft(double supplyVolts = 120, double hertz = 60)
{
    private readonly JsonArray cores = [];
    private readonly JsonArray controls = [];
    private readonly JsonArray elements = [];
    private readonly JsonArray readings = [];
    private readonly JsonArray observations = [];

    /// <summary>A core of a fixed magnetising inductance.</summary>
    public SheetDraft Core(string id, string referenceWinding, double lossOhms, double magnetisingHenries) =>
        Put(
            cores,
            new
            {
                id,
                referenceWinding,
                lossOhms,
                magnetisingHenries,
            }
        );

    /// <summary>A core with an excitation table [V, A].</summary>
    public SheetDraft Core(string id, string referenceWinding, double lossOhms, double[][] excitation) =>
        Put(
            cores,
            new
            {
                id,
                referenceWinding,
                lossOhms,
                excitation,
            }
        );

    public SheetDraft Throttle(string id) => Put(controls, new { id, kind = "throttle" });

    public SheetDraft Selector(string id, params string[] positions) =>
        Put(
            controls,
            new
            {
                id,
                kind = "selector",
                positions,
                rest = positions[0],
            }
        );

    /// <summary>A resistor [Ω] that fails in no way but these [%].</summary>
    public SheetDraft Resistor(string id, string from, string to, double ohms, params (string Mode, double Percent)[] faults)
    {
        var all = new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["open"] = 0,
            ["shorted"] = 0,
            ["drifted"] = 0,
        };
        foreach (var (mode, percent) in faults)
            all[mode] = percent;
        return Element("resistor", id, from, to, new { ohms, faults = all });
    }

    /// <summary>An element; the fields beyond id, kind, from and to as an anonymous object.</summary>
    public SheetDraft Element(string kind, string id, string from, string to, object? fields = null)
    {
        var element = fields is null ? [] : Node(fields);
        (element["id"], element["kind"], element["from"], element["to"]) = (id, kind, from, to);
        elements.Add(element);
        return this;
    }

    public SheetDraft Wire(string id, string from, string to, double ohms) => Element("wire", id, from, to, new { ohms });

    public SheetDraft Resistor(string id, string from, string to, double ohms) => Element("resistor", id, from, to, new { ohms });

    public SheetDraft Winding(
        string id,
        string from,
        string to,
        double turns,
        double ohms = 0,
        double leakageHenries = 0,
        string core = "core"
    ) =>
        Element(
            "winding",
            id,
            from,
            to,
            new
            {
                core,
                turns,
                ohms,
                leakageHenries,
            }
        );

    /// <summary>A reading of the sheet itself; most tests read by <see cref="BenchUnit.Read"/> instead.</summary>
    public SheetDraft Reading(string id, string quantity, string[] between, object? state = null, double minutes = 1) =>
        Put(
            readings,
            new
            {
                id,
                quantity,
                between,
                state = state ?? new { },
                minutes,
            }
        );

    public SheetDraft Observation(string id, Dictionary<string, double> given, double otherwise) =>
        Put(
            observations,
            new
            {
                id,
                given,
                otherwise,
            }
        );

    /// <summary>The sheet as JSON; every terminal stands in a group of neighbours, so that none counts as mistyped.</summary>
    public JsonObject Json()
    {
        var terminals = new JsonArray([.. elements.SelectMany(Terminals).Distinct(StringComparer.Ordinal).Select(t => (JsonNode)t)]);
        return new JsonObject
        {
            ["ohmstead"] = "type-sheet/1",
            ["id"] = "draft",
            ["supply"] = new JsonObject { ["volts"] = supplyVolts, ["hertz"] = hertz },
            ["cores"] = cores.DeepClone(),
            ["controls"] = controls.DeepClone(),
            ["elements"] = elements.DeepClone(),
            ["near"] = new JsonArray(terminals),
            ["readings"] = readings.DeepClone(),
            ["observations"] = observations.DeepClone(),
        };
    }

    public TypeSheet Sheet() => TypeSheetFile.Read(Json().ToJsonString()).Required;

    public BenchUnit Unit() => new(Sheet());

    private static IEnumerable<string> Terminals(JsonNode? element)
    {
        yield return element!["from"]!.GetValue<string>();
        yield return element["to"]!.GetValue<string>();
        foreach (var list in new[] { "taps", "sliders" })
            if (element[list] is JsonArray more)
                foreach (var m in more)
                    yield return m!["to"]!.GetValue<string>();
    }

    private static JsonObject Node(object fields) => JsonSerializer.SerializeToNode(fields)!.AsObject();

    private SheetDraft Put(JsonArray list, object fields)
    {
        list.Add(Node(fields));
        return this;
    }
}
