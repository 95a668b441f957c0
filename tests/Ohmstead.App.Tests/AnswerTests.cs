using System.Text.Json;

namespace Ohmstead.App.Tests;

/// <summary>What the verbs print has the shape of the contract.</summary>
public sealed class AnswerTests
{
    [Fact]
    public void Check_finds_nothing_wrong_with_the_sample_and_the_demo_sheets()
    {
        foreach (var sheet in new[] { Tool.Sample, Tool.Demo("solo-110.sheet.json"), Tool.Demo("twin-175.sheet.json"), Tool.Demo("step-230.sheet.json") })
        {
            var (code, output, error) = Tool.Run("check", sheet);
            Assert.True(code == 0, error);
            Assert.Equal("no problems", output.Trim());
        }
    }

    [Fact]
    public void Predict_prints_every_reading_with_value_and_band()
    {
        var answer = Tool.Json("predict", Tool.Sample, "--fault", "roller-left:worn=0.35");
        Assert.Equal("twin-160", answer.GetProperty("sheet").GetString());
        Assert.Equal("roller-left:worn=0.35", answer.GetProperty("faults")[0].GetString());
        var readings = answer.GetProperty("readings").EnumerateArray().ToDictionary(r => r.GetProperty("id").GetString()!, StringComparer.Ordinal);
        Assert.Equal(42, readings.Count);
        Assert.Equal("OL", readings["blades-posts"].GetProperty("value").GetString());
        // ngspice 39.3, from the contract's expected values.
        Assert.Equal(15.30053047, readings["left-load"].GetProperty("value").GetDouble(), 0.01);
        foreach (var r in readings.Values.Where(r => r.GetProperty("value").ValueKind == JsonValueKind.Number && r.GetProperty("low").ValueKind == JsonValueKind.Number))
            Assert.InRange(r.GetProperty("value").GetDouble(), r.GetProperty("low").GetDouble() - 1e-9, Top(r));
    }

    private static double Top(JsonElement r) => r.GetProperty("high").ValueKind == JsonValueKind.Number ? r.GetProperty("high").GetDouble() + 1e-9 : double.PositiveInfinity;

    [Fact]
    public void Predict_takes_an_exchange_of_two_ends()
    {
        // Full throttle on the left only: with the post leads exchanged the left post stands where the right one should.
        var answer = Tool.Json("predict", Tool.Sample, "--fault", "w-left.to~w-right.to:swap", "--readings", "left-full,right-full");
        var values = answer.GetProperty("readings").EnumerateArray().Select(r => r.GetProperty("value").GetDouble()).ToArray();
        Assert.All(values, v => Assert.InRange(v, 4.5, 5.5));
    }

    [Fact]
    public void Diagnose_lists_every_mode_of_the_sheet_and_names_the_fault()
    {
        var answer = Tool.Json("diagnose", Tool.Sample, Tool.Case("011"), "--most", "3");
        var faults = answer.GetProperty("faults").EnumerateArray().ToArray();
        // 9 wires and joints… counted from the sheet by hand: 2 modes each for 9 wires and 9 joints, 3 for 4 windings, and so on.
        Assert.Equal(faults.Length, faults.Select(f => f.GetProperty("element").GetString() + ":" + f.GetProperty("mode").GetString()).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal("disc-left", faults[0].GetProperty("element").GetString());
        Assert.Equal("high-drop", faults[0].GetProperty("mode").GetString());
        Assert.True(faults[0].GetProperty("probability").GetDouble() > 0.9);
        Assert.InRange(3.91, faults[0].GetProperty("low").GetDouble(), faults[0].GetProperty("high").GetDouble());
        Assert.All(faults, f => Assert.InRange(f.GetProperty("probability").GetDouble(), 0, 1));
        Assert.True(answer.GetProperty("hypotheses").GetArrayLength() <= 3);
        foreach (var field in new[] { "soundProbability", "alike", "readings", "unexplained", "next" }) Assert.True(answer.TryGetProperty(field, out _), field);
    }

    [Fact]
    public void Diagnose_of_nothing_gives_the_chances_and_blocks_the_mains()
    {
        var empty = Tool.File("empty.readings.json", """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [] }""");
        var next = Tool.Json("diagnose", Tool.Sample, empty).GetProperty("next").EnumerateArray().ToArray();
        Assert.Equal(42, next.Length);
        var firstBlocked = Array.FindIndex(next, n => n.GetProperty("blockedBy").GetArrayLength() > 0);
        Assert.All(next[firstBlocked..], n => Assert.True(n.GetProperty("blockedBy").GetArrayLength() > 0));
        Assert.Contains(next[firstBlocked..], n => n.GetProperty("id").GetString() == "left-load");
    }

    [Fact]
    public void Fit_names_what_it_determines()
    {
        var answer = Tool.Json("fit", Tool.Sample, Tool.Case("010"));
        var parameters = answer.GetProperty("parameters").EnumerateArray().ToArray();
        Assert.Contains(parameters, p => p.GetProperty("path").GetString() == "elements.primary.ohms");
        Assert.Contains(parameters, p => !p.GetProperty("determined").GetBoolean());
        Assert.All(parameters, p => Assert.True(p.GetProperty("standardError").GetDouble() > 0));
    }

    [Fact]
    public void The_example_runs_and_says_how_to_read_it()
    {
        var (code, output, error) = Tool.Run("example");
        Assert.True(code == 0, error);
        Assert.Contains("disc", output, StringComparison.Ordinal);
        Assert.Contains("no certification", output, StringComparison.Ordinal);
        Assert.DoesNotContain("is safe to", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_comma_culture_changes_no_number()
    {
        var plain = Tool.Run(["predict", Tool.Sample, "--readings", "left-load", "--json"], "C.UTF-8");
        var comma = Tool.Run(["predict", Tool.Sample, "--readings", "left-load", "--json"], "de_DE.UTF-8");
        Assert.Equal(plain.Out, comma.Out);
        Assert.Equal(0, Tool.Run(["diagnose", Tool.Sample, Tool.Case("010"), "--seconds", "0.5"], "de_DE.UTF-8").Code);
    }

    [Fact]
    public void A_unit_file_changes_what_is_expected()
    {
        // A silicon diode in place of the left disc: less drop, so more direct voltage on the first step.
        var unit = Tool.File("unit.json", """
            { "ohmstead": "unit/1", "sheet": "twin-160", "changes": [ { "replace": { "id": "disc-left", "kind": "rectifier", "from": "disc-left-plate",
              "to": "disc-left-stud", "saturationAmps": 1e-9, "slopeVolts": 0.045, "seriesOhms": 0.02, "leakageOhms": 1e6 } } ], "renewed": ["cord-1"] }
            """);
        static double Value(JsonElement answer) => answer.GetProperty("readings")[0].GetProperty("value").GetDouble();
        var disc = Value(Tool.Json("predict", Tool.Sample, "--readings", "left-first-dc"));
        var diode = Value(Tool.Json("predict", Tool.Sample, "--readings", "left-first-dc", "--unit", unit));
        Assert.InRange(diode, disc + 0.1, disc + 1.5);
    }
}
