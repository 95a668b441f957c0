namespace Ohmstead.Browser.Tests;

/// <summary>What a person at the bench does over and over.</summary>
internal static class Bench
{
    /// <summary>Brings a type sheet of the invented workshop in; it can be used at once.</summary>
    public static async Task BringInAsync(this Window window, string sheet)
    {
        await window.GoAsync("/kinds");
        // A file that is chosen before the box was made ready is lost.
        await window.Page.WaitForFunctionAsync("() => '_blazorInputFileNextFileId' in document.querySelector('#file')");
        await window.Page.SetInputFilesAsync("#file:enabled", RunningTool.SheetFile(sheet));
        await window.SeesAsync("Type sheet, as text");
        await window.SeesAsync("version 1");
    }

    /// <summary>Journeys share a workshop: two that take a unit in at once are offered the same tag, and one of them is asked for another.</summary>
    private static readonly SemaphoreSlim Door = new(1);

    /// <summary>Takes a unit in; ends on its look-over. Gives its address.</summary>
    public static async Task<string> TakeInAsync(this Window window, string kind, string complaint)
    {
        await Door.WaitAsync();
        try
        {
            return await TakeInAloneAsync(window, kind, complaint);
        }
        finally
        {
            Door.Release();
        }
    }

    private static async Task<string> TakeInAloneAsync(Window window, string kind, string complaint)
    {
        await window.GoAsync("/units/new");
        await window.FillAsync("Whose it is", "A neighbour");
        await window.FillAsync("What they say of it", complaint);
        await window
            .Page.Locator($"#type option[value='{kind}']")
            .WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
        await window.Page.SelectOptionAsync("#type", kind);
        await window.PressAsync("Take it in and look it over");
        await window.TitledAsync("Look-over");
        return new Uri(window.Page.Url).AbsolutePath.Replace("/look-over", "", StringComparison.Ordinal);
    }

    /// <summary>On the look-over: looks at the parts that can have something live in reach, and finds nothing.</summary>
    public static async Task FindNothingLiveAsync(this Window window)
    {
        await window.Page.Locator("summary", new() { HasTextString = "With the cover off" }).ClickAsync();
        foreach (var part in new[] { "cord", "plug", "sleeves", "case" })
        {
            var good = window.Page.Locator($"#part-{part} label.pick", new() { HasTextString = "good" }).First;
            await good.ClickAsync();
            await Expect(good.Locator("input")).ToBeCheckedAsync();
        }
    }

    /// <summary>Types a value on the open reading and enters it.</summary>
    public static async Task EnterAsync(this Window window, string value)
    {
        var box = window.Page.Locator(".value-side form.pad input");
        await box.FillAsync(value);
        await box.PressAsync("Enter");
    }

    /// <summary>
    /// Goes through the round line by line as it opens and enters what a unit with one fault shows. Gives the number of
    /// readings taken.
    /// </summary>
    public static async Task<int> ReadRoundAsync(this Window window, FaultyUnit unit)
    {
        var lines = window.Page.Locator(".round-line");
        // Which readings belong to it is worked out once for a type.
        await lines.First.WaitForAsync(new() { Timeout = 120_000 });
        var (taken, count) = (0, await lines.CountAsync());
        for (var n = 0; n < count; n++)
        {
            var line = lines.Nth(n);
            var box = line.Locator("input");
            if (await box.CountAsync() == 0)
                continue;
            await Expect(line.Locator(".expected b")).ToBeVisibleAsync();
            await box.FillAsync(unit.Read((await box.GetAttributeAsync("name"))!));
            await box.PressAsync("Enter");
            await line.Locator("p.small b, p.wrong, .slip").First.WaitForAsync();
            // What a fault shows may look like a slip: it reads what it reads.
            if (await line.Locator(".slip").CountAsync() > 0)
                await line.GetByText("No, it reads").ClickAsync();
            await Expect(line.Locator("p.small b, p.wrong").First).ToBeVisibleAsync();
            Assert.Equal(0, await line.Locator("p.wrong").CountAsync());
            taken++;
        }
        return taken;
    }
}
