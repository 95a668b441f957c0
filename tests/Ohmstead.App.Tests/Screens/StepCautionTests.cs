using Bunit;
using Ohmstead.App.Screens.Apart;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests.Screens;

/// <summary>Cautions where the hand is, while a unit is taken apart.</summary>
public class StepCautionTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    [Theory]
    [InlineData("panel-rivets", "Chips and pin ends fly", "may hold selenium")]
    [InlineData("knob-1", "Pull the plug", "Chips and pin ends fly")]
    public async Task A_step_says_what_its_own_act_asks_for_and_no_other(string step, string said, string unsaid)
    {
        await using var bench = await ScreenBench.OpenAsync(new WayChosen([step]));
        var screen = bench.Context.Render<OneStep>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForAssertion(
            () => Assert.Contains("Pull the plug", screen.Find("section[aria-labelledby=step]").TextContent, StringComparison.Ordinal),
            Patience
        );
        var text = screen.Find("section[aria-labelledby=step]").TextContent;
        Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.DoesNotContain(unsaid, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_goes_back_with_solder_says_so_too()
    {
        await using var bench = await ScreenBench.OpenAsync(new TakenOff("post-leads", 0, 1, ""));
        var screen = bench.Context.Render<BackTogether>(p => p.Add(s => s.Id, ScreenBench.UnitId));
        screen.WaitForAssertion(() => Assert.Contains("Old solder holds lead", screen.Markup, StringComparison.Ordinal), Patience);
    }
}
