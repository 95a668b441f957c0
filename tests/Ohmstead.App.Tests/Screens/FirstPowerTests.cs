using Bunit;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Screens.Proving;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>First power: lamps of the bench's own line, ticked by the person who has them; locked by what locks the mains.</summary>
public class FirstPowerTests
{
    private static readonly Fact[] Ready = [.. ScreenBench.NothingLive, .. ScreenBench.ColdGates];

    private static IRenderedComponent<FirstPowerScreen> Show(ScreenBench bench)
    {
        bench.Context.Renderer.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        return bench.Context.Render<FirstPowerScreen>(p => p.Add(s => s.Id, ScreenBench.UnitId));
    }

    private static List<AngleSharp.Dom.IElement> Lamps(IRenderedComponent<FirstPowerScreen> screen) =>
        [.. screen.FindAll("section[aria-labelledby=lamp] label.pick")];

    [Fact]
    public async Task None_is_ticked_at_first_and_all_are_of_the_benchs_line()
    {
        await using var bench = await ScreenBench.OpenAsync(Ready);
        var screen = Show(bench);
        screen.WaitForAssertion(() => Assert.NotEmpty(Lamps(screen)));
        Assert.All(Lamps(screen), l => Assert.EndsWith(" W, 120 V", l.TextContent.Trim(), StringComparison.Ordinal));
        Assert.All(Lamps(screen), l => Assert.False(l.QuerySelector("input")!.HasAttribute("checked")));
        Assert.Contains("Tick the lamps you have.", screen.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("best for this unit", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() =>
            Lamps(screen).Single(l => l.TextContent.Contains("60 W", StringComparison.Ordinal)).QuerySelector("input")!.ChangeAsync(true)
        );
        screen.WaitForAssertion(() =>
            Assert.Contains(
                "Series lamp 60 W, 120 V: best for this unit",
                System.Text.RegularExpressions.Regex.Replace(screen.Find("section[aria-labelledby=lamp]").TextContent, @"\s+", " "),
                StringComparison.Ordinal
            )
        );
        Assert.Equal("series-lamp-60-120", Assert.Single((await bench.Bench.ShopAsync()).Loads, l => l.Volts > 0).Id);
    }

    [Fact]
    public async Task On_a_230_V_bench_they_are_230_V_lamps()
    {
        await using var bench = await ScreenBench.OpenAsync([.. Ready, new BenchSet(BenchState.AsSheet with { SupplyVolts = 231 })]);
        var screen = Show(bench);
        screen.WaitForAssertion(() => Assert.NotEmpty(Lamps(screen)));
        Assert.All(Lamps(screen), l => Assert.EndsWith(" W, 230 V", l.TextContent.Trim(), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(false, 120)]
    [InlineData(true, 110)]
    public async Task Bare_wire_locks_first_power_and_the_lamp_check(bool isBare, double read)
    {
        Fact[] cord = isBare ? [new ConditionNoted("cord", "crumbling, bare wire showing", Decision.Leave, "")] : [];
        await using var bench = await ScreenBench.OpenAsync([.. Ready, ScreenBench.Read("lamp-60", read), .. cord]);
        var screen = Show(bench);
        screen.WaitForAssertion(() => Assert.NotEmpty(Lamps(screen)));
        Assert.Equal(isBare, screen.Markup.Contains("Locked until the lamp check passes.", StringComparison.Ordinal));
        Assert.Equal(
            !isBare,
            screen
                .FindAll($"a[href='/units/{ScreenBench.UnitId}/reading/lamp-60']")
                .Any(a => a.TextContent.Contains("Read it again", StringComparison.Ordinal))
        );
        if (isBare)
            Assert.Contains("bare wire showing", screen.Find("section[aria-labelledby=rules]").TextContent, StringComparison.Ordinal);
        Assert.All(
            CautionTable.For(Act.BringUp),
            c => Assert.Contains(c, screen.Find("section[aria-labelledby=rules]").TextContent, StringComparison.Ordinal)
        );
    }
}
