using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>What is set up for one reading: the quantity, where the probes sit, and the state of the unit.</summary>
internal sealed record Bench(
    string Id,
    string Quantity,
    string First,
    string Second,
    Supply? Source,
    JsonObject Controls,
    IReadOnlyList<JsonObject> Loads,
    IReadOnlySet<string> Lifted,
    IReadOnlyList<string[]> Joined,
    double Celsius,
    double Hertz
)
{
    /// <param name="volts">What the source of this reading really gave, or null for the sheet's figure.</param>
    public static Bench Read(JsonObject sheet, JsonObject reading, double? volts = null)
    {
        JsonObject state = reading["state"] as JsonObject ?? [];
        string[] between = [.. reading["between"].Words()];
        Supply? source = Supply.Read(state["source"] as JsonObject);
        if (source is not null && volts is { } real)
            source = source with { Volts = real };
        return new Bench(
            reading.Word("id"),
            reading.Word("quantity"),
            between.Length > 0 ? between[0] : "",
            between.Length > 1 ? between[1] : "",
            source,
            state["controls"] as JsonObject ?? [],
            [.. state.Objects("loads")],
            state["lifted"].Words().ToHashSet(),
            state["joined"] is JsonArray joined ? [.. joined.Select(group => group.Words().ToArray())] : [],
            state.Number("celsius", 20),
            sheet["supply"]!.AsObject().Number("hertz")
        );
    }

    public double Throttle(string control) => Controls.Number(control, 0);

    public string Position(JsonObject sheet, string control)
    {
        if (Controls[control] is { } set)
            return set.GetValue<string>();
        return sheet.ById("controls", control).Word("rest");
    }
}
