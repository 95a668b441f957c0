using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Ohmstead.App.Screens.Testing;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The clock of a heat run: it calls for each reading, goes on after a reload, and says where the rise is going.</summary>
public class HeatRunScreenTests
{
    private static readonly Fact[] Ready = [.. ScreenBench.NothingLive, .. ScreenBench.ColdGates, ScreenBench.Read("lamp-60", 110)];

    private static IRenderedComponent<HeatRunScreen> Show(ScreenBench bench)
    {
        bench.Context.Renderer.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        return bench.Context.Render<HeatRunScreen>(p => p.Add(s => s.Id, ScreenBench.UnitId));
    }

    private static async Task<IRenderedComponent<HeatRunScreen>> BegunAsync(ScreenBench bench)
    {
        var screen = Show(bench);
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll("#cold")));
        await screen.DoAsync(() => screen.Find("#cold").ChangeAsync("3.00"));
        await screen.DoAsync(() => screen.Find("#room").ChangeAsync("20"));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#cold") is not null).SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("Next reading in", screen.Markup, StringComparison.Ordinal));
        return screen;
    }

    private static async Task ReadAsync(IRenderedComponent<HeatRunScreen> screen, string ohms)
    {
        await screen.DoAsync(() =>
            screen
                .FindAll(".clock button")
                .First(b => b.TextContent.Contains("nplugged", StringComparison.Ordinal))
                .ClickAsync(new MouseEventArgs())
        );
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll("#ohms")));
        await screen.DoAsync(() => screen.Find("#ohms").InputAsync(ohms));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#ohms") is not null).SubmitAsync());
        screen.WaitForAssertion(() =>
            Assert.Contains("Saved. Leads off the blades, then plug in again", screen.Markup, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task It_calls_at_ten_minutes_waits_twenty_seconds_and_goes_on_after_a_reload()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var screen = await BegunAsync(bench);
        Assert.Equal("10:00", screen.Find(".clock .count").TextContent);
        time.Move(228);
        screen.WaitForAssertion(() => Assert.Equal("6:12", screen.Find(".clock .count").TextContent));
        await bench.Context.DisposeComponentsAsync();
        time.Move(60);
        screen = Show(bench);
        screen.WaitForAssertion(() => Assert.Equal("5:12", screen.Find(".clock .count").TextContent));
        Assert.DoesNotContain(bench.Context.JSInterop.Invocations, i => i.Identifier == "ohmstead.tone");
        time.Move(312);
        screen.WaitForAssertion(() => Assert.Equal("Unplug.", screen.Find(".clock .call").TextContent));
        screen.WaitForAssertion(() => Assert.Single(bench.Context.JSInterop.Invocations, i => i.Identifier == "ohmstead.tone"));
        await screen.DoAsync(() => screen.Find(".clock button").ClickAsync(new MouseEventArgs()));
        screen.WaitForAssertion(() => Assert.Equal("Wait 20 s", screen.Find(".clock .call").TextContent));
        time.Move(8);
        await bench.Context.DisposeComponentsAsync();
        screen = Show(bench);
        screen.WaitForAssertion(() => Assert.Equal("Wait 12 s", screen.Find(".clock .call").TextContent));
        time.Move(12);
        screen.WaitForAssertion(() => Assert.Equal("Type the ohms.", screen.Find(".clock .call").TextContent));
        await screen.DoAsync(() => screen.Find("#ohms").InputAsync("3.12"));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#ohms") is not null).SubmitAsync());
        var read = (await bench.UnitAsync()).All<HeatRead>().Single().Fact;
        Assert.Equal((10.0, 20.0, 3.12, 20.0), (read.Minutes, read.SecondsAfter, read.Ohms, read.RoomCelsius));
    }

    [Fact]
    public async Task After_three_readings_it_says_where_it_is_going_and_its_end_is_kept_with_what_the_unit_may_carry()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var screen = await BegunAsync(bench);
        // One mass going to 30 K with 64 minutes: 3·(254.5 + 30(1 − e^(−t/64)))/254.5.
        foreach (var ohms in new[] { "3.051", "3.095", "3.132" })
        {
            Assert.DoesNotContain("Final rise", screen.Markup, StringComparison.Ordinal);
            time.Move(600);
            await ReadAsync(screen, ohms);
        }
        screen.WaitForAssertion(() => Assert.Contains("Final rise", screen.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
        Assert.Contains("May stop: below the limit", screen.Markup, StringComparison.Ordinal);
        Assert.Single(screen.FindAll("svg.curve .bar-now"));
        await screen.DoAsync(() =>
            screen.FindAll("button").Single(b => b.TextContent == "End the run: plug is out").ClickAsync(new MouseEventArgs())
        );
        screen.WaitForAssertion(
            () => Assert.Contains("What it may carry for hours", screen.Markup, StringComparison.Ordinal),
            TimeSpan.FromSeconds(20)
        );
        await screen.DoAsync(() => screen.Find("#idle").ChangeAsync("11"));
        await screen.DoAsync(() => screen.Find("#copper").ChangeAsync("14"));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#warm") is not null).SubmitAsync());
        screen.WaitForAssertion(() =>
            Assert.Contains("At 30 °C in the room it stays within 65 °C of rise up to", screen.Markup, StringComparison.Ordinal)
        );
        var unit = await bench.UnitAsync();
        Assert.Equal("below", unit.All<HeatRunEnded>().Single().Fact.MayStop);
        Assert.Equal(30, unit.All<LoadForHours>().Single().Fact.RoomCelsius);
    }

    [Fact]
    public async Task The_last_reading_leaves_the_plug_out_and_what_is_read_then_has_its_seconds_by_the_clock()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var screen = await BegunAsync(bench);
        foreach (var ohms in new[] { "3.051", "3.095" })
        {
            time.Move(600);
            await ReadAsync(screen, ohms);
        }
        time.Move(600);
        await screen.DoAsync(() => screen.FindAll(".clock button")[0].ClickAsync(new MouseEventArgs()));
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll("#ohms")));
        time.Move(20);
        await screen.DoAsync(() => screen.Find("#ohms").InputAsync("3.132"));
        await screen.DoAsync(() =>
            screen
                .FindAll(".clock button")
                .Single(b => b.TextContent == "Save as the last one: plug stays out")
                .ClickAsync(new MouseEventArgs())
        );
        screen.WaitForAssertion(() => Assert.Contains("Plug out for", screen.Markup, StringComparison.Ordinal));
        time.Move(40);
        screen.WaitForAssertion(() => Assert.Equal("1:00", screen.Find(".clock .count").TextContent));
        Assert.DoesNotContain(screen.FindAll(".clock button"), b => b.TextContent.Contains("nplugged", StringComparison.Ordinal));
        await screen.DoAsync(() => screen.Find("#cool-o").InputAsync("3.12"));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#cool-o") is not null).SubmitAsync());
        var unit = await bench.UnitAsync();
        Assert.Equal((60.0, 3.12), (unit.All<HeatCooled>().Single().Fact.Seconds, unit.All<HeatCooled>().Single().Fact.Ohms));
        Assert.Equal((30.0, true), (unit.All<HeatRead>().Last().Fact.Minutes, unit.All<HeatRead>().Last().Fact.StaysOut));
    }

    [Fact]
    public async Task A_second_unit_on_a_heat_run_is_named_with_its_clock_and_its_tone_is_heard_here()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var other = new Guid(9, 0, 1, new byte[8]);
        await bench.Bench.EnterAsync(
            other,
            0,
            "bench",
            new TakenIn("F-10", "twin-175", "", ""),
            new HeatRunBegun(time.GetUtcNow().AddMinutes(-6), 3, 20, 5, 65, "a rule", 0.25, 10)
        );
        var screen = await BegunAsync(bench);
        Assert.Contains("Next reading in 4:00.", screen.Find("p.notice").TextContent, StringComparison.Ordinal);
        time.Move(240);
        screen.WaitForAssertion(() =>
            Assert.Contains("Its reading is due: unplug it.", screen.Find("p.notice").TextContent, StringComparison.Ordinal)
        );
        screen.WaitForAssertion(() => Assert.Contains(bench.Context.JSInterop.Invocations, i => i.Identifier == "ohmstead.tone"));
        Assert.Equal("6:00", screen.Find(".clock .count").TextContent);
    }
}
