using Bunit;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Screens.Testing;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Testing;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The tests of a unit on their screens: limit first, then the reading, then the verdict.</summary>
public class TestScreenTests
{
    private static readonly Fact[] Ready = [.. ScreenBench.NothingLive, .. ScreenBench.ColdGates, ScreenBench.Read("lamp-60", 110)];

    private static IRenderedComponent<T> Show<T>(ScreenBench bench, Action<ComponentParameterCollectionBuilder<T>>? more = null)
        where T : TestScreen
    {
        bench.Context.Renderer.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        return bench.Context.Render<T>(p =>
        {
            p.Add(s => s.Id, ScreenBench.UnitId);
            more?.Invoke(p);
        });
    }

    private static IRenderedComponent<OneTest> One(ScreenBench bench, string test) => Show<OneTest>(bench, p => p.Add(s => s.TestId, test));

    [Fact]
    public async Task The_list_says_what_is_due_in_order_takes_over_what_was_read_and_marks_nothing_green_that_was_not()
    {
        await using var bench = await ScreenBench.OpenAsync(Ready);
        var screen = Show<AllTests>(bench);
        screen.WaitForAssertion(() => Assert.Contains("Taken over from your readings.", screen.Markup, StringComparison.Ordinal));
        Assert.StartsWith("Next: All posts to the core, 500 V", screen.Find("a.do.wide").TextContent, StringComparison.Ordinal);
        var done = screen.FindAll("section[aria-labelledby=done] li");
        Assert.Equal(2, done.Count);
        Assert.All(done, d => Assert.Contains("Pass", d.TextContent, StringComparison.Ordinal));
        Assert.Empty(screen.FindAll("section[aria-labelledby=plan] .good"));
        Assert.Contains(
            screen.FindAll("section[aria-labelledby=plan] li"),
            l => l.TextContent.Contains("While it cools.", StringComparison.Ordinal)
        );
        Assert.Contains("Heat run: rise of the windings", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_a_unit_that_nothing_was_read_on_every_mains_test_is_locked_and_says_what_comes_first()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = One(bench, TestList.Touch);
        screen.WaitForAssertion(() => Assert.Contains("Do this first:", screen.Markup, StringComparison.Ordinal));
        Assert.True(screen.Find("form button.do").HasAttribute("disabled"));
        var heat = Show<HeatRunScreen>(bench);
        heat.WaitForAssertion(() => Assert.Contains("Do this first:", heat.Markup, StringComparison.Ordinal));
        Assert.Empty(heat.FindAll("#cold"));
        var breaker = Show<BreakerScreen>(bench);
        breaker.WaitForAssertion(() => Assert.Contains("Do this first:", breaker.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain("Load on: start the count", breaker.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Limit_and_source_stand_there_before_the_reading_and_the_verdict_with_its_chance_after_it()
    {
        await using var bench = await ScreenBench.OpenAsync(Ready);
        var screen = One(bench, TestList.Touch);
        screen.WaitForAssertion(() => Assert.Contains("at most 0.25 mA", screen.Markup, StringComparison.Ordinal));
        Assert.Contains("IEC 60950, class II, as listed", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("nF from the line to the core lets 0.25 mA through.", screen.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("10 kΩ and 0.022 µF", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#network").ChangeAsync("weighted-500-ohm"));
        screen.WaitForAssertion(() => Assert.Contains("10 kΩ and 0.022 µF", screen.Markup, StringComparison.Ordinal));
        await screen.DoAsync(() => screen.Find("#network").ChangeAsync("1500-ohm"));
        await screen.DoAsync(() => screen.Find("#one-way").InputAsync("45m"));
        await screen.DoAsync(() => screen.Find("#other-way").InputAsync("0.061"));
        await screen.DoAsync(() => screen.Find("section[aria-label='What it reads'] form").SubmitAsync());
        Assert.Equal("Say whether the ground was proved.", screen.Find("section[aria-label='What it reads'] .wrong").TextContent);
        await screen.DoAsync(() => screen.FindAll("input[name=earth]")[0].ChangeAsync(true));
        await screen.DoAsync(() => screen.Find("section[aria-label='What it reads'] form").SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("Pass: at most 0.25 mA", screen.Markup, StringComparison.Ordinal));
        Assert.Contains("chances in 100.", screen.Markup, StringComparison.Ordinal);
        Assert.Equal([0.045, 0.061], (await bench.UnitAsync()).All<TestRead>().Single().Fact.Values);
    }

    [Fact]
    public async Task One_reading_is_the_same_as_on_the_quick_list_and_four_say_how_far_they_scatter()
    {
        await using var bench = await ScreenBench.OpenAsync(Ready);
        var screen = One(bench, "reading-whistle-1-1");
        screen.WaitForAssertion(() => Assert.Contains("at least 4 V", screen.Markup, StringComparison.Ordinal));
        await screen.DoAsync(() => screen.FindAll("button").Single(b => b.TextContent == "Read it four times").ClickAsync());
        foreach (var (text, n) in new[] { "4.1", "4,3", "4.2", "4.25" }.Select((t, n) => (t, n)))
            await screen.DoAsync(() =>
                screen.Find(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"#box-{n}")).InputAsync(text)
            );
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#box-0") is not null).SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("mean of 4", screen.Markup, StringComparison.Ordinal));
        var mean = (await bench.UnitAsync()).CurrentReadings.Last().Fact;
        Assert.Equal("whistle-1-1", mean.ReadingId);
        Assert.Equal(4.2125, mean.Shown.Value, 9);
        Assert.Contains("Next: ", screen.Find("a.do.wide").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_limit_is_changed_in_the_shop_with_its_source_and_not_without_one()
    {
        await using var bench = await ScreenBench.OpenAsync(Ready);
        var screen = One(bench, TestList.Touch);
        screen.WaitForAssertion(() => Assert.Contains("at most 0.25 mA", screen.Markup, StringComparison.Ordinal));
        await screen.DoAsync(() => screen.Find("#limit-value").ChangeAsync("0.5"));
        await screen.DoAsync(() => screen.Find("#limit-source").ChangeAsync(""));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#limit-value") is not null).SubmitAsync());
        Assert.Contains("Say where this limit comes from.", screen.Markup, StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#limit-source").ChangeAsync("house rule"));
        await screen.DoAsync(() => screen.FindAll("form").Single(f => f.QuerySelector("#limit-value") is not null).SubmitAsync());
        screen.WaitForAssertion(() => Assert.Contains("at most 0.5 mA", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(0.5, (await bench.Bench.ShopAsync()).Limits.Single(l => l.Id == "touch-current").Value);
    }

    [Fact]
    public async Task A_test_that_is_left_out_is_due_no_more_and_stands_in_the_list_with_its_reason()
    {
        await using var bench = await ScreenBench.OpenAsync([
            .. Ready,
            new TestNotTaken(TestList.Touch, "Touch current", "no proved ground"),
        ]);
        var screen = Show<AllTests>(bench);
        screen.WaitForAssertion(() => Assert.Contains("Not taken: no proved ground.", screen.Markup, StringComparison.Ordinal));
        Assert.Contains("1 not taken", screen.Find(".crumb").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Touch current", screen.Find("section[aria-labelledby=plan]").TextContent, StringComparison.Ordinal);
        var one = One(bench, TestList.Touch);
        one.WaitForAssertion(() => Assert.Contains(one.FindAll("button"), b => b.TextContent == "Take it now"));
    }

    [Fact]
    public async Task No_ground_wire_is_one_press_and_no_failure()
    {
        await using var bench = await ScreenBench.OpenAsync(Ready);
        var screen = One(bench, TestList.Ground);
        screen.WaitForAssertion(() => Assert.NotEmpty(screen.FindAll("#box-0")));
        await screen.DoAsync(() => screen.FindAll("button").Single(b => b.TextContent == "No ground wire fitted").ClickAsync());
        screen.WaitForAssertion(() =>
            Assert.Contains("Not taken: no ground wire fitted, by design.", screen.Markup, StringComparison.Ordinal)
        );
        Assert.DoesNotContain("Fail", screen.Find("section[aria-label='What it reads']").TextContent, StringComparison.Ordinal);
    }
}
