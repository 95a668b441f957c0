using System.Globalization;
using System.Text.Json;

namespace Ohmstead.App.Tests.Commands;

/// <summary><c>predict --json</c> has the shape of docs/formats.md, and <c>predict</c> a table that fits a screen.</summary>
public sealed class PredictTests
{
    [Fact]
    public void Every_reading_has_exactly_the_fields_that_are_documented()
    {
        var answer = Tool.Json("predict", Tool.Sample, "--fault", "roller-left:worn=0.35");
        Assert.Equal(["sheet", "faults", "readings"], answer.Fields());
        Assert.Equal("twin-160", answer.Text("sheet"));
        Assert.Equal(["roller-left:worn=0.35"], answer.Words("faults"));
        var readings = answer.List("readings");
        Assert.Equal(42, readings.Length);
        foreach (var r in readings)
        {
            Assert.Equal(["id", "quantity", "value", "low", "high"], r.Fields());
            foreach (var field in new[] { "value", "low", "high" })
                if (r.GetProperty(field).ValueKind != JsonValueKind.Number)
                    Assert.Equal("OL", r.Text(field));
            if (r.GetProperty("high").ValueKind == JsonValueKind.Number)
                Assert.InRange(r.Number("value"), r.Number("low") - 1e-9, r.Number("high") + 1e-9);
        }
        Assert.Equal("OL", readings.Single(r => r.Text("id") == "blades-posts").Text("value"));
        // ngspice 39.3, from the sample sheet's expected values.
        Assert.Equal(15.30053047, readings.Single(r => r.Text("id") == "left-load").Number("value"), 0.01);
    }

    [Fact]
    public void The_readings_asked_for_come_in_the_order_asked_for()
    {
        var answer = Tool.Json("predict", Tool.Sample, "--readings", "left-load, blades");
        Assert.Equal(["left-load", "blades"], answer.List("readings").Select(r => r.Text("id")));
    }

    [Fact]
    public void A_fault_of_any_size_has_a_wider_band_than_one_of_a_given_size()
    {
        static double Width(JsonElement answer) => answer.List("readings")[0].Number("high") - answer.List("readings")[0].Number("low");
        var any = Width(Tool.Json("predict", Tool.Sample, "--readings", "left-load", "--fault", "roller-left:worn"));
        var given = Width(Tool.Json("predict", Tool.Sample, "--readings", "left-load", "--fault", "roller-left:worn=3"));
        Assert.True(any > 3 * given, string.Create(CultureInfo.InvariantCulture, $"{any} {given}"));
    }

    [Fact]
    public void A_winding_that_is_open_is_broken_at_its_start_unless_a_turn_is_given()
    {
        // Broken at turn 0, the common hangs on the 17 V tap through the pilot lamp, 17.4 − 5 V from the 5 V tap (turn 16);
        // broken at turn 20, that tap still has its own volts.
        static double Tap(string fault) =>
            Tool.Json("predict", Tool.Sample, "--readings", "volts-5", "--fault", fault).List("readings")[0].Number("value");
        Assert.InRange(Tap("main:open"), 12, 13);
        Assert.Equal(Tap("main:open=0"), Tap("main:open"));
        Assert.InRange(Tap("main:open=20"), 4.5, 5.5);
    }

    [Fact]
    public void An_exchange_of_two_ends_is_done_before_anything_else()
    {
        // Full throttle on one side only: with the post leads exchanged the other post has it.
        var answer = Tool.Json("predict", Tool.Sample, "--fault", "w-left.to~w-right.to:swap", "--readings", "left-full,right-full");
        Assert.All(answer.List("readings"), r => Assert.InRange(r.Number("value"), 4.5, 5.5));
    }

    [Fact]
    public void A_unit_file_changes_what_is_expected()
    {
        // A silicon diode in place of the left disc: less drop, so more direct voltage on the first step.
        var unit = Tool.File(
            "unit.json",
            """
            { "ohmstead": "unit/1", "sheet": "twin-160", "changes": [ { "replace": { "id": "disc-left", "kind": "rectifier", "from": "disc-left-plate",
              "to": "disc-left-stud", "saturationAmps": 1e-9, "slopeVolts": 0.045, "seriesOhms": 0.02, "leakageOhms": 1e6 } } ], "renewed": ["cord-1"] }
            """
        );
        static double Value(JsonElement answer) => answer.List("readings")[0].Number("value");
        var disc = Value(Tool.Json("predict", Tool.Sample, "--readings", "left-first-dc"));
        var diode = Value(Tool.Json("predict", Tool.Sample, "--readings", "left-first-dc", "--unit", unit));
        Assert.InRange(diode, disc + 0.1, disc + 1.5);
    }

    [Fact]
    public void The_table_has_a_line_for_every_reading_within_a_hundred_columns_and_no_colour()
    {
        var (code, output, _) = Tool.Run("predict", Tool.Demo("twin-175.sheet.json"));
        Assert.Equal(0, code);
        Assert.Contains("load-1 ", output, StringComparison.Ordinal);
        Assert.Contains("17.1–17.9 V", output, StringComparison.Ordinal);
        Assert.DoesNotContain('\e', output);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void A_comma_culture_changes_no_byte()
    {
        string[] arguments = ["predict", Tool.Sample, "--readings", "left-load", "--fault", "roller-left:worn=1.5", "--json"];
        Assert.Equal(Tool.Run(arguments, "C.UTF-8").Out, Tool.Run(arguments, "de_DE.UTF-8").Out);
    }
}
