using System.Text.Json.Nodes;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Readings of one bench as text, read again by the sheet on another: nothing is lost, and nothing usual is said.</summary>
public class ReadingsTextTests
{
    private static readonly TypeSheet Sheet = new SheetDraft()
        .Selector("lever", "on", "off")
        .Throttle("handle")
        .Element("switch", "contact", "a", "b", new { control = "lever", closedIn = new[] { "on" } })
        .Resistor("r", "b", "g", 200)
        .Reading("ohms", "ohms", ["b", "g"])
        .Reading(
            "volts",
            "ac-volts",
            ["b", "g"],
            new
            {
                source = new
                {
                    from = "a",
                    to = "g",
                    volts = 20,
                },
                controls = new { lever = "on", handle = 0.25 },
            }
        )
        .Sheet();

    private static TakenReading Of(string id, double value, Outcome outcome = Outcome.Value)
    {
        var spec = Sheet.FindReading(id)!;
        return new(spec, outcome, value, [], "", "", spec.State);
    }

    private static UnitReadings Taken(params TakenReading[] readings) =>
        new(Sheet.Id, Sheet.SupplyVolts, null, Meter.Usual, [.. readings], []);

    private static JsonObject Json(TakenReading reading) =>
        JsonNode.Parse(ReadingsText.Write(Taken(reading), Sheet))!["readings"]!.AsArray().Single()!.AsObject();

    [Fact]
    public void Of_a_reading_taken_as_the_sheet_says_there_is_its_value_alone()
    {
        Assert.Equal(["id", "value"], Json(Of("volts", 19.5)).Select(p => p.Key));
        Assert.Equal(19.5, (double)Json(Of("volts", 19.5))["value"]!);
        Assert.Equal("OL", (string)Json(Of("ohms", 0, Outcome.OverRange))["value"]!);
    }

    [Fact]
    public void What_was_otherwise_is_said_and_read_again()
    {
        var usual = Of("volts", 11);
        var state = usual.State with
        {
            Source = usual.State.Source! with { Volts = 18 },
            Celsius = 35,
            Loads = [new("b", "g", 50, 0.1)],
            Controls = usual.State.Controls.SetItem("lever", new(0, "off")).SetItem("handle", new(0.5, "")),
        };
        var reading = usual with
        {
            State = state,
            OwnError = new MeterError(2, 0.1, 0.3, 0) { IsAveraging = true },
        };
        var json = Json(reading);
        Assert.Equal(["id", "value", "supplyVolts", "loads", "celsius", "controls", "meter"], json.Select(p => p.Key));
        Assert.Equal("off", (string)json["controls"]!["lever"]!);
        Assert.Equal(0.5, (double)json["controls"]!["handle"]!);
        var again = ReadingsText.Read(ReadingsText.Write(Taken(reading, Of("ohms", 0, Outcome.OverRange)), Sheet), Sheet)!;
        Assert.Equal(["volts", "ohms"], again.Readings.Select(r => r.Spec.Id));
        var back = again.Readings[0];
        Assert.Equal((11, Outcome.Value, reading.OwnError), (back.Value, back.Outcome, back.OwnError));
        Assert.Equal((18, 35), (back.State.Source!.Volts, back.State.Celsius));
        Assert.Equal(state.Loads, back.State.Loads);
        Assert.Equal("off", back.State.Controls["lever"].Selector);
        Assert.Equal(0.5, back.State.Controls["handle"].Throttle);
        Assert.Equal(Outcome.OverRange, again.Readings[1].Outcome);
    }

    [Fact]
    public void Another_sheet_passes_over_what_it_does_not_ask_for()
    {
        var other = new SheetDraft().Resistor("r", "b", "g", 200).Reading("ohms", "ohms", ["b", "g"]).Sheet();
        var text = ReadingsText.Write(Taken(Of("volts", 11), Of("ohms", 201)), Sheet);
        Assert.Equal(["ohms"], ReadingsText.Read(text, other)!.Readings.Select(r => r.Spec.Id));
        Assert.Null(ReadingsText.Read(ReadingsText.Write(Taken(Of("volts", 11)), Sheet), other));
        Assert.Null(ReadingsText.Read("[]", other));
    }
}
