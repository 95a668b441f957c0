using Bunit;
using Ohmstead.App.Screens.LookingBack;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Looking back: the year's pictures, and the shop's own chances taken and undone by a press.</summary>
public class YearBackTests
{
    [Fact]
    public async Task The_shops_chances_are_offered_with_their_count_taken_by_a_press_and_undone()
    {
        await using var screens = await ScreenBench.OpenAsync(
            new FindingJudged("roller-1", "worn", Judgement.Confirmed, ""),
            new StageClosed(Stage.Findings, true, "")
        );
        var page = screens.Context.Render<YearBack>();
        page.WaitForAssertion(() =>
            Assert.Contains("Learned from 1 unit whose findings are marked as done.", page.Markup, StringComparison.Ordinal)
        );
        Assert.Contains("Worn roller", page.Find("section[aria-labelledby=faults]").TextContent, StringComparison.Ordinal);
        Assert.Empty((await screens.Bench.ShopAsync()).Chances);
        await page.DoAsync(() => page.Find("button.do").ClickAsync());
        page.WaitForAssertion(() =>
            Assert.Contains("Findings use your shop’s chances, learned from 1 unit.", page.Markup, StringComparison.Ordinal)
        );
        var taken = (await screens.Bench.ShopAsync()).Chances;
        Assert.True(taken.Single(c => c is { Kind: "slider", Mode: "worn" }).Odds > 1);
        Assert.All(taken.Where(c => c.Found == 0), c => Assert.InRange(c.Odds, 0.5, 1));
        await page.DoAsync(() =>
            page.FindAll("button").Single(b => b.TextContent.StartsWith("Undo", StringComparison.Ordinal)).ClickAsync()
        );
        page.WaitForElement("button.do");
        Assert.Empty((await screens.Bench.ShopAsync()).Chances);
    }
}
