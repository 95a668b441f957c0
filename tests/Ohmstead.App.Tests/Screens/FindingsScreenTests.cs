using Bunit;
using Ohmstead.App.Screens.Findings;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

/// <summary>The findings as the background works them out, judged and repaired by hand.</summary>
public class FindingsScreenTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    /// <summary>Ohms of the first output far too high, its volts under load far too low.</summary>
    private static readonly Fact[] Worn =
    [
        .. ScreenBench.ColdGates,
        ScreenBench.Read("lamp-60", 106),
        ScreenBench.Read("ohms-1", 1.6),
        ScreenBench.Read("full-1", 19.1),
        ScreenBench.Read("load-1", 14.6),
    ];

    private static IRenderedComponent<UnitFindings> Show(ScreenBench bench)
    {
        var screen = bench.Context.Render<UnitFindings>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForElement("article.finding", Patience);
        return screen;
    }

    private static AngleSharp.Dom.IElement Button(IRenderedComponent<UnitFindings> screen, string words) =>
        screen.FindAll("article.finding button").First(b => b.TextContent.Trim() == words);

    [Fact]
    public async Task Faults_come_with_what_they_mean_what_to_do_and_the_way_to_them()
    {
        await using var bench = await ScreenBench.OpenAsync(Worn);
        var screen = Show(bench);
        var text = screen.Find("article.finding").TextContent;
        Assert.Contains("common practice, no source", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("point", text, StringComparison.Ordinal);
        Assert.Contains("It worked when", text, StringComparison.Ordinal);
        Assert.Contains("Get to it: ", text, StringComparison.Ordinal);
        Assert.Contains(" min", text, StringComparison.Ordinal);
        Assert.Contains("Could be e", screen.Markup.Replace("any of these", "e", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(8, screen.FindAll(".deviation:not(.head)").Count);
        Assert.Contains(
            screen.FindAll(".deviation"),
            d =>
                d.QuerySelector("path.off") is not null
                && d.TextContent.Contains("Post 1, full throttle, 4\u00a0Ω load", StringComparison.Ordinal)
        );
    }

    /// <summary>The one copper button of a page is its next act.</summary>
    [Fact]
    public async Task One_button_of_the_page_is_the_next_act()
    {
        await using var bench = await ScreenBench.OpenAsync(Worn);
        Assert.Single(Show(bench).FindAll(".do"));
    }

    /// <summary>Chances that no reading has touched are those of the trade: they are not called findings.</summary>
    [Fact]
    public async Task Before_any_reading_there_are_no_findings_but_the_first_readings_to_take()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var screen = bench.Context.Render<UnitFindings>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForAssertion(
            () => Assert.Contains("No readings yet. Take these first", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        Assert.Empty(screen.FindAll("article.finding"));
        Assert.Single(screen.FindAll(".do"));
    }

    [Fact]
    [Trait("kind", "long")]
    public async Task The_card_of_the_unit_learns_what_is_next()
    {
        await using var bench = await ScreenBench.OpenAsync([.. Worn, new StageClosed(Stage.LookOver, true, "")]);
        var screen = Show(bench);
        screen.WaitForElement("#best", Patience);
        var next = screen.Find("section[aria-labelledby=best] a").TextContent;
        var card = (await bench.Bench.Store.CardsAsync(true, Xunit.TestContext.Current.CancellationToken)).Single();
        Assert.Equal(NextAction.TakeReading, card.Next.Action);
        Assert.EndsWith(next, card.Next.Words, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("kind", "long")]
    public async Task Ruled_out_by_hand_it_is_worked_out_without_it_and_can_be_undone()
    {
        await using var bench = await ScreenBench.OpenAsync(Worn);
        var screen = Show(bench);
        await screen.DoAsync(() => Button(screen, "Not this").ClickAsync());
        screen.WaitForAssertion(() => Assert.Contains("Ruled out by you", screen.Markup, StringComparison.Ordinal), Patience);
        var fact = Assert.IsType<FindingJudged>((await bench.UnitAsync()).Last.Fact);
        Assert.Equal(Judgement.Dismissed, fact.Judgement);
        await screen.DoAsync(() => screen.FindAll("button").First(b => b.TextContent.Trim() == "Undo").ClickAsync());
        screen.WaitForAssertion(() => Assert.DoesNotContain("Ruled out by you", screen.Markup, StringComparison.Ordinal), Patience);
    }

    [Fact]
    [Trait("kind", "long")]
    public async Task Repaired_only_what_the_repair_can_have_moved_is_asked_for_again()
    {
        await using var bench = await ScreenBench.OpenAsync([.. Worn, new FindingJudged("roller-1", "worn", Judgement.Confirmed, "")]);
        var screen = Show(bench);
        screen.WaitForAssertion(
            () => Assert.Contains("You found it", screen.Find("article.finding").TextContent, StringComparison.Ordinal),
            Patience
        );
        await screen.DoAsync(() => Button(screen, "Repaired…").ClickAsync());
        await screen.DoAsync(() => screen.Find("article.finding .repair input").InputAsync("new part"));
        await screen.DoAsync(() => Button(screen, "Replaced, same part").ClickAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("After the repair: read these again", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        var unit = await bench.UnitAsync();
        var part = Assert.IsType<PartChanged>(unit.Last.Fact);
        Assert.Equal((PartChange.Renewed, "new part", "roller-1"), (part.Change, part.Words, part.Element));
        var left = unit.CurrentReadings.Select(r => r.Fact.ReadingId).ToList();
        Assert.Contains("insulation-core", left);
        Assert.DoesNotContain("load-1", left);
        Assert.Contains(
            "Post 1, full throttle, 4\u00a0Ω load",
            screen.Find("section[aria-labelledby=again]").TextContent,
            StringComparison.Ordinal
        );
        Assert.Single(screen.FindAll(".do"));
    }
}
