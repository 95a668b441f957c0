using Bunit;
using Ohmstead.App.Screens.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

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
        screen.Find("article.finding").QuerySelectorAll("button").First(b => b.TextContent.Trim() == words);

    [Fact]
    public async Task Faults_come_with_how_sure_how_big_and_what_speaks_for_them()
    {
        await using var bench = await ScreenBench.OpenAsync(Worn);
        var screen = Show(bench);
        Assert.Contains("assumed chances", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("for it", screen.Find("article.finding summary").TextContent, StringComparison.Ordinal);
        Assert.Contains("Alike so far", screen.Markup, StringComparison.Ordinal);
        Assert.Equal(8, screen.FindAll(".deviation:not(.head)").Count);
        Assert.Contains(
            screen.FindAll(".deviation"),
            d =>
                d.QuerySelector("path.off") is not null
                && d.TextContent.Contains("Post 1, full, 4 Ω load", StringComparison.Ordinal)
        );
    }

    [Fact]
    [Trait("kind", "long")]
    public async Task The_card_of_the_unit_learns_what_is_next()
    {
        await using var bench = await ScreenBench.OpenAsync([.. Worn, new StageClosed(Stage.LookOver, true, "")]);
        var screen = Show(bench);
        var next = screen.Find("a.do").TextContent;
        var card = (await bench.Bench.Store.CardsAsync(true, Xunit.TestContext.Current.CancellationToken)).Single();
        Assert.Equal(NextAction.TakeReading, card.Next.Action);
        Assert.EndsWith(
            next.Replace("Next: ", "", StringComparison.Ordinal),
            card.Next.Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    [Trait("kind", "long")]
    public async Task Dismissed_by_hand_it_is_worked_out_anew_without_it()
    {
        await using var bench = await ScreenBench.OpenAsync(Worn);
        var screen = Show(bench);
        var name = screen.Find("article.finding h2 span").TextContent;
        screen.Do(() => Button(screen, "Dismiss").Click());
        screen.WaitForAssertion(
            () =>
                Assert.Contains(
                    screen.FindAll("article.finding"),
                    a => a.TextContent.Contains("dismissed by hand", StringComparison.Ordinal)
                ),
            Patience
        );
        Assert.IsType<FindingJudged>((await bench.UnitAsync()).Last.Fact);
        Assert.NotEqual(name, screen.Find("article.finding h2 span").TextContent);
    }

    [Fact]
    [Trait("kind", "long")]
    public async Task Renewed_it_is_another_unit_and_nothing_is_read_of_it_yet()
    {
        await using var bench = await ScreenBench.OpenAsync(Worn);
        var screen = Show(bench);
        screen.Do(() => Button(screen, "Repaired…").Click());
        screen.Do(() => screen.Find("article.finding .repair input").Input("new part"));
        screen.Do(() => Button(screen, "Renewed with the same").Click());
        screen.WaitForAssertion(
            () => Assert.Contains("Nothing was read yet", screen.Markup, StringComparison.Ordinal),
            Patience
        );
        var part = Assert.IsType<PartChanged>((await bench.UnitAsync()).Last.Fact);
        Assert.Equal((PartChange.Renewed, "new part"), (part.Change, part.Words));
    }
}
