using Bunit;
using Ohmstead.App.Screens.Owner;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What it can run, tapped together.</summary>
public class CanRunTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static IRenderedComponent<CanRun> Show(ScreenBench bench)
    {
        var screen = bench.Context.Render<CanRun>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement(".consumers", Patience);
        return screen;
    }

    private static Task TapAsync(IRenderedComponent<CanRun> screen, string what) =>
        screen.DoAsync(() => screen.Find(what).ClickAsync(new()));

    [Fact]
    public async Task Things_are_tapped_onto_a_post_and_kept_as_one_entry()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        string Of(string post) => screen.Find($"[data-post='{post}']").TextContent;
        await TapAsync(screen, "[data-add=motor]");
        await TapAsync(screen, "[data-add=motor]");
        await TapAsync(screen, "[data-add=smoke]");
        await TapAsync(screen, "[aria-label='One motor less']");
        await screen.DoAsync(() => screen.Find("#gauge").ChangeAsync(new() { Value = "18" }));
        await screen.DoAsync(() => screen.Find("#feet").ChangeAsync(new() { Value = "20" }));
        // 1.25 + 0.6 A on the pair that was chosen, one of the rails; nothing on the 14 V post.
        var rail = screen.Find("input[name=post][checked]").ParentElement!.TextContent;
        Assert.Matches("^Post 0 – post [12]$", rail);
        screen.WaitForAssertion(() => Assert.Contains("1.85 of", Of($"p{rail[1..]}"), StringComparison.Ordinal), Patience);
        var comes = Of($"p{rail[1..]}");
        Assert.Contains("1 motor, 1 smoke unit.", comes, StringComparison.Ordinal);
        Assert.Contains("Put a 3 A fuse in its lead.", comes, StringComparison.Ordinal);
        Assert.Contains("18 AWG, 20 ft one way", comes, StringComparison.Ordinal);
        Assert.Contains("On a dead short, about", comes, StringComparison.Ordinal);
        Assert.Contains("AC trains, nominal: 16 V.", screen.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("NEM 611", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("0.0 of", Of("post 0 – 14 V post"), StringComparison.Ordinal);
        Assert.Empty((await bench.UnitAsync()).All<LayoutStated>());
        await screen.DoAsync(() => screen.Find("button.do").ClickAsync(new()));
        var kept = Assert.Single((await bench.UnitAsync()).All<LayoutStated>()).Fact;
        Assert.Equal([new LayoutItem("motor", 1), new("smoke", 1)], Assert.Single(kept.Posts).Items);
        Assert.Equal(new LayoutWire(18, 20), kept.Posts[0].Wire);
        Assert.True(screen.Find("button.do").HasAttribute("disabled"));
    }

    [Fact]
    public async Task What_was_kept_is_there_again_and_too_much_is_said()
    {
        await using var bench = await ScreenBench.OpenAsync(new LayoutStated([new("post-0", "post-1", [new("older motor", 4)], null)]));
        var screen = Show(bench);
        // 4 · 1.75 A are more than the 6.3 A that this pair may carry.
        Assert.Contains("too much", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("This is more than the unit may carry for hours.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("Do not plug this unit in yet.", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("/can-run.question.json", screen.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("twenty")]
    [InlineData("-1")]
    [InlineData("1e9")]
    public async Task A_length_that_is_none_is_refused_and_stays_in_its_box(string feet)
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = Show(bench);
        await screen.DoAsync(() => screen.Find("#gauge").ChangeAsync("16"));
        await screen.DoAsync(() => screen.Find("#feet").ChangeAsync(feet));
        screen.WaitForElement("[role=alert]");
        // An entry from elsewhere has the unit read again.
        await bench.Bench.EnterAsync(ScreenBench.UnitId, 1, "phone", new Noted("it hums"));
        screen.WaitForAssertion(() => Assert.Contains("it hums", screen.Markup, StringComparison.Ordinal));
        Assert.Equal(("16", feet), (screen.Find("#gauge").GetAttribute("value"), screen.Find("#feet").GetAttribute("value")));
    }
}
