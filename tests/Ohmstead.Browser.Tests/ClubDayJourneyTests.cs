using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A club day: three units, two people; each sees what is next, begins it, takes longer, ends it; the second screen follows.</summary>
public sealed class ClubDayJourneyTests(OpenBrowser browser)
{
    [Theory]
    [InlineData(Width.Desk)]
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    public async Task Two_people_share_the_day_and_the_second_screen_follows(Width width)
    {
        await using var tool = await RunningTool.StartDemoAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var page = window.Page;
        await window.GoAsync("/day");
        // Whatever the hour of the run: all day long and no break. A field counts when it is left.
        foreach (var (field, text) in ((string, string)[])[("#h-from", "00:00"), ("#h-to", "23:59"), ("#h-off", ""), ("#h-on", "")])
        {
            await page.FillAsync(field, text);
            await page.Locator(field).PressAsync("Tab");
        }
        foreach (var tag in (string[])["F-041", "F-039", "F-036"])
        {
            var choice = page.Locator("#add-unit option", new() { HasTextString = tag });
            await page.SelectOptionAsync("#add-unit", (await choice.GetAttributeAsync("value"))!);
            await Expect(page.Locator(".day-unit", new() { HasTextString = tag })).ToBeVisibleAsync();
        }
        await Expect(page.Locator("h1")).ToContainTextAsync("3 units, 0:00 to 23:59");
        foreach (var name in (string[])["Ann", "Ben"])
        {
            await page.FillAsync("#new-person", name);
            await page.Locator("#new-person").PressAsync("Enter");
            await Expect(page.Locator($"#p-from-{name}")).ToBeVisibleAsync();
        }
        var ann = page.Locator(".day-who li", new() { HasTextString = "Ann" });
        await Expect(ann.Locator("b").Nth(1)).ToBeVisibleAsync();
        await window.SeeAsync("club-day");
        // Shortly before midnight nothing can begin any more.
        if (await ann.GetByRole(AriaRole.Button, new() { NameString = "Begin" }).CountAsync() > 0)
        {
            await ann.GetByRole(AriaRole.Button, new() { NameString = "Begin" }).ClickAsync();
            await Expect(ann).ToContainTextAsync("until");
            await ann.GetByRole(AriaRole.Button, new() { NameString = "10 min more" }).ClickAsync();
            await ann.GetByRole(AriaRole.Button, new() { NameString = "Done" }).ClickAsync();
            await Expect(ann.GetByRole(AriaRole.Button, new() { NameString = "Done" })).ToHaveCountAsync(0);
            await window.SeeAsync();
        }
        await window.GoAsync("/show/day");
        await Expect(page.Locator(".day-who li")).ToHaveCountAsync(2);
        await Expect(page.Locator("button")).ToHaveCountAsync(0);
        await window.SeeAsync("club-day-show");
    }
}
