using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Perf.Stores;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Perf.Benches;

/// <summary>
/// A club: twenty benches at work on one PostgreSQL database, four programs with five benches each, all on this machine with the server and
/// the browser. Entries over live connections, pages over HTTP, findings worked out behind.
/// </summary>
internal static partial class BenchesFigures
{
    private const int Programs = 4;
    private const int BenchesAProgram = 5;
    private const int OtherUnits = 200;
    private const double UsualSeconds = 300;
    private const double MostPageMilliseconds = 250;
    private const double MostEntryMilliseconds = 150;

    /// <param name="arguments">How long the benches work [s]; five minutes where it is left out.</param>
    public static async Task<int> RunAsync(string[] arguments)
    {
        var seconds = arguments is [var said, ..] ? double.Parse(said, CultureInfo.InvariantCulture) : UsualSeconds;
        await using var cluster = await Cluster.StartAsync();
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        var programs = new List<Process>();
        try
        {
            var address = await cluster.DatabaseAsync("club");
            var units = await FillAsync(address, Path.Combine(folder, "fill"));
            var places = new List<Uri>();
            for (var n = 0; n < Programs; n++)
            {
                var place = Path.Combine(folder, FormattableString.Invariant($"place-{n}"));
                programs.Add(ServerFigures.Start("--database", address, "--data", place, "--port", "0"));
                places.Add(await ServerFigures.AddressAsync(programs[^1]));
            }
            return await MeasureAsync(address, folder, places, units, seconds, programs);
        }
        finally
        {
            foreach (var program in programs)
            {
                program.Kill(entireProcessTree: true);
                await program.WaitForExitAsync();
                program.Dispose();
            }
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<ClubUnits> FillAsync(string address, string folder)
    {
        await using var store = await Store.OpenSharedAsync(address, folder, Guid.NewGuid());
        return await ClubUnits.FillAsync(store, Programs * BenchesAProgram, OtherUnits);
    }

    private static async Task<int> MeasureAsync(
        string address,
        string folder,
        List<Uri> places,
        ClubUnits units,
        double seconds,
        List<Process> programs
    )
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = "/usr/bin/chromium-headless-shell",
                Args = ["--no-sandbox", "--disable-gpu", "--disable-background-timer-throttling", "--disable-renderer-backgrounding"],
            }
        );
        LiveBench[] benches = [.. units.Ids.Select((u, n) => new LiveBench(places[n % Programs], u, units.Ohms[n], seed: 1000 + n))];
        foreach (var bench in benches)
            await bench.OpenAsync(browser, units.Reading);
        Console.Error.WriteLine(FormattableString.Invariant($"{benches.Length} benches begin, for {seconds:F0} s"));
        using var ended = new CancellationTokenSource();
        var behind = BehindAsync(places, ended.Token);
        var cost = programs.Sum(p => p.TotalProcessorTime.TotalSeconds);
        await Task.WhenAll(benches.Select(b => b.WorkAsync(TimeSpan.FromSeconds(seconds), units.Ids)));
        await ended.CancelAsync();
        foreach (var program in programs)
            program.Refresh();
        cost = programs.Sum(p => p.TotalProcessorTime.TotalSeconds) - cost;
        var lost = await LostAsync(address, folder, units.Ids, units.Reading, benches);
        var told = new Told(
            benches,
            await behind,
            FormattableString.Invariant(
                $"{Programs} programs with {BenchesAProgram} benches each on one PostgreSQL database with {OtherUnits + units.Ids.Count} units, for {seconds:F0} s; the programs took {cost / seconds:F2} of {Environment.ProcessorCount} cores, the most memory of one was {programs.Max(p => p.PeakWorkingSet64) / 1e6:F0} MB. An entry that came latest was begun {benches.Max(b => b.LatestSeconds):F1} s after its time. Acknowledged and not there, or there twice: {lost}."
            ),
            lost
        );
        return told.Report();
    }

    /// <summary>Every second, how long the unit that waits longest has been without findings that know its entries; in each program, as it shows it.</summary>
    private static async Task<IReadOnlyList<double>> BehindAsync(List<Uri> places, CancellationToken ended)
    {
        var seen = new List<double>();
        using var http = new HttpClient();
        while (!ended.IsCancellationRequested)
        {
            foreach (var place in places)
            {
                var page = await http.GetStringAsync(new Uri(place, "/about/memory"), CancellationToken.None);
                if (Behind().Match(page) is { Success: true } found)
                    seen.Add(double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture));
            }
            await Task.Delay(TimeSpan.FromSeconds(2), CancellationToken.None);
        }
        return seen;
    }

    /// <summary>How many entries that a page showed as saved are not in the database, or twice.</summary>
    private static async Task<int> LostAsync(
        string address,
        string folder,
        IReadOnlyList<Guid> units,
        string reading,
        IReadOnlyList<LiveBench> benches
    )
    {
        await using var store = await Store.OpenSharedAsync(address, Path.Combine(folder, "look"), Guid.NewGuid());
        var wrong = 0;
        for (var n = 0; n < units.Count; n++)
        {
            var journal = (await store.ReadAsync(units[n], CancellationToken.None))!.Journal;
            // Those before, one to open with, and those that were timed.
            var kept = journal.Count(e => e.Fact is ReadingEntered entered && entered.ReadingId == reading);
            wrong += Math.Abs(kept - 2 - benches[n].Entries.Count);
        }
        return wrong;
    }

    [GeneratedRegex("id=\"behind\".*?<b>([0-9]+)")]
    private static partial Regex Behind();

    private sealed record Told(IReadOnlyList<LiveBench> Benches, IReadOnlyList<double> Behind, string Words, int Lost)
    {
        public int Report()
        {
            var table = new StringBuilder("| what | how many | median | 95 of 100 within | worst | allowed |\n|---|---|---|---|---|---|\n");
            var broken = new List<string>();
            Row(
                "an entry, from Enter until it stands there as saved",
                [.. Benches.SelectMany(b => b.Entries)],
                "ms",
                MostEntryMilliseconds
            );
            Row("a page, to its last byte", [.. Benches.SelectMany(b => b.Pages).Select(p => p.Milliseconds)], "ms", MostPageMilliseconds);
            foreach (var kind in Benches.SelectMany(b => b.Pages).GroupBy(p => p.What).OrderBy(g => g.Key, StringComparer.Ordinal))
                Row($"… {kind.Key}", [.. kind.Select(p => p.Milliseconds)], "ms", double.PositiveInfinity);
            Row("the longest wait of a unit for its findings, looked at every 2 s", Behind, "s", double.PositiveInfinity);
            string[] errors = [.. Benches.SelectMany(b => b.Errors)];
            table.AppendLine(CultureInfo.InvariantCulture, $"| errors | {errors.Length} | | | | 0 |");
            foreach (var error in errors.Take(5))
                Console.Error.WriteLine(error);
            if (errors.Length > 0 || Lost > 0)
                broken.Add(FormattableString.Invariant($"{errors.Length} errors, {Lost} entries lost or there twice"));
            table.AppendLine(CultureInfo.InvariantCulture, $"\n{Words}");
            return new Figures("benches", table.ToString(), broken).Report();

            void Row(string what, IReadOnlyList<double> values, string unit, double most)
            {
                if (values.Count == 0)
                    return;
                var p95 = Clock.Percentile(values, 0.95);
                var row = string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {what} | {values.Count} | {Clock.Median(values):F0} {unit} | {p95:F0} {unit} | {values.Max():F0} {unit} | {(double.IsFinite(most) ? FormattableString.Invariant($"{most} {unit}") : "")} |"
                );
                table.AppendLine(row);
                if (p95 > most)
                    broken.Add(row);
            }
        }
    }
}
