using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;

namespace Ohmstead.Storage.Tests;

/// <summary>A writer is killed, as a crash or a pulled plug of the program would, at moments drawn by a seed: whatever it was told is kept, is there.</summary>
public sealed class KillTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly HashSet<(Guid Unit, Guid Entry, int Number)> entries = [];
    private readonly HashSet<string> photos = [];
    private int allEntries;
    private int allPhotos;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public Task Eight_kills_take_nothing_that_was_acknowledged() => KillAsync(kills: 8, seed: 1000);

    [Fact, Trait("kind", "long")]
    public Task Two_hundred_kills_take_nothing_that_was_acknowledged() => KillAsync(kills: 200, seed: 5000);

    private async Task KillAsync(int kills, int seed)
    {
        var random = new Random(seed);
        var data = folder.Of("data");
        for (var kill = 0; kill < kills; kill++)
        {
            // Now and then a new folder, so that some kills fall into the making of the tables.
            if (kill % 8 == 0)
            {
                if (Directory.Exists(data))
                    Directory.Delete(data, recursive: true);
                entries.Clear();
                photos.Clear();
            }
            // Most while it writes; every fourth at any moment from the start of the process.
            var wait = TimeSpan.FromMilliseconds(random.Next(kill % 4 == 0 ? 1500 : 400));
            await RunAndKillAsync(data, seed + kill, wait, fromStart: kill % 4 == 0);
            await LookAsync(data, kill % 8 == 7 || kill == kills - 1);
        }
        TestContext.Current.SendDiagnosticMessage("{0} kills, {1} entries and {2} photos acknowledged", kills, allEntries, allPhotos);
        Assert.True(allEntries >= kills && allPhotos > 0, "too little was acknowledged: the test saw nothing");
    }

    private async Task RunAndKillAsync(string data, int seed, TimeSpan wait, bool fromStart)
    {
        var program = AppContext.BaseDirectory.Replace("Ohmstead.Storage.Tests", "Ohmstead.Storage.Killed", StringComparison.Ordinal);
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        foreach (
            var a in (string[])[Path.Combine(program, "Ohmstead.Storage.Killed.dll"), data, seed.ToString(CultureInfo.InvariantCulture)]
        )
            start.ArgumentList.Add(a);
        using var process = Process.Start(start)!;
        var lines = new ConcurrentQueue<string>();
        var isWriting = new TaskCompletionSource();
        var reading = Task.Run(
            async () =>
            {
                while (await process.StandardOutput.ReadLineAsync(CancellationToken.None) is { } line)
                {
                    lines.Enqueue(line);
                    if (line.StartsWith("entry", StringComparison.Ordinal))
                        isWriting.TrySetResult();
                }
                isWriting.TrySetResult();
            },
            Stop
        );
        if (!fromStart)
            await isWriting.Task.WaitAsync(TimeSpan.FromSeconds(60), Stop);
        await Task.Delay(wait, Stop);
        Assert.False(process.HasExited, "the writer ended by itself");
        process.Kill();
        await process.WaitForExitAsync(Stop);
        await reading;
        foreach (var line in lines.Where(l => l.EndsWith(" ok", StringComparison.Ordinal)))
            Remember(line.Split(' '));
    }

    private void Remember(string[] said)
    {
        if (said[0] == "entry" && entries.Add((Guid.Parse(said[1]), Guid.Parse(said[2]), int.Parse(said[3], CultureInfo.InvariantCulture))))
            allEntries++;
        if (said[0] == "photo" && photos.Add(said[1]))
            allPhotos++;
    }

    private async Task LookAsync(string data, bool withPhotos)
    {
        await using var store = await Store.OpenAsync(data, TimeProvider.System, Stop);
        Assert.Empty(SqliteFile.Faults(Path.Combine(data, SqliteFile.Name)));
        foreach (var unit in entries.GroupBy(e => e.Unit))
        {
            var journal = (await store.ReadAsync(unit.Key, Stop))!.Journal;
            Assert.Equal(Enumerable.Range(1, journal.Length), journal.Select(e => e.Number));
            Assert.Empty(unit.Select(e => (e.Entry, e.Number)).Except(journal.Select(e => (e.Id, e.Number))));
        }
        Assert.Empty(Directory.GetFiles(Path.Combine(data, "photos", "incoming")));
        if (!withPhotos)
            return;
        foreach (var hash in photos)
        {
            await using var content = (await store.Photos.OpenAsync(hash, Stop))!.Content;
            Assert.Equal(hash, Convert.ToHexStringLower(await SHA256.HashDataAsync(content, Stop)));
        }
    }
}
