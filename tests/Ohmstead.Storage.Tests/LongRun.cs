using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Ohmstead.Storage.Tests;

/// <summary>
/// A run of hours that can be taken up again where it was stopped: how far it came stands in .build/kills, beside a line for each part that
/// was done. A part that was stopped in the middle is done again from its seed.
/// </summary>
/// <param name="name">Of the file.</param>
/// <param name="total">So many blows are one run; the next one begins anew.</param>
internal sealed class LongRun(string name, int total)
{
    private static string Folder => Path.Combine(Root, ".build", "kills");

    private readonly Lock door = new();
    private State now = new(0, 0, 0, 0);

    /// <summary>The repository, and what <c>./test long</c> built ahead in it.</summary>
    public static string Root { get; } = Find();

    private string FileName => Path.Combine(Folder, name + ".json");

    /// <summary>Does what is left, part by part.</summary>
    /// <param name="size">Blows a part.</param>
    /// <param name="lanes">So many parts at a time.</param>
    /// <param name="part">Does the blows of a part, from the number of its first; gives what was acknowledged: entries and photos.</param>
    /// <returns>What was acknowledged, over all parts.</returns>
    public async Task<(int Entries, int Photos)> GoOnAsync(int size, int lanes, Func<int, int, Task<(int Entries, int Photos)>> part)
    {
        Directory.CreateDirectory(Folder);
        if (
            File.Exists(FileName)
            && JsonSerializer.Deserialize<State>(await File.ReadAllTextAsync(FileName)) is { } kept
            && kept.Done < total
        )
            now = kept;
        var next = now.Done;
        var done = new SortedSet<int>();
        await Task.WhenAll(Enumerable.Range(0, lanes).Select(_ => Task.Run(LaneAsync)));
        return (now.Entries, now.Photos);

        async Task LaneAsync()
        {
            while (true)
            {
                int first;
                lock (door)
                {
                    if (next >= total)
                        return;
                    (first, next) = (next, next + size);
                }
                var began = Stopwatch.GetTimestamp();
                var (entries, photos) = await part(first, Math.Min(size, total - first));
                Keep(done, first, size, new(0, entries, photos, Stopwatch.GetElapsedTime(began).TotalSeconds));
            }
        }
    }

    /// <summary>Only what has no gap before it counts as done: the rest is repeated.</summary>
    private void Keep(SortedSet<int> done, int first, int size, State part)
    {
        lock (door)
        {
            done.Add(first);
            var upTo = now.Done;
            while (done.Remove(upTo))
                upTo = Math.Min(total, upTo + size);
            now = new(upTo, now.Entries + part.Entries, now.Photos + part.Photos, now.Seconds + part.Seconds);
            var next = FileName + ".next";
            File.WriteAllText(next, JsonSerializer.Serialize(now));
            File.Move(next, FileName, overwrite: true);
            File.AppendAllText(
                Path.ChangeExtension(FileName, ".log"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{now.Done} of {total}, {now.Entries} entries and {now.Photos} photos acknowledged and there, {now.Seconds:F0} s\n"
                )
            );
        }
    }

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("This is not within the repository.");
    }

    private sealed record State(int Done, int Entries, int Photos, double Seconds);
}
