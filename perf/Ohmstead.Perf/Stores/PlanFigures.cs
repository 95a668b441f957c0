using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Storage;

namespace Ohmstead.Perf.Stores;

/// <summary>The plan of a unit and the screens of the drawer, in the real process, in a workshop of many units with a full drawer.</summary>
internal static class PlanFigures
{
    private const int Runs = 30;
    private const double MostMilliseconds = 100;

    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            var ids = await ServerFigures.FillAsync(folder, FilledStore.Units);
            await using (var store = await Store.OpenAsync(folder, TimeProvider.System, CancellationToken.None))
                await new FilledDrawer(store, ids).FillAsync(CancellationToken.None);
            using var server = ServerFigures.Start("--data", folder, "--port", "0");
            try
            {
                return await MeasureAsync(await ServerFigures.AddressAsync(server), [.. ids.Where((_, n) => n % 10 == 0)]);
            }
            finally
            {
                server.Kill(entireProcessTree: true);
                await server.WaitForExitAsync();
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<int> MeasureAsync(Uri address, IReadOnlyList<Guid> open)
    {
        using var http = new HttpClient { BaseAddress = address };
        await ServerFigures.GetAsync(http, "/");
        var (table, broken) = (
            new StringBuilder("| page | first | median | slowest | allowed |\n|---|---|---|---|---|\n"),
            new List<string>()
        );
        var next = 0;
        foreach (
            var (what, path, most) in (
                ((string, Func<string>, double)[])
                    [
                        ("the plan of a unit", () => $"/units/{open[next++ % open.Count]}/plan", MostMilliseconds),
                        (
                            "what to do about a part",
                            () => $"/units/{open[next++ % open.Count]}/decide/roller-left",
                            double.PositiveInfinity
                        ),
                        ("the drawer", () => "/drawer", double.PositiveInfinity),
                        ("a bin", () => "/drawer/bins/00000003-0000-005d-0000-000000000000", double.PositiveInfinity),
                        ("the batches", () => "/drawer/batches", double.PositiveInfinity),
                        ("the bench day", () => "/day", double.PositiveInfinity),
                    ]
            )
        )
        {
            var first = await TimeAsync(() => ServerFigures.GetAsync(http, path()));
            var times = new double[Runs];
            for (var n = 0; n < Runs; n++)
                times[n] = await TimeAsync(() => ServerFigures.GetAsync(http, path()));
            Row(table, broken, what, first, times, most);
        }
        await InTheBrowserAsync(address, open, table, broken);
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"\n{FilledStore.Units:N0} units with {FilledStore.ReadingsAUnit} readings each, {FilledDrawer.Bins:N0} bins in the drawer, a part of it in nine of ten units. Pages: from the question to the last byte, {Runs} after the first, each unit's page of another unit; the first one reads the logs of all units for their minutes. In the browser: Chromium on the same two cores, from the address until the price stands on the page, the page's scripts and its live connection in it."
        );
        return new Figures("plan", table.ToString(), broken).Report();
    }

    private static async Task InTheBrowserAsync(Uri address, IReadOnlyList<Guid> open, StringBuilder table, List<string> broken)
    {
        const int looks = 10;
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = "/usr/bin/chromium-headless-shell", Args = ["--no-sandbox", "--disable-gpu"] }
        );
        var page = await browser.NewPageAsync(new() { BaseURL = address.ToString() });
        var times = new List<double>();
        for (var n = 0; n <= looks; n++)
            times.Add(
                await TimeAsync(async () =>
                {
                    await page.GotoAsync($"/units/{open[n]}/plan");
                    await page.Locator(".price .range").WaitForAsync(new() { Timeout = 120_000 });
                })
            );
        Row(table, broken, "the plan in the browser, until its price stands there", times[0], [.. times[1..]], double.PositiveInfinity);
    }

    private static void Row(StringBuilder table, List<string> broken, string what, double first, double[] times, double most)
    {
        var row = string.Create(
            CultureInfo.InvariantCulture,
            $"| {what} | {first:F0} ms | {Clock.Median(times):F1} ms | {times.Max():F1} ms | {(double.IsFinite(most) ? string.Create(CultureInfo.InvariantCulture, $"{most} ms") : "")} |"
        );
        table.AppendLine(row);
        if (Clock.Median(times) > most)
            broken.Add(row);
    }

    private static async Task<double> TimeAsync(Func<Task> ask)
    {
        var began = Stopwatch.GetTimestamp();
        await ask();
        return Stopwatch.GetElapsedTime(began).TotalMilliseconds;
    }
}
