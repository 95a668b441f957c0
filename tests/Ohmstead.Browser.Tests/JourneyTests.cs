using Microsoft.Playwright;

namespace Ohmstead.Browser.Tests;

/// <summary>The job in the browser, as it is done at the bench: on a phone and on a laptop.</summary>
public sealed class JourneyTests(OpenBrowser browser, RunningBench bench)
{
    [Fact]
    public async Task The_round_is_taken_by_the_keys_alone()
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, Width.Desk);
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
        await window.SeesAsync("Undone:");
        await Expect(window.Page.Locator($".round-line input[name='{first}']:focus")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    [InlineData(Width.Desk)]
    public async Task A_reading_behind_a_shut_gate_is_refused_and_a_waiver_stands_on_the_paper(Width width)
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, width);
        var unit = await window.TakeInAsync("twin-175", "Dead.");
        await window.GoAsync($"{unit}/reading/full-1");
        await window.SeesAsync("Locked.");
        Assert.Equal(0, await window.Page.Locator(".keys").CountAsync());
        await window.SeeAsync("gate");
        await window.GoAsync($"{unit}/reading/insulation-core");
        await window.SeeAsync("reading");
        await window.PressAsync("not taken");
        await window.FillAsync("It could not be read, because", "no such instrument");
        await window.Page.GetByText("No instrument for it").ClickAsync();
        await window.FillAsync("Who answers for it", "The bench");
        await window.FillAsync("What was done instead", "a series lamp of 25 W");
        await window.PressAsync("Waive it");
        await window.SeesAsync("waived by The bench");
        await window.GoAsync($"{unit}/papers");
        await window.SeesAsync("Waived. Every paper says so");
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("no such instrument", record, StringComparison.Ordinal);
        Assert.Contains("a series lamp of 25 W", record, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_measured_failure_is_never_waived()
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, Width.Desk);
        var unit = await window.TakeInAsync("twin-175", "It was wet.");
        await window.GoAsync($"{unit}/reading/insulation-core");
        await window.EnterAsync("0.2M");
        await window.SeesAsync("Undo");
        await window.PressAsync("Read it once more");
        await window.PressAsync("not taken");
        await window.SeesAsync("It could not be read, because");
        Assert.Equal(0, await window.Page.GetByText("No instrument for it").CountAsync());
        await window.GoAsync($"{unit}/reading/full-1");
        await window.SeesAsync("Locked.");
        Assert.Equal(0, await window.Page.GetByText("No instrument for it").CountAsync());
    }

    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task A_reading_is_taken_back_with_one_key(Width width)
    {
        await using var window = await Window.OpenAsync(browser, bench.Tool.Address, width);
        var unit = await window.TakeInAsync("twin-175", "It hums.");
        await window.GoAsync($"{unit}/reading/blades");
        await window.EnterAsync("31");
        await Expect(Undo(window, "Undo 31 Ω")).ToBeVisibleAsync(); // "= 31 Ω" stands there while it is typed, when u is a letter.
        await window.Page.Keyboard.PressAsync(width == Width.Phone ? "Backspace" : "u");
        await window.SeesAsync("Undone:");
        await window.EnterAsync("3,1");
        await Expect(Undo(window, "Undo 3.1 Ω")).ToBeVisibleAsync();
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
        await Expect(Undo(window, "Undo 3.05 Ω")).ToBeVisibleAsync();
        await tool.KillAsync();
        await tool.AgainAsync();
        // The window that was open finds its way back by itself, and answers to the hand again.
        await Expect(Undo(window, "Undo 3.05 Ω")).ToBeHiddenAsync(new() { Timeout = 90_000 });
        await window.LiveAsync();
        await window.EnterAsync("3.07");
        await Expect(Undo(window, "Undo 3.07 Ω")).ToBeVisibleAsync();
        // A fresh one knows all of it.
        await window.GoAsync(unit);
        await window.SeesAsync("Where was I?");
        await window.SeesAsync("3.07 Ω");
        Assert.Contains("3.05 Ω", await window.Page.ContentAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_type_sheet_is_refused_in_words_and_nothing_of_it_is_kept()
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, Width.Phone);
        await window.BringInAsync("twin-175");
        await window.GoAsync("/kinds");
        await window.Page.Locator("a[href^='/kinds/']").First.WaitForAsync();
        var kept = await window.Page.Locator("a[href^='/kinds/']").CountAsync();
        var huge = Path.Combine(tool.Folder, "huge.json");
        await using (var file = File.Create(huge))
            file.SetLength(200_000_000);
        foreach (
            var (name, content, words) in ((string, byte[], string)[])
                [
                    ("picture.json", [0x89, 0x50, 0x4e, 0x47, 0, 0xff], "is no type sheet"),
                    ("list.json", "[1, 2]"u8.ToArray(), "is no type sheet"),
                    ("climbs.json", """{"id": "../../out"}"""u8.ToArray(), "cannot be used"),
                    ("<script>alert(1)</script>.json", "{}"u8.ToArray(), "<script>alert(1)</script>.json is no type sheet"),
                ]
        )
            await RefusedAsync(
                window,
                new()
                {
                    Name = name,
                    MimeType = "application/json",
                    Buffer = content,
                },
                words
            );
        await window.GoAsync("/kinds");
        await window.Page.SetInputFilesAsync("input[type=file]:enabled", huge);
        await window.SeesAsync("huge.json is larger than 2 MB");
        await window.GoAsync("/kinds");
        await window.Page.Locator("a[href^='/kinds/']").First.WaitForAsync();
        Assert.Equal(kept, await window.Page.Locator("a[href^='/kinds/']").CountAsync());
    }

    private static async Task RefusedAsync(Window window, FilePayload file, string words)
    {
        await window.GoAsync("/kinds");
        await window.Page.SetInputFilesAsync("input[type=file]:enabled", file);
        await window.SeesAsync(words);
    }

    [Fact]
    public async Task The_second_window_on_a_unit_is_told_and_nothing_is_dropped()
    {
        await using var one = await Window.OpenAsync(browser, bench.Tool.Address, Width.Desk);
        var unit = await one.TakeInAsync("twin-175", "It hums.");
        await using var two = await Window.OpenAsync(browser, bench.Tool.Address, Width.Phone);
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
        await two.Page.GetByText("Log", new() { Exact = true }).First.ScrollIntoViewIfNeededAsync();
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
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    [InlineData(Width.Desk)]
    public async Task A_sheet_is_edited_until_it_is_sound(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync("solo-110");
        await window.GoAsync("/kinds");
        await window.PressAsync("Copy");
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
        await window.SeesAsync("No mistakes");
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
        var address = new Uri(await window.Page.Locator("p.address b").InnerTextAsync());
        await window.SeeAsync("pairing");
        await using var phone = await Window.OpenAsync(browser, new Uri(address.GetLeftPart(UriPartial.Authority)), Width.Phone);
        await phone.Page.GotoAsync(address.AbsolutePath);
        await phone.SeeAsync();
        await phone.PressAsync("Pair it");
        await Expect(phone.Page.Locator("#shown")).ToBeVisibleAsync();
        Assert.Equal(403, await phone.StatusAsync("/"));
        await phone.SeeAsync();
        await phone.Page.SelectOptionAsync("#reading", "blades");
        await phone.Page.FillAsync("#shown", "three");
        await phone.PressAsync("Enter");
        await Expect(phone.Page.Locator("#says.wrong")).ToBeVisibleAsync();
        Assert.Equal("three", await phone.Page.InputValueAsync("#shown"));
        await phone.Page.FillAsync("#shown", "4,2");
        await phone.PressAsync("Enter");
        await phone.SeesAsync("Last entered: ");
        await phone.Page.SetInputFilesAsync(
            "input[type=file]",
            new FilePayload
            {
                Name = "plate.png",
                MimeType = "image/png",
                Buffer = await phone.Page.ScreenshotAsync(),
            }
        );
        await window.GoAsync($"{unit}/reading/blades");
        await window.SeesAsync("4.2");
        await window.GoAsync($"{unit}/look-over");
        await window.Page.Locator("#photos .photos button").First.WaitForAsync();
        await window.GoAsync($"{unit}/phone");
        await window.PressAsync("Shut it out");
        await Expect(window.Page.GetByText("None.")).ToBeVisibleAsync();
        Assert.Equal(403, await phone.StatusAsync("/phone"));
    }

    private static ILocator Undo(Window window, string name) => window.Page.GetByRole(AriaRole.Button, new() { Name = name });
}
