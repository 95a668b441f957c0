namespace Ohmstead.Browser.Tests;

/// <summary>From a finding to what to do about it, the plan, the estimate, the owner's go-ahead, the repair, and what it took.</summary>
public sealed class PlanJourneyTests(OpenBrowser browser, RunningBench bench)
{
    [Theory]
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    [InlineData(Width.Desk)]
    public async Task A_finding_becomes_a_decision_a_price_and_a_bill(Width width)
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, width);
        var unit = await window.TakeInAsync("twin-175", "Slows with cars behind it.");
        await window.GoAsync($"{unit}/reading/ohms-1");
        await window.EnterAsync("1.6");
        await window.GoAsync($"{unit}/findings");
        var link = window.Page.Locator("a[href*='/decide/roller-1']").First;
        await link.WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached, Timeout = 120_000 });
        await window.GoAsync((await link.GetAttributeAsync("href"))!);

        await window.TitledAsync("What to do: worn roller, track 1");
        await window.FillAsync("Diameter now", "6.5");
        await window.SeesAsync("68 % of its size left");
        await window.SeeAsync();
        await window.PressAsync("Use this");
        await window.PressAsync("Save the decision");
        await window.FollowAsync("See the plan");

        await window.TitledAsync("Plan: about");
        await window.SeesAsync("Roller of track 1: replace");
        await window.SeesAsync("Stop here:");
        await window.SeesAsync("Ask the owner first above");
        await window.SeesAsync("While it is open");
        await window.SeeAsync();
        await window.PressAsync("Make the estimate");
        await window.SeesAsync("Estimate made:");
        Assert.Contains("we ask you first", await window.PdfAsync($"{unit}/papers/estimate.pdf"), StringComparison.Ordinal);
        await window.FillAsync("Up to", "120");
        await window.FillAsync("In the owner’s words", "Keep the old knobs.");
        await window.PressAsync("Save the go-ahead");
        await window.SeesAsync("Go-ahead by phone");
        await window.SeesAsync("Keep the old knobs.");

        // It comes to a stop point: billed, and not to go back as working. Then the part is found after all.
        await window.Page.Locator(".stop-line summary").First.ClickAsync();
        await window.Page.GetByText("End the repair here").First.ClickAsync();
        await window.SeesAsync("The repair was ended");
        await window.SeesAsync("Do not plug it in.");
        await window.SeeAsync();

        await window.GoAsync($"{unit}/decide/roller-1?fault=worn");
        await window.PressAsync("Replaced, same part");
        await window.FollowAsync("Plan");
        await window.SeesAsync("replaced, same part");
        await window.SeesAsync("What it took");
        await window.FillAsync("Bill", "98.5");
        await window.PressAsync("Save the bill");
        await window.SeesAsync("$98.50");
        await window.SeeAsync();
    }
}
