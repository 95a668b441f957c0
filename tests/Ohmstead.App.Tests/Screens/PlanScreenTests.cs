using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Screens.Plans;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The plan of a unit on its screen.</summary>
public class PlanScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static readonly PartDecided Roller = new("roller-1", "worn", DecidedAct.Replace, "", 5.10m, 20, "7.0 mm of 9.5", []);

    private static IRenderedComponent<PlanOfUnit> Show(ScreenBench bench)
    {
        bench.Context.Renderer.SetRendererInfo(new("Server", isInteractive: true));
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
    public async Task Estimate_go_ahead_and_bill_are_facts_of_the_unit()
    {
        await using var bench = await ScreenBench.OpenAsync([
            .. ScreenBench.ColdGates,
            Roller,
            new PartChanged("roller-1", PartChange.Renewed, null, ""),
        ]);
        var screen = Show(bench);
        async Task PressAsync(string words)
        {
            screen.WaitForState(() => screen.FindAll("button:not([disabled])").Any(b => b.TextContent.Trim() == words), Patience);
            await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent.Trim() == words).ClickAsync());
        }
        await screen.DoAsync(() => screen.Find("#ask-above").InputAsync("120"));
        await PressAsync("Make the estimate");
        screen.WaitForElement("#up-to", Patience);
        await screen.DoAsync(() => screen.Find("#up-to").InputAsync("110"));
        await PressAsync("Save the go-ahead");
        await screen.DoAsync(() => screen.Find("#bill").InputAsync("98,5"));
        await PressAsync("Save the bill");
        screen.WaitForState(() => screen.Markup.Contains("$98.50", StringComparison.Ordinal), Patience);
        var unit = await bench.UnitAsync();
        Assert.Equal(120, Assert.Single(unit.All<EstimateMade>()).Fact.AskAbove);
        Assert.Equal(110, Assert.Single(unit.All<GoAheadGiven>()).Fact.Limit);
        Assert.Equal(98.5m, Assert.Single(unit.All<Billed>()).Fact.Sum);
    }

    [Fact]
    public async Task Looks_are_noted_apart_and_put_on_the_plan()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        var screen = Show(bench);
        await screen.DoAsync(() => screen.Find("#looks-lettering").InputAsync("worn at the thumb"));
        await screen.DoAsync(() => screen.FindAll("button").Single(b => b.TextContent == "Do it: Lettering").ClickAsync());
        screen.WaitForState(
            () => screen.FindAll(".plan-line").Any(p => p.TextContent.Contains("Looks, lettering", StringComparison.Ordinal)),
            Patience
        );
        Assert.Equal(
            ("Lettering", true),
            (Assert.Single((await bench.UnitAsync()).All<LooksNoted>()).Fact is var l ? (l.Item, l.IsToDo) : default)
        );
    }

    [Fact]
    public async Task A_chance_is_edited_where_it_stands_and_is_the_shops_from_then_on()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        var screen = Show(bench);
        screen.WaitForElement("section[aria-labelledby=while-open] input", Patience);
        var part = screen.Find("section[aria-labelledby=while-open] input").Id!["f-fail-".Length..];
        await screen.DoAsync(() => screen.Find("section[aria-labelledby=while-open] input").ChangeAsync("88"));
        screen.WaitForState(() =>
            screen.Find("section[aria-labelledby=while-open]").TextContent.Contains("Replace", StringComparison.Ordinal)
        );
        Assert.Contains((await bench.Bench.ShopAsync()).Parts, p => part.StartsWith(p.Id, StringComparison.Ordinal) && p.FailPercent == 88);
    }

    private static readonly Guid Rollers = new(21, 0, 0, new byte[8]);

    [Fact]
    public async Task A_part_says_where_it_lies_and_one_press_takes_it_out_for_the_unit()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        await bench.Bench.Drawer.EnterAsync(
            new BinSaid(Rollers)
            {
                Tag = "C1",
                Name = "Roller, carbon",
                Part = "roller",
            }
        );
        var screen = Show(bench);
        string Line() =>
            screen.FindAll(".plan-line").Single(l => l.TextContent.Contains(": replace", StringComparison.Ordinal)).TextContent;
        Assert.Contains("$5.10: to order", Line(), StringComparison.Ordinal);
        Assert.Empty(screen.FindAll("section[aria-labelledby=take-out]"));
        await bench.Bench.Drawer.EnterAsync(new PartsReceived(Rollers, 4, "Acme", "41", new DateOnly(2026, 11, 3)));
        screen.WaitForState(() => Line().Contains("4 in bin C1, Acme, lot 41", StringComparison.Ordinal), Patience);
        await screen.DoAsync(() => screen.Find("section[aria-labelledby=take-out] button").ClickAsync());
        screen.WaitForState(() => Line().Contains("beside this unit", StringComparison.Ordinal), Patience);
        Assert.Empty(screen.FindAll("section[aria-labelledby=take-out]"));
        var aside = Assert.Single((await bench.Bench.Drawer.ReadAsync()).Aside);
        Assert.Equal((ScreenBench.UnitId, "F-9", new BinCount(Rollers, 1)), (aside.Unit, aside.Tag, Assert.Single(aside.Parts)));
    }

    [Fact]
    public async Task A_repair_that_ends_at_a_stop_point_is_billed_and_goes_back()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        var screen = Show(bench);
        await screen.DoAsync(() => screen.FindAll(".stop-line button").Single().ClickAsync());
        screen.WaitForAssertion(() =>
            Assert.Contains("Billed: $20.00. Ended:", screen.Find(".notice").TextContent, StringComparison.Ordinal)
        );
        var navigation = bench.Context.Services.GetRequiredService<NavigationManager>();
        screen.WaitForAssertion(() => Assert.EndsWith("/return", navigation.Uri, StringComparison.Ordinal));
        var billed = Assert.Single((await bench.UnitAsync()).All<Billed>()).Fact;
        Assert.Equal(20, billed.Sum);
        Assert.StartsWith("Ended: ", billed.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_next_line_is_begun_by_its_button()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, Roller]);
        var screen = Show(bench);
        await screen.DoAsync(() => screen.Find(".do").ClickAsync());
        var navigation = bench.Context.Services.GetRequiredService<NavigationManager>();
        screen.WaitForAssertion(() => Assert.EndsWith("/apart/step", navigation.Uri, StringComparison.Ordinal));
        Assert.NotEmpty(Assert.Single((await bench.UnitAsync()).All<WayChosen>()).Fact.Reach);
    }
}
