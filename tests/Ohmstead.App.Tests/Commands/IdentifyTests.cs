namespace Ohmstead.App.Tests.Commands;

/// <summary>identify, over the program.</summary>
public sealed class IdentifyTests
{
    private static string Outline(string id, double volts) =>
        Tool.File(
            $"{id}.outline.json",
            FormattableString.Invariant(
                $$"""
                { "ohmstead": "outline/1", "id": "{{id}}", "plate": { "volts": 120, "watts": 90 }, "blocks": [ { "block": "winding", "id": "main", "from": "a", "posts": { "b": {{volts}}, "c": 20 } } ] }
                """
            )
        );

    private static readonly string Readings = Tool.File(
        "unit.readings.json",
        """
        { "ohmstead": "readings/1", "readings": [ { "id": "blades", "value": 7.8 }, { "id": "volts-b", "value": 12.1 }, { "id": "volts-c", "value": 19.8 } ] }
        """
    );

    [Fact]
    public void It_says_which_type_it_is_or_none_and_what_excludes_one()
    {
        var (eight, twelve, other) = (Outline("eight", 8), Outline("twelve", 12), Tool.Demo("solo-110.sheet.json"));
        var answer = Tool.Json("identify", eight, twelve, other, "--readings", Readings);
        Assert.Equal(["kinds", "none", "next", "alike"], answer.Fields());
        var kinds = answer.List("kinds");
        Assert.All(kinds, k => Assert.Equal(["sheet", "probability", "logEvidence", "faults", "excluded"], k.Fields()));
        Assert.Equal(["eight", "twelve", "solo-110"], kinds.Select(k => k.Text("sheet")));
        Assert.True(kinds[1].GetProperty("probability").GetDouble() > 0.8);
        Assert.Equal(1, kinds.Sum(k => k.GetProperty("probability").GetDouble()) + answer.GetProperty("none").GetDouble(), 6);
        Assert.Equal("no reading volts-b", kinds[2].Text("excluded"));
        var (code, output, error) = Tool.Run("identify", eight, twelve, "--readings", Readings);
        Assert.True(code == 0, error);
        Assert.Contains("none of these", output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_under_one_type_alone_excludes_that_type_and_what_is_wrong_under_all_is_refused()
    {
        // Only the small unit's second outline has a throttle to be noted beside a reading.
        var roller = Tool.File(
            "roller.outline.json",
            """
            { "ohmstead": "outline/1", "id": "roller", "plate": { "volts": 120, "watts": 90 }, "blocks": [ { "block": "winding", "id": "main", "from": "a", "posts": { "b": 12 } }, { "block": "throttle", "id": "t", "kind": "roller", "volts": [5, 20] } ] }
            """
        );
        string Taken(string controls) =>
            Tool.File(
                "noted.readings.json",
                $$"""{ "ohmstead": "readings/1", "readings": [ { "id": "volts-b", "value": 12, "controls": {{controls}} } ] }"""
            );
        var answer = Tool.Json("identify", Outline("twelve", 12), roller, "--readings", Taken("""{ "throttle-t": 0.5 }"""));
        Assert.Contains("throttle-t", answer.List("kinds")[0].Text("excluded"), StringComparison.Ordinal);
        Assert.Equal(System.Text.Json.JsonValueKind.Null, answer.List("kinds")[1].GetProperty("excluded").ValueKind);
        var (code, _, error) = Tool.Run("identify", Outline("twelve", 12), roller, "--readings", Taken("""{ "lever": "up" }"""));
        Assert.Equal(2, code);
        Assert.Contains("$.readings[0].controls.lever", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chance_out_of_range_is_refused()
    {
        var (code, _, error) = Tool.Run("identify", Outline("eight", 8), "--readings", Readings, "--none", "1");
        Assert.Equal(2, code);
        Assert.Contains("--none", error, StringComparison.Ordinal);
    }
}
