using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ohmstead.Perf.Benchmarks;

namespace Ohmstead.Perf.Stores;

/// <summary>The tool with a thousand units on a slow laptop: one core, and of that a third.</summary>
internal static class SlowLaptopFigures
{
    private const int Starts = 5;
    private const int Core = 1;
    private const double MostStartSeconds = 10;
    private const double MostMegabytes = 400;

    /// <summary>One start: until the first page was served, what it cost, then the time of other pages and the most memory.</summary>
    private sealed record Start(double Seconds, double CoreSeconds, double Megabytes, IReadOnlyList<double> Pages, double MegabytesAfter);

    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            var ids = await ServerFigures.FillAsync(folder, FilledStore.Units);
            (string What, string Path)[] pages =
            [
                ("start page again", "/"),
                ("search, two words", "/search?words=pitt+copper"),
                ("all that were handed back", "/handed-back"),
                ("a unit's page", $"/units/{ids[37]}"),
                ("its findings", $"/units/{ids[37]}/findings"),
            ];
            var starts = new List<Start>();
            for (var n = 0; n < Starts; n++)
                starts.Add(await StartAsync(folder, [.. pages.Select(p => p.Path)]));
            return Table([.. pages.Select(p => p.What)], starts).Report();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<Start> StartAsync(string data, string[] pages)
    {
        var began = Stopwatch.GetTimestamp();
        await using var slowed = new SlowedProcess(Core, Path.Combine(RepositoryRoot.Path, "ohmstead"), "--data", data, "--port", "0");
        using var http = new HttpClient { BaseAddress = await ServerFigures.AddressAsync(slowed.Running) };
        await ServerFigures.GetAsync(http, "/");
        var first = (Stopwatch.GetElapsedTime(began).TotalSeconds, slowed.CoreSeconds, slowed.Megabytes);
        var times = new List<double>();
        foreach (var page in pages)
        {
            var asked = Stopwatch.GetTimestamp();
            await ServerFigures.GetAsync(http, page);
            times.Add(Stopwatch.GetElapsedTime(asked).TotalSeconds);
        }
        // What a page sets off goes on behind it: a backup, the findings.
        await Task.Delay(TimeSpan.FromSeconds(20));
        return new(first.TotalSeconds, first.CoreSeconds, first.Megabytes, times, slowed.Megabytes);
    }

    private static Figures Table(string[] pages, List<Start> starts)
    {
        var table = new StringBuilder("| what | median | worst | allowed |\n|---|---|---|---|\n");
        void Row(string what, string unit, string form, IEnumerable<double> values, string allowed) =>
            table.AppendLine(
                CultureInfo.InvariantCulture,
                $"| {what} | {Clock.Median(values).ToString(form, CultureInfo.InvariantCulture)} {unit} | {values.Max().ToString(form, CultureInfo.InvariantCulture)} {unit} | {allowed} |"
            );
        Row("first page after the start", "s", "F2", starts.Select(s => s.Seconds), "10 s");
        Row("… of them on the core", "s", "F2", starts.Select(s => s.CoreSeconds), "");
        Row("most memory until then", "MB", "F0", starts.Select(s => s.Megabytes), "400 MB");
        for (var n = 0; n < pages.Length; n++)
        {
            var page = n;
            Row($"{pages[n]}, asked for the first time", "s", "F2", starts.Select(s => s.Pages[page]), "");
        }
        Row("most memory 20 s later", "MB", "F0", starts.Select(s => s.MegabytesAfter), "400 MB");
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"\n{Starts} starts of `./ohmstead` on {FilledStore.Units:N0} units, {FilledStore.ReadingsAUnit} readings and {FilledStore.PhotosAUnit} photos each, the first one straight after the folder was filled. One core, with all that the start runs halted for two thirds of the time: 10 ms on, 20 ms off. Files come from the system's memory, not from a slow disk."
        );
        var broken = new List<string>();
        if (starts.Max(s => s.Seconds) is var slowest and > MostStartSeconds)
            broken.Add(FormattableString.Invariant($"first page: {slowest:F2} s, {MostStartSeconds} s are allowed"));
        if (starts.Max(s => s.MegabytesAfter) is var largest and > MostMegabytes)
            broken.Add(FormattableString.Invariant($"memory: {largest:F0} MB, {MostMegabytes} MB are allowed"));
        return new Figures("slow-laptop", table.ToString(), broken);
    }
}
