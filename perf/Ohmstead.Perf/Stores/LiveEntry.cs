using Microsoft.Playwright;

namespace Ohmstead.Perf.Stores;

/// <summary>
/// A reading entered over the page's live connection, timed by the page itself: from the key Enter until the page shows
/// the value as taken and offers to undo it. Needs Debian's package chromium-headless-shell.
/// </summary>
internal sealed class LiveEntry : IAsyncDisposable
{
    private const string Watch = """
        addEventListener('keydown', pressed => {
            if (pressed.key !== 'Enter') return;
            const began = performance.now();
            new MutationObserver((_, watching) => {
                if (!document.querySelector('.value-side [data-keys="u Backspace"]')) return;
                window.took = performance.now() - began;
                watching.disconnect();
            }).observe(document.body, { childList: true, subtree: true });
        }, true);
        """;

    private readonly IPlaywright playwright;
    private readonly IBrowser browser;
    private readonly IPage page;

    private LiveEntry(IPlaywright playwright, IBrowser browser, IPage page) =>
        (this.playwright, this.browser, this.page) = (playwright, browser, page);

    /// <param name="address">Where the tool answers.</param>
    public static async Task<LiveEntry> OpenAsync(Uri address)
    {
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = "/usr/bin/chromium-headless-shell", Args = ["--no-sandbox", "--disable-gpu"] }
        );
        var page = await browser.NewPageAsync(new() { BaseURL = address.ToString() });
        await page.AddInitScriptAsync(Watch);
        return new(playwright, browser, page);
    }

    /// <summary>Opens a reading of a unit. What is probably wrong with the unit begins to be worked out beside it.</summary>
    public async Task GoAsync(string unit, string reading)
    {
        await page.GotoAsync($"/units/{unit}/reading/{reading}");
        await page.Locator("main:not([aria-busy])").WaitForAsync();
    }

    /// <summary>Enters a value for the open reading. Gives the milliseconds that it took.</summary>
    public async Task<double> TakeAsync(string value)
    {
        var (box, again) = (page.Locator(".value-side #entry"), page.GetByText("Read it once more"));
        await box.Or(again).First.WaitForAsync();
        if (await again.IsVisibleAsync())
            await again.ClickAsync();
        await box.FillAsync(value);
        await page.EvaluateAsync("() => { window.took = undefined; }");
        await box.PressAsync("Enter");
        await page.WaitForFunctionAsync("() => window.took !== undefined");
        return await page.EvaluateAsync<double>("() => window.took");
    }

    public async ValueTask DisposeAsync()
    {
        await browser.DisposeAsync();
        playwright.Dispose();
    }
}
