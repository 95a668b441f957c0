using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>
/// A new user on an empty folder: the taps and characters from the start to the first verdict on a reading, and to the first right
/// finding. docs/guide/README.md has the counts.
/// </summary>
public sealed class FirstTenMinutesTests(OpenBrowser browser)
{
    private const int MostTaps = 10;
    private const int MostCharacters = 30;

    /// <summary>Ten minutes at fifteen seconds for each tap: look, think, tap and read what it did. Common practice, no source.</summary>
    private const int MostTapsInTenMinutes = 40;

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task Another_unit_has_its_first_verdict_within_ten_taps_and_thirty_characters(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var hand = await Hand.OnAsync(window);
        await window.GoAsync("/");
        await window.TitledAsync("What is in front of you?");
        await window.SeeAsync();
        await hand.TapAsync(AriaRole.Link, "Your own unit");
        await window.TitledAsync("Take in a unit");
        await window.SeeAsync();
        await hand.FillAsync("Watts", "180");
        await hand.TapAsync(AriaRole.Button, "Take it in, start with the meter");
        await window.TitledAsync("Between the plug blades");
        await window.SeesAsync("Common practice, no source");
        await window.SeeAsync();
        await Expect(window.Page.Locator(".value-side form input:focus")).ToBeVisibleAsync();
        await hand.EnterAsync("3.1");
        await window.SeesAsync("normal");
        await window.SeeAsync();
        Assert.InRange(hand.Taps, 1, MostTaps);
        Assert.InRange(hand.Characters, 1, MostCharacters);
        await hand.CountedAsync("the first verdict on a reading, your own unit", width);
    }

    [Theory]
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    [InlineData(Width.Desk)]
    public async Task A_practice_unit_has_its_first_verdict_and_within_ten_minutes_a_right_finding(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var hand = await Hand.OnAsync(window);
        await window.GoAsync("/");
        await hand.TapAsync(AriaRole.Link, "Round can");
        await window.TitledAsync("Take in a practice unit");
        await hand.TapAsync(AriaRole.Button, "Take it in and read it");
        await window.TitledAsync("Between the plug blades");
        await hand.TapAsync(AriaRole.Button, "Read the practice meter");
        await window.SeesAsync("Undo");
        await Expect(window.Page.Locator(".value-side .word").First).ToBeVisibleAsync();
        Assert.InRange(hand.Taps, 1, MostTaps);
        Assert.InRange(hand.Characters, 0, MostCharacters);
        await hand.CountedAsync("the first verdict on a reading, a practice unit", width);
        var unit = Regex.Match(window.Page.Url, "/units/[^/]+").Value;

        if (width == Width.Phone)
            await hand.TapAsync(window.Page.Locator("a.tag").First);
        await hand.TapAsync(AriaRole.Link, "Quick list");
        await window.TitledAsync("Quick list");
        await window.Page.Locator(".round-line").First.WaitForAsync();
        await window.SeeAsync();
        var meters = window.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Read the practice meter") });
        while (await meters.CountAsync() > 0)
        {
            var left = await window.Page.Locator(".round-line p.small b").CountAsync();
            await hand.TapAsync(meters.First);
            await Expect(window.Page.Locator(".round-line p.small b")).ToHaveCountAsync(left + 1);
        }
        await hand.TapAsync(AriaRole.Link, "What is probably wrong");
        var finding = window.Page.Locator("article.finding").First;
        await finding.WaitForAsync(new() { Timeout = 120_000 });
        await Expect(window.Page.Locator(".working")).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        await window.SeesAsync("Invented, for practice");
        await window.SeeAsync();
        Assert.InRange(hand.Taps, 1, MostTapsInTenMinutes);
        // How many readings there are goes by what the program hid, and what it hid is what it found.
        var planted = await window.Page.Locator(".practice li").AllTextContentsAsync();
        await hand.CountedAsync($"the first right finding, a practice unit with a {planted[0].Split(',')[0].Trim()}", width);
        await window.Page.GetByText("Show what is wrong with it").ClickAsync();
        var first = await finding.InnerTextAsync();
        Assert.Contains(planted, p => first.Contains(p.Trim(), StringComparison.OrdinalIgnoreCase));
        await window.GoAsync(unit);
        await window.SeesAsync("Invented, for practice");
        await window.SeeAsync();
        await window.FollowAsync("Your way beside the tool’s");
        await window.TitledAsync("Your way beside the tool’s");
        await window.PressAsync("Give up: show what is wrong");
        await window.SeesAsync("You did not mark it.");
        await Expect(window.Page.Locator("[aria-labelledby=own] li")).Not.ToHaveCountAsync(0);
        await Expect(window.Page.Locator("[aria-labelledby=tools] li")).Not.ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await window.SeeAsync();
    }

    [Fact]
    public async Task The_invented_workshop_opens_from_the_empty_one_and_the_way_back_is_there()
    {
        await using var tool = await RunningTool.StartAsync();
        var context = await browser.Browser.NewContextAsync(new() { BaseURL = tool.Address.ToString() });
        await using var _ = context;
        var page = await context.NewPageAsync();
        await page.GotoAsync("/");
        await Expect(page.Locator("main:not([aria-busy])")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Look around first") }).ClickAsync();
        await Expect(page.Locator("section.rows a").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.NotEqual(tool.Address.Port, new Uri(page.Url).Port);
        await page.GetByRole(AriaRole.Link, new() { Name = "Back to your own bench" }).ClickAsync();
        await Expect(page.Locator("h1")).ToContainTextAsync("What is in front of you?");
        Assert.Equal(tool.Address.Port, new Uri(page.Url).Port);
    }
}
