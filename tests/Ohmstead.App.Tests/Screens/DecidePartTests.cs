using Bunit;
using Ohmstead.App.Screens.Findings;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Deciding about one part on its screen.</summary>
public class DecidePartTests
{
    private static readonly Guid Rollers = new(21, 0, 0, new byte[8]);
    private static readonly Guid Diodes = new(22, 0, 0, new byte[8]);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static IRenderedComponent<DecidePart> Show(ScreenBench bench, string about)
    {
        var screen = bench.Context.Render<DecidePart>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.About, about));
        screen.WaitForState(() => screen.FindAll("#choice, .warning").Count > 0, Patience);
        return screen;
    }

    private static Task PressAsync(IRenderedComponent<DecidePart> screen, string words) =>
        screen.DoAsync(() => screen.FindAll("button").Single(b => b.TextContent.Trim() == words).ClickAsync());

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
        await screen.DoAsync(() => screen.Find("#m-now").InputAsync("6.5"));
        screen.WaitForAssertion(() =>
            Assert.Contains("Replace.", screen.Find("section[aria-labelledby=measure] [role=status]").TextContent, StringComparison.Ordinal)
        );
        await PressAsync(screen, "Use this");
        await PressAsync(screen, "Save the decision");
        screen.WaitForState(() => screen.Markup.Contains("See the plan", StringComparison.Ordinal), Patience);
        var fact = Assert.Single((await bench.UnitAsync()).All<PartDecided>()).Fact;
        Assert.Equal(("roller-1", DecidedAct.Replace, "68 % of its size left", 5.10m), (fact.About, fact.Act, fact.Why, fact.Price));
    }

    [Fact]
    public async Task What_lies_in_the_drawer_is_said_beside_the_choice()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        await bench.Bench.Drawer.EnterAsync(
            new BinSaid(Rollers) { Tag = "C1", Name = "Roller, carbon" },
            new BinCounted(Rollers, 4),
            new BinSaid(Diodes) { Tag = "D4", Name = "Diode 8 A" }
        );
        async Task<string> SaidAsync(string about, bool isOther)
        {
            var screen = Show(bench, about);
            await screen.DoAsync(() => screen.FindAll("input[name=act]")[4].ChangeAsync(true));
            if (isOther)
                await screen.DoAsync(() => screen.FindAll("input[name=fit]")[1].ChangeAsync(true));
            screen.WaitForState(() => screen.Markup.Contains("In the drawer:", StringComparison.Ordinal), Patience);
            return screen.FindAll("p.small").Single(p => p.TextContent.StartsWith("In the drawer:", StringComparison.Ordinal)).TextContent;
        }
        Assert.Equal("In the drawer: Roller, carbon, 4 in bin C1.", await SaidAsync("roller-1", false));
        Assert.Equal("In the drawer: none.", await SaidAsync("disc", false));
        Assert.Equal("In the drawer: Diode 8 A, to order.", await SaidAsync("disc", true));
    }

    [Fact]
    public async Task A_disc_has_the_three_parts_side_by_side_and_a_diode_to_choose()
    {
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        var screen = Show(bench, "disc");
        screen.WaitForState(() => screen.FindAll(".disc-part").Count == 3, Patience);
        Assert.Contains("at the track", screen.Find(".disc-part").TextContent, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.FindAll("input[name=act]")[4].ChangeAsync(true));
        await screen.DoAsync(() => screen.FindAll("input[name=fit]")[1].ChangeAsync(true));
        await PressAsync(screen, "Save the decision");
        screen.WaitForState(() => screen.Markup.Contains("See the plan", StringComparison.Ordinal), Patience);
        var fact = Assert.Single((await bench.UnitAsync()).All<PartDecided>()).Fact;
        Assert.Equal("silicon diode", fact.Part);
        Assert.Equal(4, fact.Figures.Length);
    }
}
