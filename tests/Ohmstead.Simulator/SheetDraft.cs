using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>A sheet in the making: its lists, and the outputs that readings can be taken at.</summary>
internal sealed class SheetDraft
{
    public JsonArray Cores { get; } = [];

    public JsonArray Controls { get; } = [];

    public JsonArray Elements { get; } = [];

    public JsonArray Near { get; } = [];

    public JsonArray Readings { get; } = [];

    public List<Output> Outputs { get; } = [];

    public double Volts { get; init; }

    public double Hertz { get; init; }

    public double Omega => 2 * Math.PI * Hertz;

    public JsonObject Add(string id, string kind, string from, string to, params (string Name, JsonNode? Value)[] fields)
    {
        JsonObject element = new()
        {
            ["id"] = id,
            ["kind"] = kind,
            ["from"] = from,
            ["to"] = to,
        };
        foreach ((string name, JsonNode? value) in fields)
            element[name] = value;
        Elements.Add(element);
        return element;
    }

    public void Selector(string id, string[] positions, string rest) =>
        Controls.Add(
            new JsonObject
            {
                ["id"] = id,
                ["kind"] = "selector",
                ["positions"] = Names(positions),
                ["rest"] = rest,
            }
        );

    public static JsonArray Names(params IEnumerable<string> names) => [.. names.Select(name => (JsonNode)JsonValue.Create(name))];
}
