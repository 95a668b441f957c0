using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Browser.Tests;

/// <summary>A sound unit: what it can run, its hum from a phone's recording, and back to its owner with the page that says so.</summary>
public sealed class HandBackJourneyTests(OpenBrowser browser)
{
    private static readonly Guid Id = new(77, 0, 0, new byte[8]);

    [Theory]
    [InlineData(Width.Phone, Traits = ["kind", "long"])]
    [InlineData(Width.Desk)]
    public async Task What_it_can_run_and_how_it_hums_goes_home_with_the_unit(Width width)
    {
        await using var tool = await RunningTool.StartFilledAsync(FillAsync, "twin-175");
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        var (page, unit) = (window.Page, $"/units/{Id}");

        await window.GoAsync(unit);
        await window.FollowAsync("What it can run");
        await window.TitledAsync("What it can run");
        for (var n = 0; n < 2; n++)
            await page.Locator("[data-add=motor]").ClickAsync();
        await page.Locator("[data-add=lamp]").ClickAsync();
        // 2 · 1.25 + 0.2 A; 1.2 times that is 3.24 A.
        await window.SeesAsync("Put a 4 A fuse in its lead. No larger.");
        await window.SeeAsync();
        await window.PressAsync("Keep it for the owner’s page");
        await window.SeesAsync("Kept for the owner’s page");

        await window.GoAsync($"{unit}/hum");
        await ChooseAsync(page, "idle", "hum.wav", HumFile.Wav());
        await window.SeesAsync("Hum at twice the line’s frequency");
        // Another kind of file: the browser makes WAV of it, and both are kept.
        await ChooseAsync(page, "loaded", "hum.flac", HumFile.Flac());
        await window.SeesAsync("The same, within what a phone hears.");
        await ChooseAsync(page, "lifted", "hum.m4a", [0, 0, 0, 24, .. "ftypM4A isom"u8, .. new byte[64]]);
        await window.SeesAsync("This browser cannot read this kind of recording. Save it as WAV on the phone");
        await window.SeeAsync();

        await window.GoAsync($"{unit}/return");
        await window.FillAsync("Returned by", "A. B.");
        await window.PressAsync("Returned working, as tested");
        await window.TitledAsync("Returned working, as tested");
        await window.FollowAsync("Paperwork");
        await window.TitledAsync("Paperwork");
        var owner = Regex.Replace(await window.PdfAsync($"{unit}/papers/owner-page.pdf"), @"\s+", " ");
        Assert.Contains("Your unit is back", owner, StringComparison.Ordinal);
        Assert.Contains("2.7 of", owner, StringComparison.Ordinal);
        Assert.Contains("fuse 4 A", owner, StringComparison.Ordinal);
        Assert.Matches(@"F-77\s[\s\S]*Tested 1 Mar 2026", await window.PdfAsync($"{unit}/papers/label.pdf"));
        var record = await window.PdfAsync($"{unit}/papers/service-record.pdf");
        Assert.Contains("Hum, recorded with a phone", record, StringComparison.Ordinal);
    }

    private static Task ChooseAsync(IPage page, string state, string name, byte[] file) =>
        page.SetInputFilesAsync(
            $"input[data-as={state}]",
            new FilePayload
            {
                Name = name,
                MimeType = "application/octet-stream",
                Buffer = file,
            }
        );

    /// <summary>Looked over and read from end to end: nothing is open.</summary>
    private static async Task FillAsync(Store store)
    {
        var sound = FaultyUnit.Sound("twin-175");
        Fact[] facts =
        [
            new TakenIn("F-77", "twin-175", "an owner", "hums"),
            .. Shop.Usual.LookOver.Select(i => new ConditionNoted(i.Id, "good", Decision.Leave, "")),
            .. sound
                .Sheet.Readings.Where(r => !r.IsOpenCase)
                .Select(r => new ReadingEntered(r.Id, ShownText.Read(sound.Read(r.Id), r.Quantity).Shown!, BenchState.AsSheet)),
        ];
        var at = new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);
        await store.AppendAsync(
            Id,
            0,
            [.. facts.Select((f, n) => new NewEntry(new Guid(77, 1, (short)n, new byte[8]), at.AddMinutes(n), "bench", f))],
            CancellationToken.None
        );
    }
}
