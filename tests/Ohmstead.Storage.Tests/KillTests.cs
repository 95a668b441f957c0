using System.Globalization;
using System.Security.Cryptography;

namespace Ohmstead.Storage.Tests;

/// <summary>A writer is killed, as a crash or a pulled plug of the program would, at moments drawn by a seed: whatever it was told is kept, is there.</summary>
public sealed class KillTests
{
    /// <summary>Then there is a new folder, so that some kills fall into the making of the tables.</summary>
    private const int KillsAFolder = 8;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Eight_kills_take_nothing_that_was_acknowledged()
    {
        var (entries, photos) = await KillAsync(first: 1000, KillsAFolder);
        Assert.True(entries >= KillsAFolder && photos > 0, "too little was acknowledged: the test saw nothing");
    }

    [Fact, Trait("kind", "long")]
    public async Task Ten_thousand_kills_take_nothing_that_was_acknowledged()
    {
        const int kills = 10_000;
        var run = new LongRun("writer", kills);
        var (entries, photos) = await run.GoOnAsync(KillsAFolder, lanes: 2, (first, count) => KillAsync(5000 + first, count));
        TestContext.Current.SendDiagnosticMessage("{0} kills, {1} entries and {2} photos acknowledged", kills, entries, photos);
        Assert.True(entries >= kills && photos > 0, "too little was acknowledged: the test saw nothing");
    }

    /// <param name="first">The seed of the first kill.</param>
    private static async Task<(int Entries, int Photos)> KillAsync(int first, int kills)
    {
        using var folder = new TempFolder();
        var data = folder.Of("data");
        var entries = new HashSet<(Guid Unit, Guid Entry, int Number)>();
        var photos = new HashSet<string>();
        for (var kill = 0; kill < kills; kill++)
        {
            var random = new Random(first + kill);
            using var writer = new KilledWriter(data, first + kill);
            // Most while it writes; every fourth at any moment from the start of the process.
            if (kill % 4 != 0)
                await writer.WritesAsync(Stop);
            await Task.Delay(random.Next(kill % 4 == 0 ? 900 : 150), Stop);
            await writer.KillAsync(Stop);
            foreach (var said in writer.Said)
                if (said[0] == "entry")
                    entries.Add((Guid.Parse(said[1]), Guid.Parse(said[2]), int.Parse(said[3], CultureInfo.InvariantCulture)));
                else if (said[0] == "photo")
                    photos.Add(said[1]);
            await LookAsync(data, entries, kill == kills - 1 ? photos : []);
        }
        return (entries.Count, photos.Count);
    }

    private static async Task LookAsync(string data, HashSet<(Guid Unit, Guid Entry, int Number)> entries, HashSet<string> photos)
    {
        await using var store = await Store.OpenAsync(data, TimeProvider.System, Stop);
        Assert.Empty(SqliteFile.Faults(Path.Combine(data, SqliteFile.Name)));
        var all = new HashSet<Guid>();
        foreach (var unit in entries.GroupBy(e => e.Unit))
        {
            var journal = (await store.ReadAsync(unit.Key, Stop))!.Journal;
            Assert.Equal(Enumerable.Range(1, journal.Length), journal.Select(e => e.Number));
            Assert.All(journal, e => Assert.True(all.Add(e.Id), "an entry is there twice"));
            Assert.Empty(unit.Select(e => (e.Entry, e.Number)).Except(journal.Select(e => (e.Id, e.Number))));
        }
        Assert.Empty(Directory.GetFiles(Path.Combine(data, "photos", "incoming")));
        foreach (var hash in photos)
        {
            await using var content = (await store.Photos.OpenAsync(hash, Stop))!.Content;
            Assert.Equal(hash, Convert.ToHexStringLower(await SHA256.HashDataAsync(content, Stop)));
        }
    }
}
