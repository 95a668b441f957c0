namespace Ohmstead.Browser.Tests;

/// <summary>The job with no pointer at all.</summary>
public sealed class KeysJourneyTests(OpenBrowser browser)
{
    [Fact]
    public async Task A_unit_goes_from_the_door_to_a_finding_by_the_keys_alone()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await window.BringInAsync("solo-110");
        var keys = window.Page.Keyboard;
        await window.GoAsync("/");
        await window.EnterOnAsync("Your own unit");
        await window.TitledAsync("Take in a unit");
        await window.TabToAsync("Type");
        await keys.PressAsync("ArrowDown");
        await window.TypeIntoAsync("Whose it is", "A neighbour");
        await window.TypeIntoAsync("What they say of it", "It crawls.");
        await window.EnterOnAsync("Take it in and look it over");
        await window.TitledAsync("Look-over");
        await window.TabToAsync("Yes");
        await keys.PressAsync("Space");
        await window.SeesAsync("saved");
        // Six parts with the cover on, then the sleeving: what can have something live in reach is among them.
        for (var part = 0; part < 6; part++)
        {
            await window.TabToAsync("good");
            await keys.PressAsync("Space");
            await keys.PressAsync("Tab");
        }
        await window.EnterOnAsync("With the cover off");
        await window.TabToAsync("good");
        await keys.PressAsync("Space");
        await window.EnterOnAsync("Mark the look-over as done");
        await window.SeesAsync("Where was I?");
        await window.EnterOnAsync("Quick list");
        await window.TitledAsync("Quick list");
        Assert.InRange(await window.TypeRoundAsync(new FaultyUnit("solo-110", "shoe:worn", 3)), 9, 99);
        await window.EnterOnAsync("What is probably wrong");
        await window.TitledAsync("Findings");
        await window.Page.Locator("article.finding").First.WaitForAsync();
        // What is found so far may change its place until the search is done.
        await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        await window.EnterOnAsync("Worn shoe");
        await window.EnterOnAsync("Found it");
        await window.SeesAsync("found. Get to it");
    }
}
