using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Storage;

namespace Ohmstead.Perf.Stores;

/// <summary>The tool as a browser meets it: the real process on filled folders of three sizes, asked over HTTP.</summary>
internal static partial class ServerFigures
{
    private const int Runs = 50;
    private const double MostPageMilliseconds = 100;
    private const double MostEntryMilliseconds = 50;
    private const double MostBackupSeconds = 2;
    private const double MostMegabytes = 400;
    private const double MostFirstLoadBytes = 300_000;

    private static readonly int[] Sizes = [100, 300, FilledStore.Units];

    public static async Task<int> RunAsync()
    {
        var broken = new List<string>();
        var columns = new List<IReadOnlyList<Row>>();
        foreach (var units in Sizes)
        {
            var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
            try
            {
                columns.Add(await MeasureAsync(folder, units));
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
            foreach (var row in columns[^1].Where(r => r.Value > r.Most))
                broken.Add(
                    FormattableString.Invariant($"{units} units, {row.What}: {row.Value:F1} {row.Unit}, {row.Most} {row.Unit} are allowed")
                );
        }
        return new Figures("server", Table(columns), broken).Report();
    }

    private static string Table(List<IReadOnlyList<Row>> columns)
    {
        var table = new StringBuilder("| what |");
        foreach (var units in Sizes)
            table.Append(CultureInfo.InvariantCulture, $" {units:N0} units |");
        table.Append(" allowed |\n|---|");
        table.Insert(table.Length, "---|", Sizes.Length + 1).Append('\n');
        for (var n = 0; n < columns[0].Count; n++)
        {
            table.Append(CultureInfo.InvariantCulture, $"| {columns[0][n].What} |");
            foreach (var column in columns)
                table.Append(CultureInfo.InvariantCulture, $" {column[n].Text} |");
            var most = columns[0][n].Most;
            table.AppendLine(double.IsFinite(most) ? FormattableString.Invariant($" {most} {columns[0][n].Unit} |") : " |");
        }
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"\n{FilledStore.ReadingsAUnit} readings and {FilledStore.PhotosAUnit} photos a unit. Pages: median of {Runs} after 5, slowest in brackets, from the question to the last byte of the whole page, each unit's page of another unit. An entry comes with a photo of 1 kB, both written through to the disk."
        );
        return table.ToString();
    }

    private static async Task<IReadOnlyList<Row>> MeasureAsync(string folder, int units)
    {
        var (data, backups) = (Path.Combine(folder, "data"), Path.Combine(folder, "backups"));
        var ids = await FillAsync(data, units);
        var began = Stopwatch.GetTimestamp();
        using var server = Start("--data", data, "--port", "0");
        try
        {
            using var http = new HttpClient { BaseAddress = await AddressAsync(server) };
            http.DefaultRequestHeaders.AcceptEncoding.Add(new StringWithQualityHeaderValue("gzip"));
            await GetAsync(http, "/");
            var firstPage = Stopwatch.GetElapsedTime(began).TotalSeconds;
            var next = 0;
            string Some() => ids[next++ * 37 % ids.Count].ToString();
            var rows = new List<Row>
            {
                new("first page after the start", firstPage, "s", MostBackupSeconds, FormattableString.Invariant($"{firstPage:F2} s")),
                await FirstLoadAsync(http),
            };
            foreach (
                var (what, path) in ((string, Func<string>)[])
                    [
                        ("start page", () => "/"),
                        ("search, two words", () => "/search?words=pitt+copper"),
                        ("search, nothing found", () => "/search?words=nowhere"),
                        ("all that were handed back", () => "/handed-back"),
                        ("a unit's page", () => $"/units/{Some()}"),
                        ("its look-over", () => $"/units/{Some()}/look-over"),
                    ]
            )
                rows.Add(await TimesAsync(what, MostPageMilliseconds, () => GetAsync(http, path())));
            rows.Add(await TimesAsync("an entry with a photo, kept", MostEntryMilliseconds, () => PostAsync(http, Some())));
            rows.Add(Memory("memory after these", server));
            rows.AddRange(await LiveEntriesAsync(http.BaseAddress, Some()));
            // Before the server has anything to work out: that would be measured instead.
            await BackupAsync(data, backups);
            for (var n = 0; n < FilledStore.PhotosAUnit; n++)
                await PostAsync(http, ids[0].ToString());
            var backup = await BackupAsync(data, backups);
            rows.Add(
                new(
                    "`./ohmstead backup` beside it, 20 photos later",
                    backup,
                    "s",
                    MostBackupSeconds,
                    FormattableString.Invariant($"{backup:F2} s")
                )
            );
            // What each fault does is worked out and kept for a unit whose readings are looked at.
            for (var n = 0; n < Runs; n++)
                await GetAsync(http, $"/units/{Some()}/findings");
            await Task.Delay(TimeSpan.FromSeconds(10));
            rows.Add(
                Memory($"memory 10 s after the findings of {Runs.ToString(CultureInfo.InvariantCulture)} units were asked for", server)
            );
            return rows;
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
        }
    }

    /// <summary>A folder of so many units; their ids.</summary>
    /// <param name="isOnePicture">True where every photo is the same picture, so that it is kept once.</param>
    public static async Task<IReadOnlyList<Guid>> FillAsync(string data, int units, int seed = 18600, bool isOnePicture = false)
    {
        var stop = CancellationToken.None;
        var sheet = RepositoryRoot.Sample;
        await using var store = await Store.OpenAsync(data, TimeProvider.System, stop);
        var filled = new FilledStore(store, seed) { IsOnePicture = isOnePicture };
        await filled.FillAsync(
            sheet.Id,
            await File.ReadAllTextAsync(RepositoryRoot.SamplePath, stop),
            [.. sheet.Readings.Select(r => r.Id)],
            stop,
            units
        );
        return filled.Ids;
    }

    /// <summary>The tool with these arguments.</summary>
    public static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(RepositoryRoot.Path, "ohmstead")) { RedirectStandardOutput = true };
        foreach (var a in arguments)
            start.ArgumentList.Add(a);
        return Process.Start(start)!;
    }

    /// <summary>Where a process that was just started says that it answers.</summary>
    public static async Task<Uri> AddressAsync(Process server)
    {
        while (await server.StandardOutput.ReadLineAsync() is { } line)
            if (Address().Match(line) is { Success: true } found)
                return new Uri(found.Value);
        throw new InvalidOperationException("The server ended without an address.");
    }

    private static async Task<double> BackupAsync(string data, string backups)
    {
        var began = Stopwatch.GetTimestamp();
        using var process = Start("backup", backups, "--data", data);
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0
            ? Stopwatch.GetElapsedTime(began).TotalSeconds
            : throw new InvalidOperationException("The backup failed.");
    }

    private static Task<Row> TimesAsync(string what, double most, Func<Task> ask) =>
        TimesAsync(
            what,
            most,
            async () =>
            {
                var began = Stopwatch.GetTimestamp();
                await ask();
                return Stopwatch.GetElapsedTime(began).TotalMilliseconds;
            }
        );

    /// <param name="ask">Does it once and gives the milliseconds that it took.</param>
    private static async Task<Row> TimesAsync(string what, double most, Func<Task<double>> ask)
    {
        for (var n = 0; n < 5; n++)
            await ask();
        var times = new double[Runs];
        for (var n = 0; n < Runs; n++)
            times[n] = await ask();
        var median = Clock.Median(times);
        return new(what, median, "ms", most, FormattableString.Invariant($"{median:F1} ms ({times.Max():F1})"));
    }

    /// <summary>One after another, as fast as a page takes them; then each while what the last one says is worked out.</summary>
    private static async Task<IEnumerable<Row>> LiveEntriesAsync(Uri address, string unit)
    {
        await using var page = await LiveEntry.OpenAsync(address);
        await page.GoAsync(unit, RepositoryRoot.Sample.Readings.First(r => r.Quantity == Quantity.Ohms).Id);
        var n = 0;
        Task<double> TakeAsync() => page.TakeAsync(FormattableString.Invariant($"3.{n++:D3}"));
        return
        [
            await TimesAsync("a reading on its screen, from Enter until it stands there", MostEntryMilliseconds, TakeAsync),
            await TimesAsync(
                "the same while the findings are worked out on both cores",
                double.PositiveInfinity,
                async () =>
                {
                    await Task.Delay(TimeSpan.FromSeconds(1));
                    return await TakeAsync();
                }
            ),
        ];
    }

    /// <summary>A page, to its last byte.</summary>
    public static async Task<byte[]> GetAsync(HttpClient http, string path)
    {
        using var answer = await http.GetAsync(new Uri(path, UriKind.Relative));
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadAsByteArrayAsync();
    }

    /// <summary>An entry with a photo.</summary>
    public static async Task PostAsync(HttpClient http, string unit)
    {
        var entry = Guid.CreateVersion7();
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/units/{unit}/photos?entry={entry}&title=measured");
        request.Headers.Add("Origin", http.BaseAddress!.GetLeftPart(UriPartial.Authority));
        // Another picture every time: one that is there already would not be written.
        request.Content = new ByteArrayContent(FilledStore.Picture(BitConverter.ToInt64(entry.ToByteArray(), 8)));
        using var answer = await http.SendAsync(request);
        answer.EnsureSuccessStatusCode();
    }

    /// <summary>The start page and every file that it links to, as they go over the wire.</summary>
    private static async Task<Row> FirstLoadAsync(HttpClient http)
    {
        var page = await GetAsync(http, "/");
        await using var packed = new MemoryStream(page);
        await using var plain = new System.IO.Compression.GZipStream(packed, System.IO.Compression.CompressionMode.Decompress);
        using var reader = new StreamReader(page is [0x1f, 0x8b, ..] ? plain : packed);
        var bytes = (double)page.Length;
        foreach (
            var path in Linked()
                .Matches(await reader.ReadToEndAsync())
                .Select(m => m.Groups[1].Value.Replace("&amp;", "&", StringComparison.Ordinal))
                .Distinct()
        )
            bytes += (await GetAsync(http, path)).Length;
        return new(
            "first load: the start page with scripts, styles, fonts and pictures",
            bytes / 1000,
            "kB",
            MostFirstLoadBytes / 1000,
            FormattableString.Invariant($"{bytes / 1000:F0} kB")
        );
    }

    private static Row Memory(string what, Process server)
    {
        server.Refresh();
        var megabytes = server.PeakWorkingSet64 / 1e6;
        return new(what + ", the most", megabytes, "MB", MostMegabytes, FormattableString.Invariant($"{megabytes:F0} MB"));
    }

    [GeneratedRegex("http://[0-9.:]+/")]
    private static partial Regex Address();

    [GeneratedRegex("(?:href|src)=\"(/[^\"]*(?:\\.(?:css|js|svg|woff2)[^\"]*|/small))\"")]
    private static partial Regex Linked();

    private sealed record Row(string What, double Value, string Unit, double Most, string Text);
}
