using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>A bin counted, ordered for and filled; taken out for a plan, a part of it with its batch into a unit; from there to whom to call; then the day's order.</summary>
public sealed class DrawerJourneyTests(OpenBrowser browser)
{
    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task From_the_count_of_a_bin_to_the_owner_of_the_unit_its_part_went_into(Width width)
    {
        await using var tool = await RunningTool.StartDemoAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var page = window.Page;
        await window.GoAsync("/");
        var unit = (await page.Locator("a.row").Filter(new() { HasText = "F-036" }).First.GetAttributeAsync("href"))!;

        await window.FollowAsync("Drawer");
        await window.TitledAsync("Drawer");
        await window.SeesAsync("You use 2 a month, they take 5 weeks; 2 are left.");
        await window.SeeAsync("drawer");
        await page.Locator("a.front", new() { HasTextString = "Whistle disc" }).ClickAsync();
        await window.TitledAsync("Whistle disc");
        await window.FillAsync("Counted", "4");
        await window.PressAsync("Save the count");
        await Expect(page.Locator(".value")).ToHaveTextAsync("4");
        await page.Locator("#ordered").FillAsync("6");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ordered", Exact = true }).ClickAsync();
        await window.SeesAsync("6 on order, due");
        await page.Locator("#came").FillAsync("6");
        await page.Locator("#came-from").FillAsync("Acme");
        await page.Locator("#lot").FillAsync("77");
        await window.PressAsync("Put in the bin");
        await window.SeesAsync("Acme, lot 77");
        await Expect(page.Locator(".value")).ToHaveTextAsync("10");
        await window.SeeAsync();
        var bin = new Uri(page.Url).AbsolutePath;

        await window.GoAsync($"{unit}/plan");
        await window.SeesAsync("10 in bin C4, Acme, lot 77");
        await window.PressAsync("Take the parts out");
        await window.SeesAsync("beside this unit");
        await window.GoAsync($"{unit}/findings");
        var found = page.Locator("article.finding", new() { HasTextString = "You found it" }).Last;
        await found.WaitForAsync(new() { Timeout = 120_000 });
        await found.GetByRole(AriaRole.Button, new() { Name = "Repaired" }).ClickAsync();
        await Expect(found.GetByLabel("New part from").Locator("option:checked"))
            .ToHaveTextAsync("C4 Whistle disc, Acme, lot 77: 1 beside this unit");
        await found.GetByRole(AriaRole.Button, new() { Name = "Replaced, same part" }).ClickAsync();
        await window.SeesAsync("After the repair");
        await window.GoAsync(bin);
        await Expect(page.Locator(".value")).ToHaveTextAsync("9");
        await Expect(page.Locator("section[aria-labelledby=used-in]")).ToContainTextAsync("F-036");
        await window.GoAsync(unit);
        await page.Locator("section[aria-labelledby=from-drawer]").GetByRole(AriaRole.Link, new() { Name = "Acme, lot 77" }).ClickAsync();
        await window.TitledAsync("Whistle disc, Acme, lot 77");
        await Expect(page.Locator("section[aria-labelledby=to-call]")).ToContainTextAsync("J. Hazel");
        await window.SeeAsync();

        await window.GoAsync("/day");
        foreach (var tag in (string[])["F-041", "F-039", "F-036"])
        {
            var choice = page.Locator("#add-unit option", new() { HasTextString = tag });
            await page.SelectOptionAsync("#add-unit", (await choice.GetAttributeAsync("value"))!);
            await Expect(page.Locator(".day-unit", new() { HasTextString = tag })).ToBeVisibleAsync();
        }
        await window.SeesAsync("can end before");
        await Expect(page.Locator(".day-chart")).ToBeVisibleAsync(new() { Visible = width == Width.Desk });
        await window.SeeAsync("day");
    }
}
