using Bunit;
using Ohmstead.App.Screens.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The screen for a class: it follows the bench, and nothing on it can be pressed.</summary>
public class SecondScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static string Words(IRenderedComponent<SecondScreen> screen) => screen.Find(".show").TextContent;

    [Fact]
    public async Task It_shows_where_the_leads_go_then_the_value_just_entered_then_the_next_reading_with_that_value_before_it()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<SecondScreen>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement(".show", Patience);
        bench.Bench.Asked.Ask(ScreenBench.UnitId, "ohms-1", 1);
        screen.WaitForAssertion(() => Assert.Equal("Post 0 to post 1, full throttle", screen.Find("h1").TextContent), Patience);
        Assert.Contains("Red on post 0, black on post 1. Power: none, plug out.", Words(screen), StringComparison.Ordinal);
        Assert.Empty(screen.FindAll(".show-number"));
        var path = screen.FindAll(".show-path b").Select(b => b.TextContent).ToList();
        Assert.Equal(("Post 0", "Post 1"), (path[0], path[^1]));
        Assert.Equal(["red", "black"], screen.FindAll(".show-path .flag").Select(f => f.TextContent));

        // 0.6 Ω and more are not what a sound roller and winding read; what exactly it should be stands beside it.
        await bench.Bench.EnterAsync(ScreenBench.UnitId, 1, "phone", ScreenBench.Read("ohms-1", 4.56));
        screen.WaitForAssertion(() => Assert.Equal("4.56", screen.Find(".show-number").TextContent), Patience);
        Assert.Equal("Ω", screen.Find(".show-unit").TextContent);
        Assert.Contains("high", screen.Find(".show-value .word").TextContent, StringComparison.Ordinal);

        bench.Bench.Asked.Ask(ScreenBench.UnitId, "ohms-2", 2);
        screen.WaitForAssertion(() => Assert.Equal("Post 0 to post 2, full throttle", screen.Find("h1").TextContent), Patience);
        Assert.Empty(screen.FindAll(".show-number"));
        Assert.Contains("Post 0 to post 1, full throttle: 4.56 Ω", screen.Find(".show-before").TextContent, StringComparison.Ordinal);
        Assert.Empty(screen.FindAll("a, button, input, select, summary, [tabindex]"));
        Assert.DoesNotContain("an owner", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_screen_at_the_bench_turns_it_and_a_tag_finds_it()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var show = bench.Context.Render<Show>(p => p.Add(s => s.Tag, "f-9"));
        show.WaitForElement(".show", Patience);
        bench.Context.Render<OneReading>(p => p.Add(s => s.Id, ScreenBench.UnitId).Add(s => s.ReadingId, "ohms-14"));
        show.WaitForAssertion(() => Assert.Equal("Post 0 to the 14 V post", show.Find("h1").TextContent), Patience);
        var list = bench.Context.Render<Round>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        list.WaitForElement(".round-line", Patience);
        show.WaitForAssertion(() => Assert.Equal("Between the plug blades", show.Find("h1").TextContent), Patience);
    }
}
