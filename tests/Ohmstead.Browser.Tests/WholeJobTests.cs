using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>The job from look-over to record on a unit of each kind, at both widths.</summary>
public sealed class WholeJobTests(OpenBrowser browser)
{
    [Theory]
    [InlineData(Width.Phone, "twin-175", "roller-1:worn", 3, "ohms-1", "roller 1 worn")]
    [InlineData(Width.Desk, "twin-175", "roller-1:worn", 3, "ohms-1", "roller 1 worn")]
    [InlineData(Width.Phone, "solo-110", "shoe:worn", 3, "ohms-track", "shoe worn")]
    [InlineData(Width.Desk, "solo-110", "shoe:worn", 3, "ohms-track", "shoe worn")]
    [InlineData(Width.Phone, "step-230", "w-ac-1:resistive", 8, "ohms-rails", "red wire rotor to ac 1: resistive")]
    [InlineData(Width.Desk, "step-230", "w-ac-1:resistive", 8, "ohms-rails", "red wire rotor to ac 1: resistive")]
    public async Task A_new_unit_goes_from_look_over_to_record(Width width, string kind, string fault, double size, string cold, string found)
    {
        var worn = new FaultyUnit(kind, fault, size);
        // The guide shows one of them.
        string Picture(string name) => kind == "twin-175" ? name : "";
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var page = window.Page;
        await window.GoAsync("/");
        await window.SeesAsync("The bench is empty");
        await window.SeeAsync();
        await window.BringInAsync(kind);
        await window.GoAsync("/units/new");
        await window.SeeAsync(Picture("new-unit"));
        var unit = await window.TakeInAsync(kind, "The train crawls when it is warm.");

        await page.Locator("fieldset.ask").First.GetByText("No", new() { Exact = true }).ClickAsync();
        await page.Locator("fieldset.ask").First.Locator("input:checked").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await window.SeesAsync("saved");
        await page.Locator("fieldset.part").First.GetByText("Renew it").ClickAsync();
        await page.SetInputFilesAsync(
            "#photos input[type=file]",
            new FilePayload
            {
                Name = "left.png",
                MimeType = "image/png",
                Buffer = await page.ScreenshotAsync(),
            }
        );
        await page.Locator("#photos .photos button").First.WaitForAsync();
        await window.SeeAsync(Picture("look-over"));
        await window.PressAsync("The look-over is done");
        await window.SeesAsync("Where was I?");
        await window.SeeAsync();

        await window.FollowAsync("The usual round");
        await window.TitledAsync("The usual round");
        var taken = await window.ReadRoundAsync(worn);
        Assert.InRange(taken, 9, 99);
        await window.SeeAsync(Picture("round"));
        await window.GoAsync($"{unit}/reading/{cold}");
        await window.EnterAsync(worn.Read(cold));
        await window.SeesAsync("Undo");
        await window.SeeAsync(Picture("meaning"));
        await window.FollowAsync("Findings");
        await page.Locator("article.finding").First.WaitForAsync();
        await window.SeesAsync(found);
        await window.SeeAsync(Picture("findings"));
        await window.PressAsync("Confirm");
        await window.SeesAsync("seen to be so");
        await window.PressAsync("Repaired");
        await window.PressAsync("Renewed with the same");
        await window.SeesAsync("its gates are shut again");

        await window.GoAsync($"{unit}/papers");
        await window.SeesAsync("Make the service record");
        await window.SeeAsync(Picture("papers"));
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("The train crawls", record, StringComparison.Ordinal);
        Assert.Contains("no certification", record, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("do not plug this unit in", record, StringComparison.OrdinalIgnoreCase);
    }
}
