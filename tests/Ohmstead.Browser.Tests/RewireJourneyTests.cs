using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Browser.Tests;

/// <summary>A rewire with one mistake in it: found at 12 V, mended, checked again, and only then put on mains.</summary>
public sealed class RewireJourneyTests(OpenBrowser browser, RunningBench bench)
{
    private const string Kind = "twin-175";

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task A_planted_mistake_is_named_before_mains_and_the_gate_opens_when_it_is_mended(Width width)
    {
        var (wrong, right) = (FaultyUnit.Wired(Kind, "reversed:boost"), FaultyUnit.Sound(Kind));
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync(Kind);
        var unit = await window.TakeInAsync(Kind, "Rewired by hand.");
        await window.FindNothingLiveAsync();
        await window.GoAsync($"{unit}/check");
        await window.SeesAsync("No wire of this unit was moved");
        await SolderAsync(window);
        await window.SeesAsync("Mains readings are locked until this check passes");

        await StateAsync(window, "120", "0");
        await window.SeesAsync("That is too much: over 30 V");
        await StateAsync(window, "13.1", "12");
        await window.SeesAsync("It gives DC");
        Assert.Equal("13.1", await window.Page.InputValueAsync("#ac"));
        await StateAsync(window, "12", "0");
        await window.SeesAsync("measured by A. Example");
        await window.SeeAsync("check-supply");

        await RunAsync(window, wrong);
        await window.SeesAsync("Wiring mistake");
        await window.SeesAsync("Do not plug it in");
        await window.SeeAsync("check-mistake");
        Assert.Equal(0, await window.Page.GetByText("Sign the wiring check").CountAsync());
        await window.GoAsync($"{unit}/reading/full-1");
        await Expect(window.Page.Locator(".value-side .warning")).ToContainTextAsync("The wiring check has to pass first.");
        Assert.Equal(0, await window.Page.Locator(".keys").CountAsync());
        await window.SeeAsync("check-gate");

        await window.GoAsync($"{unit}/check");
        await window.SeesAsync("Wiring mistake");
        await window.PressAsync("Done: run the check again");
        await window.SeesAsync("Save: start the check");
        await StateAsync(window, "12", "0");
        await window.SeesAsync("measured by A. Example");
        await RunAsync(window, right, stopAfter: 2);
        // Left in the middle, it is taken up where it was left.
        await window.GoAsync($"{unit}/check");
        await window.SeesAsync("Reading 3 of");
        await window.PressAsync("Back");
        await window.SeesAsync("You entered");
        await window.PressAsync("Next");
        await window.SeesAsync("Reading 3 of");
        await RunAsync(window, right);
        await window.SeesAsync("No reading shows these");
        await window.PressAsync("Sign the wiring check");
        await window.SeesAsync("Say what you looked at");
        await window.FillAsync("What you looked at", "hubs and pivots, no solder between them");
        await window.FillAsync("Signed by", "A. Example");
        await window.PressAsync("Sign the wiring check");
        await window.SeesAsync("it is to be done again");
        await window.SeeAsync("check-stands");

        await window.FollowAsync("Go on to first power");
        await window.SeesAsync("A variable transformer does not isolate");
        await window.SeesAsync("Tick the lamps you have");
        await window.Page.GetByText("60 W, 120 V").First.ClickAsync();
        await window.SeesAsync("best for this unit");
        await window.SeesAsync("Locked until the lamp check passes");
        Assert.Equal(0, await window.Page.GetByText("The wiring check has to pass first.").CountAsync());
        await window.FollowAsync("Take: Series lamp, 60 W");
        await window.SeesAsync("Should read");
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
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    [InlineData(Width.Desk)]
    public async Task The_ohmmeter_list_goes_check_by_check_and_names_what_is_wrong(Width width)
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, width);
        var unit = await window.TakeInAsync(Kind, "Rewired by hand.");
        await window.GoAsync($"{unit}/continuity");
        await window.SeesAsync("If wired right");
        await window.FillAsync("Ohms", "three");
        await window.PressAsync("Enter");
        await Expect(window.Page.Locator(".wrong[role=alert]")).ToBeVisibleAsync();
        await window.FillAsync("Ohms", "0.2");
        await window.PressAsync("Enter");
        await window.SeesAsync("Check 2 of");
        await window.PressAsync("OL");
        await window.SeesAsync("Wrong: 1 check");
        await window.SeesAsync("should be joined");
        await window.SeeAsync("ohmmeter-list");
        await window.GoAsync($"{unit}/continuity");
        await window.SeesAsync("Check 3 of");
        await window.PressAsync("Undo");
        await window.SeesAsync("Undone");
        await window.SeesAsync("Check 2 of");
        Assert.Equal(0, await window.Page.GetByText("Wrong: 1 check").CountAsync());
    }

    private static async Task SolderAsync(Window window)
    {
        await window.Page.GetByText("A wire was resoldered").ClickAsync();
        await window.Page.SelectOptionAsync("#part", "boost");
        await window.PressAsync("Resoldered");
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

    /// <summary>Goes through the run, reading after reading, with Enter alone.</summary>
    private static async Task RunAsync(Window window, FaultyUnit shows, int stopAfter = int.MaxValue)
    {
        var count = window.Page.Locator(".run-count p");
        for (var n = 0; n < stopAfter; n++)
        {
            await count.WaitForAsync(new() { Timeout = 60_000 });
            var words = await count.InnerTextAsync();
            if (words.StartsWith("All", StringComparison.Ordinal))
                return;
            var title = await Window.WordsAsync(window.Page.Locator(".run-entry h2"));
            var box = window.Page.Locator(".run-entry .pad input");
            Assert.True(await box.CountAsync() == 1, $"{title}: {await window.Page.InnerTextAsync(".run-entry")}");
            await box.FillAsync(shows.Read(shows.Sheet.Readings.Single(r => r.Title.Replace('\u00a0', ' ') == title).Id));
            await box.PressAsync("Enter");
            await Expect(count).Not.ToHaveTextAsync(words);
        }
    }
}
