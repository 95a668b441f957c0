using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Ohmstead.App.Screens.Testing;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The count of a breaker: seconds left, hands off, one act that is held, and the cool-down after it.</summary>
public class BreakerScreenTests
{
    private static readonly Fact[] Ready = [.. ScreenBench.NothingLive, .. ScreenBench.ColdGates, ScreenBench.Read("lamp-60", 110)];

    private static IRenderedComponent<BreakerScreen> Show(ScreenBench bench)
    {
        bench.Context.Renderer.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        return bench.Context.Render<BreakerScreen>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.BreakerId, "breaker-1"));
    }

    private static async Task<IRenderedComponent<BreakerScreen>> StartedAsync(ScreenBench bench)
    {
        var screen = Show(bench);
        screen.WaitForAssertion(() => Assert.Contains("Load on: start the count", screen.Markup, StringComparison.Ordinal));
        await screen.DoAsync(() =>
            screen.FindAll("button").Single(b => b.TextContent == "Load on: start the count").ClickAsync(new MouseEventArgs())
        );
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll(".hands-off")));
        return screen;
    }

    private static int Left(IRenderedComponent<BreakerScreen> screen) =>
        int.Parse(screen.Find(".hands-off .left b").TextContent, System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public async Task The_count_reaches_the_stop_and_then_asks_to_switch_off_and_nothing_else_is_on_the_screen()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var screen = await StartedAsync(bench);
        var stop = (await bench.UnitAsync()).All<BreakerStarted>().Single().Fact.StopSeconds;
        Assert.Equal((int)Math.Ceiling(stop), Left(screen));
        // It opened; or the load went off early. When the time is up, only that it is off.
        Assert.Equal(2, screen.FindAll("button").Count);
        Assert.Empty(screen.FindAll("a"));
        Assert.Contains("Hands off", screen.Markup, StringComparison.Ordinal);
        time.Move(stop - 3.5);
        screen.WaitForAssertion(() => Assert.Equal(4, Left(screen)));
        time.Move(3.5);
        screen.WaitForAssertion(() => Assert.Contains("Time is up: switch the load off", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(0, Left(screen));
        Assert.Single(screen.FindAll("button"));
        await HoldAsync(screen, time, 1);
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".hands-off")));
        Assert.Equal(
            (false, stop),
            ((await bench.UnitAsync()).All<BreakerTimed>().Single().Fact is var t ? (t.Opened, t.Seconds) : default)
        );
    }

    [Fact]
    public async Task A_reload_keeps_the_time()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var before = await StartedAsync(bench);
        var all = Left(before);
        await bench.Context.DisposeComponentsAsync();
        time.Move(10);
        var again = Show(bench);
        again.WaitForAssertion(() => Assert.Equal(all - 10, Left(again)));
    }

    [Fact]
    public async Task A_touch_counts_for_nothing_and_a_second_held_is_the_trip_where_it_began()
    {
        var time = new MovedTime();
        await using var bench = await ScreenBench.OpenAsync(time, Ready);
        var screen = await StartedAsync(bench);
        time.Move(12.5);
        await HoldAsync(screen, time, 0.5);
        await screen.DoAsync(() => screen.Find(".hands-off button").TriggerEventAsync("onpointerup", new PointerEventArgs()));
        time.Move(2);
        Assert.NotEmpty(screen.FindAll(".hands-off"));
        Assert.Empty((await bench.UnitAsync()).All<BreakerTimed>());
        // At 15 s, by the space bar.
        await screen.DoAsync(() => screen.Find(".hands-off button").KeyDownAsync(new KeyboardEventArgs { Key = " " }));
        time.Move(1);
        screen.WaitForAssertion(() => Assert.Empty(screen.FindAll(".hands-off")));
        var timed = (await bench.UnitAsync()).All<BreakerTimed>().Single().Fact;
        Assert.Equal((true, 15.0), (timed.Opened, timed.Seconds));
        // It cools before the next: no button until then, and a clock.
        screen.WaitForAssertion(() => Assert.Contains("Let it cool", screen.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain("Load on: start the count", screen.Markup, StringComparison.Ordinal);
        time.Move(3600);
        screen.WaitForAssertion(() => Assert.Contains("Load on: start the count", screen.Markup, StringComparison.Ordinal));
    }

    private static async Task HoldAsync(IRenderedComponent<BreakerScreen> screen, MovedTime time, double seconds)
    {
        await screen.DoAsync(() => screen.Find(".hands-off button").TriggerEventAsync("onpointerdown", new PointerEventArgs()));
        time.Move(seconds);
    }
}
