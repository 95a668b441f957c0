using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Storage;
using Ohmstead.Storage.Backups;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Perf.Stores;

/// <summary>The store with a workshop of many years in it: what the screens ask of it, an entry acknowledged, a backup.</summary>
internal static class StoreFigures
{
    private const int Runs = 50;
    private const double MostScreenMilliseconds = 100;
    private const double MostEntryMilliseconds = 50;
    private const double MostBackupSeconds = 2;
    private const double MostFillSeconds = 120;
    private const double MostMegabytes = 400;

    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            return (await MeasureAsync(Path.Combine(folder, "data"), Path.Combine(folder, "backups"))).Report();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<Figures> MeasureAsync(string data, string backups)
    {
        var stop = CancellationToken.None;
        var (table, broken) = (new StringBuilder("| what | median | slowest | allowed |\n|---|---|---|---|\n"), new List<string>());
        var sheet = RepositoryRoot.Sample;
        string[] readings = [.. sheet.Readings.Select(r => r.Id)];
        await using var store = await Store.OpenAsync(data, TimeProvider.System, stop);
        var filled = new FilledStore(store, seed: 18600);
        var began = Stopwatch.GetTimestamp();
        await filled.FillAsync(sheet.Id, await File.ReadAllTextAsync(RepositoryRoot.SamplePath, stop), readings, stop);
        var fillSeconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var next = 0;
        Guid Some() => filled.Ids[next++ * 37 % filled.Ids.Count];

        await RowAsync("cards of the units on the bench", MostScreenMilliseconds, () => store.CardsAsync(withHandedBack: false, stop));
        await RowAsync("cards of all units", MostScreenMilliseconds, () => store.CardsAsync(withHandedBack: true, stop));
        await RowAsync("search, two words, 50 hits", MostScreenMilliseconds, () => store.SearchAsync("pitt copper", 50, stop));
        await RowAsync("search, nothing found", MostScreenMilliseconds, () => store.SearchAsync("nowhere", 50, stop));
        await RowAsync("one unit, read and folded", MostScreenMilliseconds, () => store.ReadAsync(Some(), stop));
        await RowAsync(
            "an entry acknowledged",
            MostEntryMilliseconds,
            () =>
            {
                var id = Guid.CreateVersion7();
                return store.AppendAsync(
                    Some(),
                    1000,
                    [new NewEntry(id, TimeProvider.System.GetUtcNow(), "bench", new Noted("measured"))],
                    stop
                );
            }
        );
        var first = await BackupAsync(data, backups);
        await store.AppendAllAsync([await filled.UnitAsync(FilledStore.Units, sheet.Id, readings, stop)], stop);
        var second = await BackupAsync(data, backups);
        if (second > MostBackupSeconds)
            broken.Add(FormattableString.Invariant($"incremental backup: {second:F2} s, {MostBackupSeconds} s are allowed"));
        var megabytes = Process.GetCurrentProcess().PeakWorkingSet64 / 1e6;
        if (megabytes > MostMegabytes)
            broken.Add(FormattableString.Invariant($"memory: {megabytes:F0} MB, {MostMegabytes} MB are allowed"));
        if (fillSeconds > MostFillSeconds)
            broken.Add(FormattableString.Invariant($"filling: {fillSeconds:F0} s, {MostFillSeconds} s are allowed"));
        table.AppendLine(CultureInfo.InvariantCulture, $"| first backup | {first:F2} s | | |");
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"| backup after one more unit with {FilledStore.PhotosAUnit} photos | {second:F2} s | | {MostBackupSeconds} s |"
        );
        table.AppendLine(CultureInfo.InvariantCulture, $"| most memory of the process | {megabytes:F0} MB | | {MostMegabytes} MB |");
        table.AppendLine(
            CultureInfo.InvariantCulture,
            $"\n{FilledStore.Units} units, {FilledStore.Units * FilledStore.ReadingsAUnit} readings, {FilledStore.Units * FilledStore.PhotosAUnit} photos; {Runs} runs each. Filled in {fillSeconds:F0} s; the database has {new FileInfo(Path.Combine(data, "workshop.db")).Length / 1e6:F0} MB. Every entry and photo is written through to the disk."
        );
        return new Figures("store", table.ToString(), broken);

        async Task RowAsync<T>(string what, double mostMilliseconds, Func<Task<T>> ask)
        {
            for (var n = 0; n < 5; n++)
                await ask();
            var times = new double[Runs];
            for (var n = 0; n < Runs; n++)
            {
                var start = Stopwatch.GetTimestamp();
                await ask();
                times[n] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }
            var median = Clock.Median(times);
            table.AppendLine(CultureInfo.InvariantCulture, $"| {what} | {median:F1} ms | {times.Max():F1} ms | {mostMilliseconds} ms |");
            if (median > mostMilliseconds)
                broken.Add(FormattableString.Invariant($"{what}: {median:F1} ms, {mostMilliseconds} ms are allowed"));
        }
    }

    private static async Task<double> BackupAsync(string data, string backups)
    {
        var began = Stopwatch.GetTimestamp();
        await Backup.MakeAsync(data, backups, TimeProvider.System.GetUtcNow(), 5, CancellationToken.None);
        return Stopwatch.GetElapsedTime(began).TotalSeconds;
    }
}
