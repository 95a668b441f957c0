using Microsoft.Playwright;
using Ohmstead.App.Demo;

namespace Ohmstead.Browser.Tests;

/// <summary>Taken apart to the disc, left for days, gone on with, a spring lost, put back with the cups counted.</summary>
public sealed class TakeApartJourneyTests(OpenBrowser browser, RunningBench bench)
{
    private const string Kind = "twin-175";

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task To_the_disc_and_back_with_nothing_left_in_a_cup(Width width)
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, width);
        var unit = await window.TakeInAsync(Kind, "The whistle is weak.");

        var before = await ExpectedAsync(window, unit);
        await window.GoAsync($"{unit}/apart");
        Assert.Equal(0, await window.Page.GetByText("Expected cost").CountAsync());
        await window.Page.Locator("label.pick", new() { HasTextString = "Whistle disc" }).ClickAsync();
        await window.Page.Locator("label.pick", new() { HasTextString = "Cord wires at the lugs" }).ClickAsync();
        await window.SeesAsync("No other order is cheaper");
        await window.SeesAsync("12 steps");
        await window.SeesAsync("Have these in the drawer");
        await window.SeesAsync("You can get to these too");
        await window.SeeAsync("apart-way");
        await window.PressAsync("Take off first:");

        await window.TitledAsync("Wheel of track 1");
        await window.SeesAsync("Breaks in 5 of 100 pulls");
        await window.FillAsync("Pieces counted", "2.5");
        await window.PressAsync("Off");
        await window.SeesAsync("2.5 is not a whole number");
        await window.FillAsync("Pieces counted", "3");
        await window.FillAsync("Remember", "the flat faces the post");
        await window.PressAsync("Off");
        await window.TitledAsync("Wheel of track 2");
        var row = window.Page.Locator(".off-row", new() { HasTextString = "Wheel of track 1" });
        await row.Locator("summary").ClickAsync();
        await row.GetByLabel("Which").FillAsync("the spring");
        await row.GetByRole(AriaRole.Button, new() { Name = "Lost", Exact = true }).ClickAsync();
        await window.SeesAsync("1 piece lost: the spring");

        // Left on the bench, and found again from the first page.
        await window.GoAsync(unit);
        await window.SeesAsync("Open: 1 step off, cup 1");
        await window.SeeAsync("apart-resumed");
        await window.FollowAsync("Take apart");
        await window.FollowAsync("Next off: wheel of track 2");
        await window.TitledAsync("Wheel of track 2");
        for (
            var left = 30;
            left > 0 && await window.Page.GetByRole(AriaRole.Button, new() { Name = "Off", Exact = true }).CountAsync() > 0;
            left--
        )
        {
            var title = await Window.WordsAsync(window.Page.Locator("h1"));
            if (title == "Post wires")
            {
                await window.SeesAsync("Stop: take a photo first");
                await window.Page.SetInputFilesAsync(
                    "input[data-about='post-leads']",
                    new FilePayload
                    {
                        Name = "leads.jpg",
                        MimeType = "image/jpeg",
                        Buffer = Drawing.Jpeg(WornRoller.Draw),
                    }
                );
                await Expect(window.Page.GetByAltText("Photo of this step")).ToBeVisibleAsync();
                await window.SeeAsync("apart-stop");
            }
            await window.PressAsync("Off");
            await Expect(window.Page.Locator("h1")).Not.ToHaveTextAsync(title);
        }
        await window.TitledAsync("You are there");
        foreach (var cord in (string[])["cord wire of blade 1", "cord wire of blade 2"])
        {
            await window.Page.Locator("button", new() { HasTextString = $": {cord}" }).First.ClickAsync();
            await window.SeesAsync($"{cord}: replaced, same part");
        }
        await window.PressAsync("Replaced, different part: diode");
        await window.SeesAsync("Whistle disc: replaced, different part");
        await window.SeeAsync("apart-reached");
        Assert.NotEqual(before, await ExpectedAsync(window, unit));
        await window.GoAsync(unit);
        await window.SeesAsync("loose: ");
        await window.FollowAsync("Return it");
        await window.SeesAsync("Locked until these");
        await window.SeesAsync("still off");
        await window.SeesAsync("Returned, not to be plugged in");
        await window.SeeAsync("return-locked");

        await window.GoAsync($"{unit}/apart/back");
        await window.SeesAsync("12 steps to go");
        await window.SeeAsync("apart-back");
        while (await window.Page.GetByRole(AriaRole.Button, new() { Name = "Back on", Exact = true }).CountAsync() > 0)
        {
            var title = await Window.WordsAsync(window.Page.Locator("h1"));
            if (title.StartsWith("Put back: wheel of track 1", StringComparison.Ordinal))
            {
                await window.SeesAsync("You wrote: the flat faces the post");
                await window.FillAsync("New pieces", "0");
                await window.PressAsync("Back on");
                await window.SeesAsync("3 came off and 2 went in");
                await window.FillAsync("Where they belong, or why they are left over", "the spring is ordered");
                await window.FillAsync("Signed by", "A. Example");
            }
            await window.PressAsync("Back on");
            await Expect(window.Page.Locator("h1")).Not.ToHaveTextAsync(title);
        }
        await window.SeesAsync("All back on");
        await window.SeesAsync("1 piece left over, the spring is ordered. Signed by A. Example");
        await window.SeeAsync("apart-counted");
        await window.GoAsync($"{unit}/reading/full-1");
        await window.Page.Locator(".value-side .warning summary").ClickAsync();
        await window.SeesAsync("A wire was moved");
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("the spring is ordered", record, StringComparison.Ordinal);
    }

    /// <summary>What the disc, or what is in its place, drops at 1 A, before the probe touches.</summary>
    private static async Task<string> ExpectedAsync(Window window, string unit)
    {
        await window.GoAsync($"{unit}/reading/disc-1a");
        var line = window.Page.GetByText("Should read").First;
        await Expect(line).ToBeVisibleAsync();
        return await line.Locator("xpath=..").InnerTextAsync();
    }
}
