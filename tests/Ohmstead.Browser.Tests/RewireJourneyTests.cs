using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Browser.Tests;

/// <summary>A rewire with one mistake in it: found at 12 V, mended, checked again, and only then put on mains.</summary>
public sealed class RewireJourneyTests(OpenBrowser browser)
{
    private const string Kind = "twin-175";

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task A_planted_mistake_is_named_before_mains_and_the_gate_opens_when_it_is_mended(Width width)
    {
        var (wrong, right) = (FaultyUnit.Wired(Kind, "reversed:boost"), FaultyUnit.Sound(Kind));
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync(Kind);
        var unit = await window.TakeInAsync(Kind, "Rewired by hand.");
        await window.GoAsync($"{unit}/check");
        await window.SeesAsync("No wire of this unit was moved");
        await SolderAsync(window);
        await window.SeesAsync("No mains reading opens before this check stands");

        await StateAsync(window, "120", "0");
        await window.SeesAsync("That is no low supply");
        await StateAsync(window, "13.1", "12");
        await window.SeesAsync("It gives direct current");
        Assert.Equal("13.1", await window.Page.InputValueAsync("#ac"));
        await StateAsync(window, "12", "0");
        await window.SeesAsync("measured by A. Example");
        await window.SeeAsync("check-supply");

        var list = await TakeListAsync(window);
        await ReadAllAsync(window, unit, list, wrong);
        await window.GoAsync($"{unit}/check");
        await window.SeesAsync("A mistake: boost is reversed: exchange its ends at");
        await window.SeesAsync("Do not plug it in");
        await window.SeeAsync("check-mistake");
        Assert.Equal(0, await window.Page.GetByText("The check stands").CountAsync());
        await window.GoAsync($"{unit}/reading/full-1");
        await window.SeesAsync("A wire was moved");
        Assert.Equal(0, await window.Page.Locator(".keys").CountAsync());
        await window.SeeAsync("check-gate");

        await window.GoAsync($"{unit}/check");
        await SolderAsync(window);
        await window.SeesAsync("That is the supply");
        await StateAsync(window, "12", "0");
        await window.SeesAsync("measured by A. Example");
        await ReadAllAsync(window, unit, list, right);
        await window.GoAsync($"{unit}/check");
        await window.SeesAsync("No reading tells whether");
        await window.PressAsync("The check stands");
        await window.SeesAsync("Say what was looked at");
        await window.FillAsync("What was looked at", "hubs and pivots, no solder between them");
        await window.FillAsync("Who answers for it", "A. Example");
        await window.PressAsync("The check stands");
        await window.SeesAsync("It falls when a wire is moved");
        await window.SeeAsync("check-stands");

        await window.FollowAsync("Go on to first power");
        await window.SeesAsync("A variable transformer does not isolate");
        await window.SeesAsync("Tick the lamps you have");
        await window.Page.GetByText("60 W, 120 V").First.ClickAsync();
        await window.SeesAsync("best for this unit");
        await window.SeesAsync("Locked until the lamp check passes");
        Assert.Equal(0, await window.Page.GetByText("A wire was moved").CountAsync());
        await window.FollowAsync("Take: 60 W lamp in series");
        await window.SeesAsync("A sound unit shows");
        await window.EnterAsync(right.Read("lamp-60"));
        await window.SeesAsync("Undo");
        await window.GoAsync($"{unit}/first-power");
        await TryAsync(window, "9", "");
        await window.SeesAsync("Stop: switch off and look before anything else: 9.00 A");
        await window.SeeAsync("power-stop");
        foreach (var volts in (string[])["24 V", "48 V", "72 V", "96 V", "120 V"])
        {
            await TryAsync(window, "0,001", "");
            await Expect(window.Page.Locator("li", new() { HasTextString = volts }).Locator(".word.good")).ToBeVisibleAsync();
        }
        await window.SeesAsync("At full line");
        await window.SeeAsync("power-up");
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("hubs and pivots", record, StringComparison.Ordinal);
    }

    /// <summary>The ohmmeter list before anything is fed: a joint that is open stands out, and what was taken is there again.</summary>
    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task The_ohmmeter_list_goes_check_by_check_and_names_what_is_wrong(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync(Kind);
        var unit = await window.TakeInAsync(Kind, "Rewired by hand.");
        await window.GoAsync($"{unit}/continuity");
        await window.SeesAsync("Rightly wired it shows");
        await window.FillAsync("Ohms", "three");
        await window.PressAsync("Enter");
        await Expect(window.Page.Locator(".wrong[role=alert]")).ToBeVisibleAsync();
        await window.FillAsync("Ohms", "0.2");
        await window.PressAsync("Enter");
        await window.SeesAsync("1 check passed");
        await window.PressAsync("OL");
        await window.SeesAsync("1 check passed, 1 check not");
        await window.SeesAsync("should be joined");
        await window.SeeAsync("ohmmeter-list");
        await window.GoAsync($"{unit}/continuity");
        await window.SeesAsync("1 check passed, 1 check not");
    }

    private static async Task SolderAsync(Window window)
    {
        await window.Page.SelectOptionAsync("#part", "boost");
        await window.PressAsync("It was soldered anew");
    }

    private static async Task TryAsync(Window window, string amps, string watts)
    {
        await window.FillAsync("Amps", amps);
        await window.FillAsync("Watts", watts);
        await window.PressAsync("Go or stop?");
    }

    private static async Task StateAsync(Window window, string ac, string dc)
    {
        await window.FillAsync("Volts shown on AC", ac);
        await window.FillAsync("Volts shown on DC", dc);
        await window.FillAsync("Measured by", "A. Example");
        await window.Page.Locator("section[aria-labelledby=supply] button").ClickAsync();
    }

    /// <summary>The readings that the check asks for, behind the cold checks that they wait for.</summary>
    private static async Task<List<string>> TakeListAsync(Window window)
    {
        await window.Page.Locator("a.taken").First.WaitForAsync();
        var links = await window.Page.Locator("a.taken").AllAsync();
        var asked = new List<string>();
        foreach (var link in links)
            asked.Add((await link.GetAttributeAsync("href"))!.Split('/')[^1]);
        var cold = FaultyUnit.Sound(Kind).Sheet.Readings.Where(r => r.State.Source is null && r.Limits is not null).Select(r => r.Id);
        return [.. cold.Concat(asked).Distinct(StringComparer.Ordinal)];
    }

    private static async Task ReadAllAsync(Window window, string unit, List<string> readings, FaultyUnit shows)
    {
        foreach (var reading in readings)
        {
            await window.GoAsync($"{unit}/reading/{reading}");
            await Expect(window.Page.Locator(".value-side form input, .value-side .warning").First).ToBeVisibleAsync();
            Assert.True(await window.Page.Locator(".value-side form input").CountAsync() == 1, $"{reading}: {await window.Page.InnerTextAsync(".value-side")}");
            await window.EnterAsync(shows.Read(reading));
            // Where it does not arrive, the page says why.
            await Expect(window.Page.Locator(".value-side")).ToContainTextAsync("Undo");
        }
    }
}
