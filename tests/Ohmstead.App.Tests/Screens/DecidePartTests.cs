using Bunit;
using Ohmstead.App.Screens.Findings;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Deciding about one part on its screen.</summary>
public class DecidePartTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static IRenderedComponent<DecidePart> Show(ScreenBench bench, string about)
    {
        var screen = bench.Context.Render<DecidePart>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.About, about));
        screen.WaitForState(() => screen.FindAll("#choice, .warning").Count > 0, Patience);
        return screen;
    }

    [Fact]
    public async Task A_part_that_is_not_there_is_said_to_be_so()
    {
        await using var bench = await ScreenBench.OpenAsync();
        Assert.Contains("no such part", Show(bench, "no-such-part").Find(".warning").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_measured_roller_gives_its_reason_to_the_decision()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        var screen = Show(bench, "roller-1");
        await screen.Find("#m-now").InputAsync("6.5");
        Assert.Contains("Replace.", screen.Find("section[aria-labelledby=measure] [role=status]").TextContent, StringComparison.Ordinal);
        await screen.FindAll("button").Single(b => b.TextContent.Trim() == "Use this").ClickAsync();
        await screen.FindAll("button").Single(b => b.TextContent.Trim() == "Save the decision").ClickAsync();
        var fact = Assert.Single((await bench.UnitAsync()).All<PartDecided>()).Fact;
        Assert.Equal(("roller-1", DecidedAct.Replace, "68 % of its size left", 5.10m), (fact.About, fact.Act, fact.Why, fact.Price));
        Assert.Contains("See the plan", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_disc_has_the_three_parts_side_by_side_and_a_diode_to_choose()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        var screen = Show(bench, "disc");
        screen.WaitForState(() => screen.FindAll(".disc-part").Count == 3, Patience);
        Assert.Contains("at the track", screen.Find(".disc-part").TextContent, StringComparison.Ordinal);
        await screen.FindAll("input[name=act]")[4].ChangeAsync(true);
        await screen.FindAll("input[name=fit]")[1].ChangeAsync(true);
        await screen.FindAll("button").Single(b => b.TextContent.Trim() == "Save the decision").ClickAsync();
        var fact = Assert.Single((await bench.UnitAsync()).All<PartDecided>()).Fact;
        Assert.Equal("silicon diode", fact.Part);
        Assert.Equal(4, fact.Figures.Length);
    }
}
