using Bunit;
using Ohmstead.App.Screens.Plans;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The plan of a unit on its screen.</summary>
public class PlanScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static readonly PartDecided Roller = new("roller-1", "worn", DecidedAct.Replace, "", 5.10m, 20, "7.0 mm of 9.5", []);

    private static IRenderedComponent<PlanOfUnit> Show(ScreenBench bench)
    {
        var screen = bench.Context.Render<PlanOfUnit>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement("section.lines", Patience);
        return screen;
    }

    [Fact]
    public async Task Without_a_finding_or_a_decision_the_next_act_is_a_reading()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        Assert.Contains("No finding is likely so far", screen.Markup, StringComparison.Ordinal);
        Assert.Empty(screen.FindAll(".plan-line"));
    }

    [Fact]
    public async Task A_decision_is_a_line_with_its_reason_minutes_price_and_stop_point()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        var screen = Show(bench);
        var line = screen.FindAll(".plan-line").Single(l => l.TextContent.Contains(": replace", StringComparison.Ordinal)).TextContent;
        Assert.Contains("7.0 mm of 9.5", line, StringComparison.Ordinal);
        Assert.Contains("20 min", line, StringComparison.Ordinal);
        Assert.Contains("$5.10", line, StringComparison.Ordinal);
        Assert.Contains("It ends the repair: $20.00", screen.Find(".stop-line").TextContent, StringComparison.Ordinal);
        screen.WaitForAssertion(() => Assert.StartsWith("$", screen.Find(".range").TextContent, StringComparison.Ordinal), Patience);
        Assert.Contains("–$", screen.Find(".range").TextContent, StringComparison.Ordinal);
        Assert.Single(screen.FindAll(".do"));
    }

    [Fact]
    public async Task The_next_line_is_begun_by_its_button()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        var screen = Show(bench);
        await screen.Find(".do").ClickAsync();
        var way = Assert.Single((await bench.UnitAsync()).All<WayChosen>()).Fact;
        Assert.NotEmpty(way.Reach);
        Assert.EndsWith(
            "/apart/step",
            bench.Context.Services.GetService(typeof(Microsoft.AspNetCore.Components.NavigationManager))
                is Microsoft.AspNetCore.Components.NavigationManager to
                ? to.Uri
                : "",
            StringComparison.Ordinal
        );
    }
}
