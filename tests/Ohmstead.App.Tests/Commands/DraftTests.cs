namespace Ohmstead.App.Tests.Commands;

/// <summary>draft, and the other verbs with an outline in place of a sheet.</summary>
public sealed class DraftTests
{
    private const string Text = """
        { "ohmstead": "outline/1", "id": "small-90", "plate": { "volts": 120, "watts": 90 }, "blocks": [
          { "block": "winding", "id": "main", "from": "a", "posts": { "b": 12 } }, { "block": "throttle", "id": "t", "kind": "shoe", "volts": [5, 16] }, { "block": "breaker", "in": "common", "amps": 5 } ] }
        """;

    private static string Outline => Tool.File("small.outline.json", Text);

    [Fact]
    public void Draft_prints_the_sheet_and_where_its_numbers_come_from()
    {
        var answer = Tool.Json("draft", Outline);
        Assert.Equal(["outline", "sheet", "values", "faults", "setAside", "candidates", "tells", "wants", "assumed"], answer.Fields());
        Assert.Equal(["plate.hertz", "blocks[0].watts", "blocks[1].on"], answer.Words("assumed"));
        Assert.Equal("small-90", answer.Text("outline"));
        Assert.Equal("type-sheet/1", answer.GetProperty("sheet").Text("ohmstead"));
        Assert.All(answer.List("values"), v => Assert.Equal(["path", "value", "relativeError", "origin", "from"], v.Fields()));
        Assert.Equal("derived", answer.List("values").Single(v => v.Text("path") == "elements.primary.ohms").Text("origin"));
        Assert.Equal(1, Assert.Single(answer.List("candidates")).GetProperty("probability").GetDouble());
        Assert.Contains(
            answer.List("wants"),
            w =>
                w.Text("id") == "blades"
                && w.List("fixes").Any(f => f.GetString() == "elements.primary.ohms")
                && w.GetProperty("relativeErrorAfter").GetDouble() < 0.1
        );
    }

    [Fact]
    public void The_sheet_that_it_writes_passes_check()
    {
        var sheet = Tool.File("small.sheet.json", "");
        var (code, output, error) = Tool.Run("draft", Outline, "--sheet", sheet);
        Assert.True(code == 0, error);
        Assert.Contains("Take these first", output, StringComparison.Ordinal);
        Assert.Equal("no problems", Tool.Run("check", sheet).Out.Trim());
        Assert.Equal("no problems", Tool.Run("check", Outline).Out.Trim());
        var (refused, _, why) = Tool.Run("draft", Outline, "--sheet", "/no/such/folder/a.json");
        Assert.Equal(2, refused);
        Assert.Contains("cannot be written", why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_contradiction_is_refused_with_file_place_wrong_and_right()
    {
        var bad = Tool.File("bad.outline.json", Text.Replace("\"common\"", "\"attic\"", StringComparison.Ordinal));
        foreach (var verb in new[] { "draft", "check", "predict", "continuity" })
        {
            var (code, _, error) = Tool.Run(verb, bad);
            Assert.Equal(2, code);
            Assert.Equal(
                $"{bad}: $.blocks[2].in: \"attic\" is no place for a breaker; common, throttle, primary, or a post that is no throttle's",
                error.Trim()
            );
        }
    }

    [Fact]
    public void An_outline_stands_in_place_of_a_sheet_and_a_reading_may_be_given_whole()
    {
        // The post of the throttle reads 10 V under 4 Ω where 15 V were due, and full volts with no load: something in its way is worn.
        var readings = Tool.File(
            "small.readings.json",
            """
            { "ohmstead": "readings/1", "sheet": "small-90", "readings": [
              { "id": "mine", "quantity": "ac-volts", "between": ["post-a", "post-t"], "state": { "source": { "from": "blade-1", "to": "blade-2", "volts": "mains" }, "controls": { "throttle-t": 1 } }, "value": 15.9 },
              { "id": "t-load", "value": 9.8 }, { "id": "volts-b", "value": 11.9 }, { "id": "blades", "value": 7.9 } ] }
            """
        );
        var answer = Tool.Json("diagnose", Outline, readings);
        Assert.Equal(["mine", "t-load", "volts-b", "blades"], answer.List("readings").Select(r => r.Text("id")));
        Assert.Equal("shoe-t:worn", answer.List("faults").Take(1).Select(f => $"{f.Text("element")}:{f.Text("mode")}").Single());
        Assert.DoesNotContain(answer.List("next"), n => n.Text("id") == "t-full");
        Assert.Equal(3, Tool.Json("plan", Outline, "--reach", "cover").List("steps").Length);
    }

    [Fact]
    public void Of_an_outline_with_an_open_word_the_likeliest_type_is_taken_and_said()
    {
        // 0.3 V at 0.5 A: the breaker has 0.6 Ω. The winding has some 0.16 Ω up to the post at 14 V and 0.07 Ω up to that at 6 V.
        var outline = Tool.File(
            "open.outline.json",
            """
            { "ohmstead": "outline/1", "id": "open-90", "plate": { "volts": 120, "watts": 90 }, "blocks": [
              { "block": "winding", "id": "main", "from": "a", "posts": { "b": 6, "c": 14 } }, { "block": "breaker", "in": { "oneOf": ["b", "c"] }, "amps": 0.5 } ] }
            """
        );
        var readings = Tool.File(
            "open.readings.json",
            """
            { "ohmstead": "readings/1", "readings": [ { "id": "blades", "value": 7.8 }, { "id": "ohms-b", "value": 0.09 }, { "id": "ohms-c", "value": 0.79 }, { "id": "volts-b", "value": 6 }, { "id": "volts-c", "value": 14 } ] }
            """
        );
        var answer = System.Text.Json.JsonDocument.Parse(Tool.Run("diagnose", outline, readings, "--json").Out).RootElement;
        var first = answer.List("candidates")[0];
        Assert.Equal("c", first.GetProperty("choices").Text("blocks[1].in"));
        Assert.True(first.GetProperty("probability").GetDouble() > 0.8);
        Assert.Contains(answer.List("faults"), f => f.Text("element") == "breaker-c");
        Assert.DoesNotContain(answer.List("faults"), f => f.Text("element") == "breaker-b");
        foreach (var verb in new[] { "diagnose", "rewire" })
            Assert.Contains("blocks[1].in: c, the likeliest", Tool.Run(verb, outline, readings).Error, StringComparison.Ordinal);
        // Without readings both are as likely: the first, and that is said too.
        Assert.Contains("blocks[1].in: b, the first of 2 types", Tool.Run("predict", outline).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_give_the_sheet_its_numbers_and_it_knows_them_again()
    {
        var readings = Tool.File(
            "unit.readings.json",
            """
            { "ohmstead": "readings/1", "sheet": "small-90", "readings": [
              { "id": "blades", "value": 9.1 }, { "id": "volts-b", "value": 11.8 }, { "id": "t-full", "value": 16.1 }, { "id": "t-load", "value": 14.4 }, { "id": "amps-idle", "value": 0.16 }, { "id": "watts-idle", "value": 7.1 } ] }
            """
        );
        var sheet = Tool.File("unit.sheet.json", "");
        var answer = Tool.Json("draft", Outline, readings, "--sheet", sheet);
        var ohms = answer.List("values").Single(v => v.Text("path") == "elements.primary.ohms");
        Assert.Equal(("measured", "blades"), (ohms.Text("origin"), ohms.Words("from").Single()));
        Assert.InRange(ohms.GetProperty("value").GetDouble(), 8, 9.1);
        Assert.All(answer.List("faults"), f => Assert.Equal([readings], [f.Text("file")]));
        Assert.Equal("no problems", Tool.Run("check", sheet).Out.Trim());
        Assert.Contains("drafted from these very readings", Tool.Run("diagnose", sheet, readings).Error, StringComparison.Ordinal);
        Assert.Contains("elements.main.tap-b.turn", Tool.Json("fit", sheet, readings).List("parameters").Select(p => p.Text("path")));
        var (code, _, error) = Tool.Run(
            "draft",
            Outline,
            Tool.File("bad.readings.json", """{ "ohmstead": "readings/1", "readings": [ { "id": "volts-z", "value": 1 } ] }""")
        );
        Assert.Equal(2, code);
        Assert.Contains("$.readings[0].id", error, StringComparison.Ordinal);
    }
}
