using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>The job in the browser, as it is done at the bench: on a phone and on a laptop.</summary>
public sealed class JourneyTests(OpenBrowser browser)
{
    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task A_new_unit_goes_from_look_over_to_record(Width width)
    {
        var worn = new FaultyUnit("twin-175", "roller-1:worn", 3);
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var page = window.Page;
        await window.GoAsync("/");
        await window.SeesAsync("The bench is empty");
        await window.SeeAsync();
        await window.BringInAsync("twin-175");
        await window.GoAsync("/units/new");
        await window.SeeAsync("new-unit");
        var unit = await window.TakeInAsync("twin-175", "The left train crawls when the whistle blows.");

        await page.Locator("fieldset.ask").First.GetByText("No", new() { Exact = true }).ClickAsync();
        await page.Locator("fieldset.part").First.GetByText("Renew it").ClickAsync();
        await window.SeesAsync("saved");
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
        await window.SeeAsync("look-over");
        await window.PressAsync("The look-over is done");
        await window.SeesAsync("Where was I?");
        await window.SeeAsync();

        await window.FollowAsync("The usual round");
        await window.TitledAsync("The usual round");
        var taken = await window.ReadRoundAsync(worn);
        Assert.InRange(taken, 9, 99);
        await window.SeeAsync("round");
        await window.GoAsync($"{unit}/reading/ohms-1");
        await window.EnterAsync(worn.Read("ohms-1"));
        await window.SeesAsync("Undo");
        await window.SeeAsync("meaning");
        await window.FollowAsync("Findings");
        await page.Locator("article.finding").First.WaitForAsync();
        await window.SeesAsync("roller 1 worn");
        await window.SeeAsync("findings");
        await window.PressAsync("Confirm");
        await window.SeesAsync("seen to be so");
        await window.PressAsync("Repaired");
        await window.PressAsync("Renewed with the same");
        await window.SeesAsync("its gates are shut again");

        await window.GoAsync($"{unit}/papers");
        await window.SeesAsync("Make the service record");
        await window.SeeAsync("papers");
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("The left train crawls", record, StringComparison.Ordinal);
        Assert.Contains("no certification", record, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("do not plug this unit in", record, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_round_is_taken_by_the_keys_alone()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await window.BringInAsync("solo-110");
        var unit = await window.TakeInAsync("solo-110", "It hums.");
        await window.GoAsync($"{unit}/round");
        var boxes = window.Page.Locator(".round-line input");
        await boxes.First.WaitForAsync();
        await Expect(window.Page.Locator(".round-line input:focus")).ToBeVisibleAsync();
        var first = await window.Page.EvaluateAsync<string>("document.activeElement.name");
        await window.Page.Keyboard.TypeAsync("OL");
        await window.Page.Keyboard.PressAsync("Enter");
        await window.SeesAsync("Saved:");
        await Expect(window.Page.Locator($".round-line input[name='{first}']:focus")).Not.ToBeVisibleAsync();
        await window.Page.Keyboard.PressAsync("Backspace");
        await window.SeesAsync("Taken back:");
        await Expect(window.Page.Locator($".round-line input[name='{first}']:focus")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task A_reading_behind_a_shut_gate_is_refused_and_a_waiver_stands_on_the_paper(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync("twin-175");
        var unit = await window.TakeInAsync("twin-175", "Dead.");
        await window.GoAsync($"{unit}/reading/full-1");
        await window.SeesAsync("Not yet.");
        Assert.Equal(0, await window.Page.Locator(".keys").CountAsync());
        await window.SeeAsync("gate");
        await window.GoAsync($"{unit}/reading/insulation-core");
        await window.SeeAsync("reading");
        await window.PressAsync("could not");
        await window.FillAsync("It could not be read, because", "no such instrument");
        await window.Page.GetByText("No instrument for it").ClickAsync();
        await window.FillAsync("Who answers for it", "The bench");
        await window.FillAsync("What was done instead", "a series lamp of 25 W");
        await window.PressAsync("Waive it");
        await window.SeesAsync("waived by The bench");
        await window.GoAsync($"{unit}/papers");
        await window.SeesAsync("Waived, and said so on every paper");
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("no such instrument", record, StringComparison.Ordinal);
        Assert.Contains("a series lamp of 25 W", record, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_measured_failure_is_never_waived()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await window.BringInAsync("twin-175");
        var unit = await window.TakeInAsync("twin-175", "It was wet.");
        await window.GoAsync($"{unit}/reading/insulation-core");
        await window.EnterAsync("0.2M");
        await window.SeesAsync("Undo");
        await window.PressAsync("Read it once more");
        await window.PressAsync("could not");
        await window.SeesAsync("It could not be read, because");
        Assert.Equal(0, await window.Page.GetByText("No instrument for it").CountAsync());
        await window.GoAsync($"{unit}/reading/full-1");
        await window.SeesAsync("Not yet.");
        Assert.Equal(0, await window.Page.GetByText("No instrument for it").CountAsync());
    }

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task A_reading_is_taken_back_with_one_key(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync("twin-175");
        var unit = await window.TakeInAsync("twin-175", "It hums.");
        await window.GoAsync($"{unit}/reading/blades");
        await window.EnterAsync("31");
        await window.SeesAsync("Undo 31 Ω"); // "= 31 Ω" stands there while it is typed, when u is a letter.
        await window.Page.Keyboard.PressAsync(width == Width.Phone ? "Backspace" : "u");
        await window.SeesAsync("Taken back:");
        await window.EnterAsync("3,1");
        await window.SeesAsync("Undo 3.1 Ω");
    }

    [Fact]
    public async Task A_unit_is_resumed_after_a_kill()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await window.BringInAsync("twin-175");
        var unit = await window.TakeInAsync("twin-175", "It hums.");
        await window.GoAsync($"{unit}/reading/blades");
        await window.EnterAsync("3.05");
        await window.SeesAsync("Undo");
        await tool.KillAsync();
        await tool.AgainAsync();
        // The window that was open finds its way back by itself; a fresh one knows it all the same.
        await window.GoAsync(unit);
        await window.SeesAsync("Where was I?");
        await window.SeesAsync("3.05 Ω");
    }

    [Fact]
    public async Task The_second_window_on_a_unit_is_told_and_nothing_is_dropped()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var one = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await one.BringInAsync("twin-175");
        var unit = await one.TakeInAsync("twin-175", "It hums.");
        await using var two = await Window.OpenAsync(browser, tool.Address, Width.Phone);
        await one.GoAsync($"{unit}/reading/blades");
        await two.GoAsync($"{unit}/reading/blades");
        await two.Page.Locator(".keys").WaitForAsync();
        await one.EnterAsync("3.05");
        await two.SeesAsync("Entered elsewhere:");
        await two.SeeAsync();
        await two.EnterAsync("3.07");
        await one.SeesAsync("Entered elsewhere:");
        await two.GoAsync(unit);
        await two.SeesAsync("3.07 Ω");
        await two.Page.GetByText("Journal").First.ScrollIntoViewIfNeededAsync();
        Assert.Contains("3.05 Ω", await two.Page.ContentAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_unit_goes_out_of_one_workshop_and_into_an_empty_one()
    {
        await using var here = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, here.Address, Width.Desk);
        await window.BringInAsync("twin-175");
        await window.TakeInAsync("twin-175", "It smells of a hot winding.");
        await here.KillAsync();
        var zip = Path.Combine(here.Folder, "out.zip");
        await RunningTool.RunAsync("export", zip, "--data", here.Folder);
        await using var there = await RunningTool.StartAsync();
        await there.KillAsync();
        await RunningTool.RunAsync("import", zip, "--data", there.Folder);
        await there.AgainAsync();
        await here.AgainAsync();
        await using var other = await Window.OpenAsync(browser, there.Address, Width.Phone);
        await other.GoAsync("/");
        await other.Page.Locator("section.rows a").First.ClickAsync();
        await other.SeesAsync("It smells of a hot winding.");
        await other.SeeAsync();
    }

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk)]
    public async Task A_sheet_is_edited_until_it_is_sound(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync("solo-110");
        await window.GoAsync("/kinds");
        await window.PressAsync("Duplicate");
        await window.TitledAsync("copy");
        var text = await window.Page.InputValueAsync("#code");
        await window.Page.FillAsync("#code", text.Replace("\"supply\"", "\"suply\"", StringComparison.Ordinal));
        await window.SeesAsync("put right");
        await Expect(window.Page.GetByRole(AriaRole.Button, new() { Name = "Save a new version" })).ToBeDisabledAsync();
        await window.SeeAsync("kind-problems");
        await window.PressAsync("Line ");
        // The caret goes there first: typing before that would land in the middle.
        await Expect(window.Page.Locator("#code")).ToBeFocusedAsync();
        await window.Page.FillAsync("#code", text.Replace("copy", "with a new plate", StringComparison.Ordinal));
        await window.SeesAsync("Nothing is wrong with it");
        await window.PressAsync("Save a new version");
        await window.SeesAsync("saved as version 2");
    }

    [Fact]
    public async Task A_phone_is_paired_takes_a_photo_and_is_shut_out()
    {
        await using var tool = await RunningTool.StartAsync("--lan");
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Desk);
        await window.BringInAsync("twin-175");
        var unit = await window.TakeInAsync("twin-175", "It hums.");
        await window.GoAsync($"{unit}/phone");
        if (await window.Page.GetByText("on no network").IsVisibleAsync())
            Assert.Skip("this machine is on no network that a phone could reach");
        await window.PressAsync("Show a code for a phone");
        var address = new Uri(await window.Page.Locator("p.address").InnerTextAsync());
        await window.SeeAsync("pairing");
        await using var phone = await Window.OpenAsync(
            browser,
            new Uri(address.GetLeftPart(UriPartial.Authority)),
            Width.Phone
        );
        await phone.Page.GotoAsync(address.AbsolutePath);
        await Expect(phone.Page.Locator("main")).ToBeVisibleAsync();
        Assert.Equal(403, await phone.StatusAsync("/"));
        await phone.Page.SetInputFilesAsync(
            "input[type=file]",
            new FilePayload
            {
                Name = "plate.png",
                MimeType = "image/png",
                Buffer = await phone.Page.ScreenshotAsync(),
            }
        );
        await window.GoAsync($"{unit}/look-over");
        await window.Page.Locator("#photos .photos button").First.WaitForAsync();
        await window.GoAsync($"{unit}/phone");
        await window.PressAsync("Shut");
        await Expect(window.Page.GetByText("None.")).ToBeVisibleAsync();
        Assert.Equal(403, await phone.StatusAsync("/phone"));
    }
}
