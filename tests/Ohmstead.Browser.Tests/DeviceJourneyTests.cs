using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>The whole bench on a tablet: paired by a code, beside the laptop on one unit, without a network for a while, and shut out.</summary>
public sealed partial class DeviceJourneyTests(OpenBrowser browser)
{
    [Theory]
    [Trait("kind", "long")]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task A_tablet_is_paired_works_beside_the_laptop_loses_the_network_and_is_shut_out(Width width)
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var laptop = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await laptop.BringInAsync("twin-175");
        var unit = await laptop.TakeInAsync("twin-175", "It hums.");
        await using var tablet = await PairAsync(laptop, width);
        await BesideAsync(laptop, tablet, unit);
        await CutAsync(laptop, tablet, unit);
        await TypedInCutAsync(tablet, unit);
        await LookOnlyAsync(laptop, tablet, unit);
        await laptop.PressAsync("Shut it out");
        await Expect(tablet.Page.Locator("h1")).ToContainTextAsync("not let in any more");
        Assert.Equal(403, await tablet.StatusAsync("/"));
        Assert.Equal(403, await tablet.StatusAsync(unit));
    }

    private async Task<Window> PairAsync(Window laptop, Width width)
    {
        await laptop.GoAsync("/devices");
        if (await laptop.Page.GetByText("on no network").IsVisibleAsync())
            Assert.Skip("this machine is on no network that a tablet could reach");
        await laptop.SeeAsync();
        await laptop.PressAsync("Show a code");
        var address = new Uri(await laptop.Page.Locator("p.address b").First.InnerTextAsync());
        await laptop.SeeAsync();
        var tablet = await Window.OpenAsync(browser, new Uri(address.GetLeftPart(UriPartial.Authority)), width);
        Assert.Equal(403, await tablet.StatusAsync("/"));
        await tablet.Page.GotoAsync(address.AbsolutePath);
        await tablet.SeeAsync();
        await tablet.FillAsync("What is it called?", "Tablet at the vise");
        await tablet.PressAsync("Pair it");
        await tablet.TitledAsync("On the bench");
        await Expect(laptop.Page.GetByText("Tablet at the vise, the whole bench, may work")).ToBeVisibleAsync();
        await Expect(laptop.Page.GetByText("here now")).ToBeVisibleAsync();
        return tablet;
    }

    /// <summary>Each sees the other's entry, and that the other is there; of what both entered nothing is lost.</summary>
    private static async Task BesideAsync(Window laptop, Window tablet, string unit)
    {
        await laptop.GoAsync($"{unit}/reading/blades");
        await tablet.GoAsync($"{unit}/reading/blades");
        await laptop.SeesAsync("Also on this unit: Tablet at the vise");
        await tablet.SeesAsync("Also on this unit: the bench itself");
        await tablet.EnterAsync("3.6");
        await Expect(laptop.Page.Locator(".notice")).ToContainTextAsync("(Tablet at the vise)");
        await laptop.EnterAsync("3.8");
        await Expect(tablet.Page.Locator(".notice").Last).ToContainTextAsync("Both are kept in the log.");
        await tablet.SeeAsync();
        await laptop.GoAsync(unit);
        await Expect(tablet.Page.GetByText("Also on this unit")).ToBeVisibleAsync();
        await tablet.GoAsync("/");
        await Expect(laptop.Page.GetByText("Also on this unit")).ToHaveCountAsync(0);
        Assert.Matches(
            ByTablet(),
            await Window.WordsAsync(laptop.Page.Locator("section", new() { Has = laptop.Page.Locator("#journal") }))
        );
    }

    /// <summary>What is typed without a network is kept, told, and sent once and in order when it is back.</summary>
    private static async Task CutAsync(Window laptop, Window tablet, string unit)
    {
        await tablet.GoAsync($"{unit}/reading/blades-posts");
        var unsent = tablet.Page.Locator("#unsent");
        await tablet.Page.FillAsync("#entry", "18.6M");
        await Expect(tablet.Page.Locator("#entry-says")).ToContainTextAsync("18.6");
        await tablet.CutAsync(true);
        await Expect(unsent).ToContainTextAsync("No connection.");
        await tablet.PressAsync("Enter");
        await Expect(unsent).ToContainTextAsync("not sent yet: 1");
        await tablet.Page.GetByRole(AriaRole.Button, new() { NameString = "OL", Exact = true }).ClickAsync();
        await Expect(tablet.Page.Locator("#entry")).ToHaveValueAsync("OL");
        await tablet.PressAsync("Enter");
        await Expect(unsent).ToContainTextAsync("not sent yet: 2");
        await Expect(tablet.Page.Locator("#entry")).ToHaveValueAsync("");
        await tablet.EnterAsync("40M");
        await Expect(unsent).ToContainTextAsync("not sent yet: 3");
        await tablet.FitsAsync();
        await laptop.GoAsync(unit);
        Assert.DoesNotContain("40 MΩ", await Window.WordsAsync(laptop.Page.Locator("main")), StringComparison.Ordinal);
        await tablet.CutAsync(false);
        await Expect(unsent).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await Expect(laptop.Page.Locator("main")).ToContainTextAsync("40 MΩ", new() { Timeout = 60_000 });
        // What the screen heard before the cut is not entered once more by the empty box.
        await tablet.Page.PressAsync("#entry", "Enter");
        await Expect(tablet.Page.Locator("#entry-says.wrong")).ToBeVisibleAsync();
        var log = await Window.WordsAsync(laptop.Page.Locator("section", new() { Has = laptop.Page.Locator("#journal") }));
        Assert.Single(Regex.Matches(log, "40 MΩ"));
        Assert.Single(Regex.Matches(log, @"18\.6 MΩ"));
        // The last is first in the log.
        Assert.True(log.IndexOf("40 MΩ", StringComparison.Ordinal) < log.IndexOf("OL", StringComparison.Ordinal), log);
    }

    /// <summary>What was typed without a network and not entered is entered when it is back.</summary>
    private static async Task TypedInCutAsync(Window tablet, string unit)
    {
        await tablet.GoAsync($"{unit}/round");
        var line = tablet.Page.Locator(".round-line", new() { Has = tablet.Page.Locator("input[name=blades]") });
        await Expect(line.Locator(".expected b")).ToBeVisibleAsync();
        await tablet.CutAsync(true);
        await Expect(tablet.Page.Locator("#unsent")).ToContainTextAsync("No connection.");
        await line.Locator("input").FillAsync("3.7");
        await tablet.CutAsync(false);
        await Expect(tablet.Page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await line.Locator("input").PressAsync("Enter");
        await Expect(line.Locator(".box b")).ToContainTextAsync("3.7");
    }

    private static async Task LookOnlyAsync(Window laptop, Window tablet, string unit)
    {
        await laptop.GoAsync("/devices");
        await laptop.PressAsync("Let it look only");
        await laptop.SeesAsync("may only look");
        await tablet.GoAsync(unit);
        await tablet.SeesAsync("This device may only look.");
        await tablet.FillAsync("Note", "From a tablet that may only look");
        await tablet.PressAsync("Save the note");
        await Expect(tablet.Page.Locator(".mishap")).ToContainTextAsync("Not saved. This device may only look.");
        // Nor does it let itself work again: which devices there are is said at the laptop.
        await tablet.GoAsync("/devices");
        await Expect(tablet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Let it|Shut") })).ToHaveCountAsync(0);
    }

    [GeneratedRegex("Tablet at the vise")]
    private static partial Regex ByTablet();
}
