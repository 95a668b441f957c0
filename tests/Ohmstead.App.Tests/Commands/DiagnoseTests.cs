using System.Text.Json;

namespace Ohmstead.App.Tests.Commands;

/// <summary><c>diagnose --json</c> has the shape of docs/formats.md and finds what is wrong.</summary>
public sealed class DiagnoseTests
{
    private static readonly Lazy<JsonElement> Answer = new(() => Tool.Json("diagnose", Tool.Sample, Tool.Case("011"), "--most", "3"));

    /// <summary>The table of faults in docs/formats.md, by kind.</summary>
    private static readonly Dictionary<string, string[]> Modes = new(StringComparer.Ordinal)
    {
        ["wire"] = ["open", "resistive"],
        ["joint"] = ["open", "resistive"],
        ["winding"] = ["open", "shorted-turns", "reversed"],
        ["slider"] = ["worn", "open"],
        ["breaker"] = ["resistive", "open", "bypassed"],
        ["rectifier"] = ["high-drop", "leaky", "shorted", "open", "reversed"],
        ["resistor"] = ["open", "shorted", "drifted"],
        ["lamp"] = ["open"],
        ["switch"] = ["resistive", "stuck-open", "stuck-closed"],
        ["insulation"] = ["low"],
    };

    [Fact]
    public void Every_mode_of_the_sheet_is_listed_once()
    {
        var wanted = JsonDocument
            .Parse(File.ReadAllText(Tool.Sample))
            .RootElement.List("elements")
            .SelectMany(e =>
                Of(e.Text("id"), e.Text("kind"))
                    .Concat(e.TryGetProperty("sliders", out var s) ? s.EnumerateArray().SelectMany(x => Of(x.Text("id"), "slider")) : [])
            );
        var listed = Answer.Value.List("faults").Select(f => $"{f.Text("element")}:{f.Text("mode")}");
        Assert.Equal(wanted.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Of(string id, string kind) => Modes[kind].Select(m => $"{id}:{m}");

    [Fact]
    public void The_fields_are_those_that_are_documented()
    {
        string[] documented =
        [
            "sheet",
            "soundProbability",
            "faults",
            "hypotheses",
            "alike",
            "readings",
            "unexplained",
            "next",
            "isExplained",
            "slips",
            "doubts",
        ];
        Assert.Equal(documented, Answer.Value.Fields().Take(documented.Length));
        Assert.All(Answer.Value.List("faults"), f => Assert.Equal(["element", "mode", "probability", "size", "low", "high"], f.Fields()));
        Assert.All(Answer.Value.List("hypotheses"), h => Assert.Equal(["faults", "probability"], h.Fields()));
        Assert.All(Answer.Value.List("readings"), r => Assert.Equal(["id", "measured", "expected", "deviation"], r.Fields()));
        Assert.All(Answer.Value.List("next"), n => Assert.Equal(["id", "bits", "minutes", "blockedBy"], n.Fields()));
        Assert.True(Answer.Value.List("hypotheses").Length <= 3);
        Assert.All(Answer.Value.List("alike"), g => Assert.All(g.EnumerateArray(), m => Assert.Contains(':', m.GetString()!)));
    }

    [Fact]
    public void The_true_fault_comes_first_with_its_size_inside_the_range()
    {
        var first = Answer.Value.List("faults")[0];
        Assert.Equal("disc-left", first.Text("element"));
        Assert.Equal("high-drop", first.Text("mode"));
        Assert.True(first.Number("probability") > 0.9);
        // The truth that was drawn for this case: 3.91 Ω.
        Assert.InRange(3.91, first.Number("low"), first.Number("high"));
    }

    [Fact]
    public void A_mode_without_a_size_has_null_for_it()
    {
        foreach (
            var f in Answer
                .Value.List("faults")
                .Where(f => f.Text("mode") is "reversed" or "stuck-open" or "bypassed" or "shorted" && f.Text("element") != "ballast-left")
        )
            Assert.All(new[] { "size", "low", "high" }, field => Assert.Equal(JsonValueKind.Null, f.GetProperty(field).ValueKind));
    }

    [Fact]
    public void Probabilities_are_probabilities()
    {
        Assert.All(Answer.Value.List("faults"), f => Assert.InRange(f.Number("probability"), 0, 1));
        Assert.InRange(Answer.Value.Number("soundProbability"), 0, 1);
        Assert.InRange(Answer.Value.List("hypotheses").Sum(h => h.Number("probability")), 0, 1.000001);
    }

    [Fact]
    public void Readings_stand_as_they_were_taken_and_what_was_waived_is_shown()
    {
        var path = Tool.File(
            "mixed.readings.json",
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "readings": [
              { "id": "blades", "value": { "jumps": [3.1, "OL"] } }, { "id": "blades-posts", "value": "OL" }, { "id": "ohms-17", "value": 0.17 },
              { "id": "insulation-posts", "value": null, "why": "no insulation tester", "waived": { "by": "M. Example", "instead": "a new cord" } } ],
              "told": { "jumps-when-flexed": "yes" } }
            """
        );
        var answer = Tool.Json("diagnose", Tool.Sample, path);
        var measured = answer.List("readings").ToDictionary(r => r.Text("id"), r => r.GetProperty("measured"), StringComparer.Ordinal);
        Assert.Equal(
            """[3.1,"OL"]""",
            measured["blades"].GetProperty("jumps").GetRawText().Replace(" ", "", StringComparison.Ordinal).ReplaceLineEndings("")
        );
        Assert.Equal("OL", measured["blades-posts"].GetString());
        Assert.Equal(0.17, measured["ohms-17"].GetDouble());
        Assert.DoesNotContain("insulation-posts", measured.Keys);
        Assert.Equal("M. Example", answer.List("waived").Single().Text("by"));
    }

    [Fact]
    public void Nothing_read_gives_the_chances_and_blocks_the_mains()
    {
        var empty = Tool.File("empty.readings.json", """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [] }""");
        var next = Tool.Json("diagnose", Tool.Sample, empty).List("next");
        Assert.Equal(42, next.Length);
        var firstBlocked = Array.FindIndex(next, n => n.List("blockedBy").Length > 0);
        Assert.All(next[firstBlocked..], n => Assert.NotEmpty(n.List("blockedBy")));
        Assert.Contains(next[firstBlocked..], n => n.Text("id") == "left-load");
    }

    [Fact]
    public void An_answer_cut_off_by_the_time_says_that_it_is_not_finished()
    {
        string[] asked = ["diagnose", Tool.Sample, Tool.Case("008"), "--seconds", "0.01"];
        var search = Tool.Json([.. asked]).GetProperty("search");
        Assert.Equal(("timeup", false), (search.Text("stopped"), search.GetProperty("finished").GetBoolean()));
        Assert.Contains(
            "NOT FINISHED: still searching when the time ran out.",
            Tool.Run(asked).Out.ReplaceLineEndings(" "),
            StringComparison.Ordinal
        );
        Assert.True(Answer.Value.GetProperty("search").GetProperty("finished").GetBoolean());
    }

    [Fact]
    public void Numbers_come_back_as_the_same_numbers()
    {
        foreach (var f in Answer.Value.List("faults"))
            Assert.Equal(
                f.GetProperty("probability").GetRawText(),
                f.Number("probability").ToString("R", System.Globalization.CultureInfo.InvariantCulture)
            );
    }
}
