using System.Text.RegularExpressions;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Browser.Tests;

/// <summary>The tests before a unit goes back: a heat run with a power cut in its middle, a test that fails, and what the return says of it.</summary>
public sealed class TestsJourneyTests(OpenBrowser browser)
{
    private static readonly Guid UnitId = Guid.Parse("0199a3c2-0000-7000-8000-000000000077");

    /// <summary>A unit that is ready for mains: looked over, cold checks and lamp check passed.</summary>
    private static async Task ReadyAsync(Store store)
    {
        var at = DateTimeOffset.UnixEpoch.AddYears(56);
        ReadingEntered Read(string id, Shown shown) => new(id, shown, BenchState.AsSheet);
        Fact[] facts =
        [
            new TakenIn("F-77", "twin-175", "", ""),
            .. new[] { "cord", "plug", "sleeves", "case" }.Select(item => new ConditionNoted(item, "good", Decision.Leave, "")),
            Read("blades", Shown.Number(3.8)),
            Read("blades-posts", Shown.OverRange),
            Read("insulation-core", Shown.Number(300e6)),
            Read("insulation-posts", Shown.Number(250e6)),
            Read("lamp-60", Shown.Number(110)),
        ];
        await store.AppendAsync(
            UnitId,
            0,
            [.. facts.Select((f, n) => new NewEntry(Guid.CreateVersion7(at.AddSeconds(n)), at.AddSeconds(n), "bench", f))],
            CancellationToken.None
        );
    }

    private static async Task TypeAsync(Window window, string minutes, string ohms)
    {
        await window.PressAsync("I am here early: unplugged");
        await window.Page.Locator("#ohms").FillAsync(ohms);
        await window.Page.GetByText("Another time").ClickAsync();
        await window.Page.Locator("#minutes").FillAsync(minutes);
        await window.PressAsync("Save: leads off, plugged in again");
        await Expect(window.Page.GetByText("Saved. Leads off the blades, then plug in again")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task A_heat_run_outlives_a_power_cut_and_a_failed_test_keeps_the_unit_from_going_back_as_working(Width width)
    {
        await using var tool = await RunningTool.StartFilledAsync(ReadyAsync, "twin-175");
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.GoAsync($"/units/{UnitId}/tests");
        await window.TitledAsync("Tests");
        await window.SeesAsync("Taken over from your readings.");
        await window.SeeAsync();

        await window.GoAsync($"/units/{UnitId}/heat-run");
        await window.Page.Locator("#cold").FillAsync("3.00");
        await window.Page.Locator("#room").FillAsync("20");
        await window.Page.GetByText("Switched on earlier").ClickAsync();
        // It was on for 35 minutes, and its next reading is not due: the last was just taken.
        await window.Page.Locator("#ago").FillAsync("35");
        await window.Page.Locator("#every").FillAsync("60");
        await window.PressAsync("Switched on: start the clock");
        await window.SeesAsync("Next reading in");
        await TypeAsync(window, "10", "3.051");
        await TypeAsync(window, "20", "3.095");
        await tool.KillAsync();
        await tool.AgainAsync();
        await window.GoAsync($"/units/{UnitId}/heat-run");
        await window.SeesAsync("Next reading in");
        await TypeAsync(window, "30", "3.132");
        await window.SeesAsync("May stop: below the limit");
        await window.SeeAsync();
        await window.PressAsync("End the run: plug is out");
        await window.SeesAsync("What it may carry for hours");
        await window.SeeAsync();

        await window.GoAsync($"/units/{UnitId}/tests/touch-current");
        await window.SeesAsync("IEC 60950");
        await window.Page.Locator("#one-way").FillAsync("0.6");
        await window.Page.Locator("#other-way").FillAsync("0.045");
        await window.Page.GetByText("Yes", new() { Exact = true }).ClickAsync();
        await window.PressAsync("Save: plug is out");
        await window.SeesAsync("Fail: outside at most");
        await window.SeeAsync();
        await window.GoAsync($"/units/{UnitId}/return");
        await window.SeesAsync("Touch current, the plug both ways");
        await window.SeeAsync();
        await window.FillAsync("Returned by", "A. B.");
        await window.PressAsync("Returned, not to be plugged in");
        await window.TitledAsync("Returned, not to be plugged in");
        await window.SeeAsync();
        Assert.Contains("Do not plug this in", await window.PdfAsync($"/units/{UnitId}/papers/label.pdf"), StringComparison.Ordinal);
        var owner = Regex.Replace(await window.PdfAsync($"/units/{UnitId}/papers/owner-page.pdf"), @"\s+", " ");
        Assert.Contains("Do not plug this unit in", owner, StringComparison.Ordinal);
        Assert.Contains("Touch current, the plug both ways: fail", owner, StringComparison.Ordinal);
    }
}
