using System.Globalization;
using Microsoft.Playwright;
using Ohmstead.Perf.Stores;

namespace Ohmstead.Perf.Benches;

/// <summary>
/// One bench at work: a window with its live connection, in which readings are entered, and a second way to the same program, over which
/// pages are asked for. Both in times of their own, drawn by a seed: now and then two at once, and a pause after it, as with people.
/// </summary>
/// <param name="program">Where its program answers.</param>
/// <param name="unit">The unit that lies on it.</param>
/// <param name="ohms">About what its meter shows.</param>
/// <param name="seed">Draws times, values and pages.</param>
internal sealed class LiveBench(Uri program, Guid unit, double ohms, int seed) : IDisposable
{
    private const double EntrySeconds = 2;
    private const double PageSeconds = 5;

    /// <summary>The page does and times it itself: from Enter until the value stands there as saved.</summary>
    public const string Take = """
        async value => {
            const seen = find => new Promise((yes, no) => {
                const look = () => { const it = find(); if (it) { watch.disconnect(); clearTimeout(late); yes(it); } };
                const watch = new MutationObserver(look);
                const late = setTimeout(() => { watch.disconnect(); no(new Error('not there after 30 s: ' + document.body.innerText.slice(0, 300))); }, 30000);
                watch.observe(document.body, { childList: true, subtree: true });
                look();
            });
            const saved = () => document.querySelector('.value-side [data-keys="u Backspace"]');
            const again = () => [...document.querySelectorAll('.value-side button')].find(b => b.textContent.includes('Read it once more'));
            const box = () => document.querySelector('.value-side #entry');
            await seen(() => box() ?? again());
            if (!box()) again().click();
            const entry = await seen(() => saved() ? null : box());
            entry.value = value;
            entry.dispatchEvent(new Event('input', { bubbles: true }));
            const began = performance.now();
            entry.form.requestSubmit();
            await seen(saved);
            return performance.now() - began;
        }
        """;

    private readonly HttpClient http = new() { BaseAddress = program };
    private readonly Random random = new(seed);
    private IPage? page;

    /// <summary>Milliseconds of each entry.</summary>
    public List<double> Entries { get; } = [];

    /// <summary>Milliseconds of each page, by what it is.</summary>
    public List<(string What, double Milliseconds)> Pages { get; } = [];

    /// <summary>What went wrong, in words.</summary>
    public List<string> Errors { get; } = [];

    /// <summary>How long after its time the one that came latest was begun [s].</summary>
    public double LatestSeconds { get; private set; }

    public async Task OpenAsync(IBrowser browser, string reading)
    {
        page = await browser.NewPageAsync(new() { BaseURL = program.ToString() });
        page.PageError += (_, error) => Errors.Add("script: " + error);
        await page.GotoAsync($"/units/{unit}/reading/{reading}");
        await page.Locator("main:not([aria-busy])").WaitForAsync();
        await EnterAsync();
        Entries.Clear();
        foreach (var (_, path) in Paths)
            await ServerFigures.GetAsync(http, path);
    }

    /// <summary>Works until the time is over.</summary>
    public Task WorkAsync(TimeSpan time, IReadOnlyList<Guid> units)
    {
        // Two streams: what is asked for does not wait for what is entered.
        var (entries, pages) = (new Random(random.Next()), new Random(random.Next()));
        return Task.WhenAll(
            StreamAsync(time, EntrySeconds, entries, EnterAsync),
            StreamAsync(time, PageSeconds, pages, () => AskAsync(pages, units))
        );
    }

    public void Dispose() => http.Dispose();

    private (string What, string Path)[] Paths =>
        [
            ("start page", "/"),
            ("search", "/search?words=pitt+copper"),
            ("a unit's page", $"/units/{unit}"),
            ("its look-over", $"/units/{unit}/look-over"),
            ("its findings", $"/units/{unit}/findings"),
        ];

    private async Task StreamAsync(TimeSpan time, double meanSeconds, Random drawn, Func<Task> step)
    {
        var began = System.Diagnostics.Stopwatch.GetTimestamp();
        double Now() => System.Diagnostics.Stopwatch.GetElapsedTime(began).TotalSeconds;
        for (var due = Gap(); due < time.TotalSeconds; due += Gap())
        {
            if (due - Now() is > 0 and var wait)
                await Task.Delay(TimeSpan.FromSeconds(wait));
            LatestSeconds = Math.Max(LatestSeconds, Now() - due);
            try
            {
                await step();
            }
            catch (Exception e) when (e is PlaywrightException or HttpRequestException or TimeoutException or TaskCanceledException)
            {
                Errors.Add(e.Message);
            }
        }
        double Gap() => -Math.Log(1 - drawn.NextDouble()) * meanSeconds;
    }

    private async Task EnterAsync()
    {
        var shown = (ohms * (0.99 + 0.02 * random.NextDouble())).ToString("G4", CultureInfo.InvariantCulture);
        Entries.Add(await page!.EvaluateAsync<double>(Take, shown));
    }

    private async Task AskAsync(Random drawn, IReadOnlyList<Guid> units)
    {
        var (what, path) = Paths[drawn.Next(Paths.Length)];
        // One in two is looked at by somebody else's bench.
        if (drawn.Next(2) == 0)
            path = path.Replace(unit.ToString(), units[drawn.Next(units.Count)].ToString(), StringComparison.Ordinal);
        var began = System.Diagnostics.Stopwatch.GetTimestamp();
        await ServerFigures.GetAsync(http, path);
        Pages.Add((what, System.Diagnostics.Stopwatch.GetElapsedTime(began).TotalMilliseconds));
    }
}
