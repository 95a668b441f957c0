namespace Ohmstead.App.Tests.Commands;

/// <summary>plan: the cheapest way to a part.</summary>
public sealed class PlanTests
{
    [Fact]
    public void The_answer_has_the_fields_of_the_format_and_an_order_that_can_be_done()
    {
        var plan = Tool.Json("plan", Tool.Sample, "--reach", "disc-left-out");
        Assert.Equal(["steps", "minutesOut", "minutesIn", "breakPercent", "expectedCost", "lowerBound", "onTheWay"], plan.Fields());
        var steps = plan.List("steps").Select(s => s.GetString()!).ToList();
        Assert.Equal("disc-left-out", steps[^1]);
        Assert.True(steps.IndexOf("panel-screws") < steps.IndexOf("cover"));
        Assert.DoesNotContain("platform", steps);
        Assert.Equal(plan.Number("expectedCost"), plan.Number("lowerBound"), 9);
        var onTheWay = plan.List("onTheWay").ToList();
        Assert.All(onTheWay, s => Assert.Equal(["id", "extraMinutes", "extraCost"], s.Fields()));
        Assert.Equal(onTheWay.Select(s => s.Number("extraCost")).Order(), onTheWay.Select(s => s.Number("extraCost")));
    }

    [Fact]
    public void What_the_hand_must_heed_on_the_way_is_said_once_whether_or_not_more_is_in_reach()
    {
        var output = string.Join(
            ' ',
            Tool.Run("plan", Tool.Demo("twin-175.sheet.json"), "--reach", "panel-rivets,disc-out")
                .Out.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        );
        string[] cautions = ["Pull the plug", "Chips and pin ends fly", "Phenolic dust", "may hold selenium", "Old solder holds lead"];
        Assert.All(cautions, c => Assert.Equal(2, output.Split(c).Length));
        Assert.Contains(
            "Pull the plug",
            Tool.Run(
                "plan",
                Tool.Demo("twin-175.sheet.json"),
                "--reach",
                "core-out,disc-out,roller-1-out,roller-2-out,ballast-out,breakers-out,rotaries-out,pilot-out,panel-rivets,post-nuts"
            ).Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_dearer_hour_costs_more_and_several_parts_share_their_way()
    {
        double Cost(params string[] more) => Tool.Json(["plan", Tool.Sample, .. more]).Number("expectedCost");
        Assert.True(Cost("--reach", "cord", "--rate", "80") > Cost("--reach", "cord"));
        Assert.True(Cost("--reach", "cord,disc-right-out") < Cost("--reach", "cord") + Cost("--reach", "disc-right-out"));
    }

    [Theory]
    [InlineData("nowhere", "\"nowhere\" is no step of the sheet")]
    [InlineData(",", "name a step of the sheet")]
    public void What_is_no_step_is_said_with_those_that_are(string reach, string said)
    {
        var (code, output, error) = Tool.Run("plan", Tool.Sample, "--reach", reach);
        Assert.Equal(2, code);
        Assert.Equal("", output);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.Contains("cover", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tree_without_an_order_is_refused_by_name()
    {
        var node = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Tool.Sample))!;
        foreach (var step in node["takeApart"]!.AsArray())
            if (step!["id"]!.GetValue<string>() == "lens")
                step["after"] = new System.Text.Json.Nodes.JsonArray("pilot-lamp");
        var (code, _, error) = Tool.Run("plan", Tool.File("ring.sheet.json", node.ToJsonString()), "--reach", "cover");
        Assert.Equal(2, code);
        Assert.Contains("lens, which waits for pilot-lamp, which waits for lens", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("afterAny", """[["nowhere"]]""", "takeApart[0].afterAny: \"nowhere\" is no step")]
    [InlineData("afterAny", "[[]]", "takeApart[0].afterAny: has a group without a step, which frees nothing")]
    [InlineData("after", """["nowhere"]""", "takeApart[0].after: \"nowhere\" is no step")]
    [InlineData("lifts", """["w-nowhere"]""", "takeApart[0].lifts: \"w-nowhere\" is no element")]
    public void What_is_wrong_in_a_step_is_said_where_it_stands(string field, string value, string said)
    {
        var node = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Tool.Sample))!;
        node["takeApart"]![0]![field] = System.Text.Json.Nodes.JsonNode.Parse(value);
        var (code, _, error) = Tool.Run("plan", Tool.File("wrong-step.sheet.json", node.ToJsonString()), "--reach", "cover");
        Assert.Equal(2, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }
}
