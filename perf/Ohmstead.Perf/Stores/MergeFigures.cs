using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Storage;
using Ohmstead.Storage.Backups;
using Ohmstead.Storage.Merging;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Perf.Stores;

/// <summary>Two workshops of a thousand units become one: copies that were worked on apart, and two that never met; stopped half way and begun again.</summary>
internal static class MergeFigures
{
    private const int EntriesApart = 20;
    private const double MostSeconds = 60;

    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-perf-").FullName;
        try
        {
            var (table, broken) = (
                new StringBuilder("| what | seconds | units | new entries | new photos | allowed |\n|---|---|---|---|---|---|\n"),
                new List<string>()
            );
            string Of(string name) => Path.Combine(folder, name);
            var ids = await ServerFigures.FillAsync(Of("laptop"), FilledStore.Units, isOnePicture: true);
            Copy(Of("laptop"), Of("tablet"));
            await GrowAsync(Of("laptop"), ids, 1);
            await GrowAsync(Of("tablet"), ids, 2);
            await MeasureAsync(table, broken, "a copy that was worked on apart", Of("laptop"), Of("tablet"));
            var laptop = await TextAsync(Of("laptop"), ids);
            await MeasureAsync(table, broken, "and the other way", Of("tablet"), Of("laptop"));
            if (laptop != await TextAsync(Of("tablet"), ids))
                broken.Add("the two workshops are not the same afterwards");
            Directory.Delete(Of("tablet"), recursive: true);
            await ServerFigures.FillAsync(Of("club"), FilledStore.Units, seed: 77, isOnePicture: true);
            await MeasureAsync(table, broken, "a workshop that it never met", Of("laptop"), Of("club"));
            table.Append(
                CultureInfo.InvariantCulture,
                $"\nEach was stopped at half of its units and begun again; the seconds are of both runs. The backup that is made before is not in them.\n"
            );
            return new Figures("merge", table.ToString(), broken).Report();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task MeasureAsync(StringBuilder table, List<string> broken, string what, string into, string from)
    {
        await using var store = await Store.OpenAsync(into, TimeProvider.System, CancellationToken.None);
        var seconds = 0.0;
        var (first, second) = (await RunAsync(stopAtHalf: true), await RunAsync(stopAtHalf: false));
        if (
            !first.IsStopped
            || second.IsStopped
            || first.Progress.Done >= second.Progress.Done
            || second.Progress.Done != second.Progress.All
        )
            broken.Add($"{what}: it was not stopped at half and brought to its end");
        table.Append(
            CultureInfo.InvariantCulture,
            $"| {what} | {seconds:F1} | {second.Progress.All} | {first.NewEntries + second.NewEntries} | {first.NewPhotos + second.NewPhotos} | {MostSeconds:0} |\n"
        );
        if (seconds > MostSeconds)
            broken.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {seconds:F1} s, {MostSeconds:0} s are allowed"));

        async Task<MergeOutcome> RunAsync(bool stopAtHalf)
        {
            using var stop = new CancellationTokenSource();
            var watch = Stopwatch.StartNew();
            var before = TimeSpan.Zero;
            var told = new Told(p => (stopAtHalf && p.Done * 2 >= p.All ? stop : null)?.Cancel());
            var outcome = await new WorkshopMerge(store, store.Photos, TimeProvider.System).RunAsync(
                from,
                async cancel =>
                {
                    var began = watch.Elapsed;
                    var made = await Backup.MakeAsync(into, into + "-backups", TimeProvider.System.GetUtcNow(), 3, cancel);
                    before = watch.Elapsed - began;
                    return made.Folder;
                },
                told,
                stop.Token
            );
            seconds += (watch.Elapsed - before).TotalSeconds;
            return outcome;
        }
    }

    /// <summary>Every unit gets entries that the other copy knows nothing of.</summary>
    private static async Task GrowAsync(string folder, IReadOnlyList<Guid> ids, int seed)
    {
        await using var store = await Store.OpenAsync(folder, TimeProvider.System, CancellationToken.None);
        var (at, made) = (new DateTimeOffset(2027, 1, 4, 9, seed, 0, TimeSpan.Zero), 0);
        foreach (var part in ids.Chunk(50))
        {
            var units = new List<UnitEntries>();
            foreach (var id in part)
            {
                var last = (await store.ReadAsync(id, CancellationToken.None))!.Last.Id;
                var entries = new List<NewEntry>();
                for (var n = 0; n < EntriesApart; n++)
                {
                    var fact =
                        n == 0
                            ? (Fact)new FindingJudged("roller", "worn", seed == 1 ? Judgement.Confirmed : Judgement.Dismissed, "")
                            : new Noted("seen again");
                    var entry = new NewEntry(
                        new Guid(4000 + seed, 0, 0, [.. BitConverter.GetBytes(++made), 0, 0, 0, 0]),
                        at.AddMinutes(n * 2),
                        "bench",
                        fact
                    )
                    {
                        Bench = store.Bench,
                        After = [last],
                    };
                    last = entry.Id;
                    entries.Add(entry);
                }
                units.Add(new UnitEntries(id, entries));
            }
            await store.AppendAllAsync(units, CancellationToken.None);
        }
    }

    private static async Task<string> TextAsync(string folder, IReadOnlyList<Guid> ids)
    {
        await using var store = await Store.OpenAsync(folder, TimeProvider.System, CancellationToken.None);
        var text = new StringBuilder();
        foreach (var id in ids)
            text.Append(JournalFile.Write(id, (await store.ReadAsync(id, CancellationToken.None))!.Journal));
        return text.ToString();
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private sealed class Told(Action<MergeProgress> tell) : IProgress<MergeProgress>
    {
        public void Report(MergeProgress value) => tell(value);
    }
}
