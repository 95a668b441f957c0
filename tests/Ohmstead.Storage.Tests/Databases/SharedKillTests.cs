using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;

namespace Ohmstead.Storage.Tests.Databases;

/// <summary>
/// Three programs write to one database. One of them is killed, or the server is, or the way is cut, at moments drawn by a seed: whatever
/// one of them was told is kept, is there, once.
/// </summary>
[Collection(PostgresServer.Alone)]
public sealed class SharedKillTests(PostgresServer server) : IAsyncLifetime
{
    private const int Writers = 3;

    /// <summary>Then there is a new database, so that looking through it stays quick.</summary>
    private const int BlowsAPart = 50;

    private readonly TempFolder folder = new();
    private readonly ConcurrentQueue<string> said = new();
    private readonly KilledWriter?[] writers = new KilledWriter?[Writers];
    private CutLine line = null!;
    private string database = "";
    private string address = "";
    private int begun;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await server.StartedAsync();
        line = new CutLine(server.Port);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var writer in writers)
            writer?.Dispose();
        await line.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public async Task Six_blows_take_nothing_that_was_acknowledged() => Assert.True((await StrikeAsync(first: 0, blows: 6)).Photos > 0);

    [Fact, Trait("kind", "long")]
    public async Task A_thousand_blows_take_nothing_that_was_acknowledged()
    {
        var (entries, photos) = await new LongRun("database", 1000).GoOnAsync(
            BlowsAPart,
            lanes: 1,
            (first, count) => StrikeAsync(9000 + first, count)
        );
        Assert.True(entries >= 1000 && photos > 0, "too little was acknowledged: the test saw nothing");
    }

    /// <param name="first">The number of the first blow; it draws what comes.</param>
    private async Task<(int Entries, int Photos)> StrikeAsync(int first, int blows)
    {
        var random = new Random(first + 100);
        said.Clear();
        database = "killed_" + Draft.Name(first);
        await server.DatabaseAsync(database);
        address = server.AddressOf(database, line.Port);
        for (var n = 0; n < Writers; n++)
            Begin(n, first);
        await UntilMoreAsync(10);
        for (var blow = 0; blow < blows; blow++)
        {
            await Task.Delay(random.Next(150), Stop);
            await StrikeAsync(blow % 3, random, first);
            // Something must be at stake at the next blow.
            await UntilMoreAsync(3);
        }
        for (var n = 0; n < Writers; n++)
            await writers[n]!.KillAsync(Stop);
        return await LookAsync();
    }

    private async Task StrikeAsync(int what, Random random, int seed)
    {
        switch (what)
        {
            case 0:
                line.Cut();
                await Task.Delay(random.Next(100), Stop);
                line.Mend();
                break;
            case 1:
                server.Stop(random.Next(2) == 0 ? "immediate" : "fast");
                server.Start();
                break;
            default:
                var n = random.Next(Writers);
                await writers[n]!.KillAsync(Stop);
                Begin(n, seed);
                break;
        }
    }

    private void Begin(int n, int seed)
    {
        writers[n]?.Dispose();
        writers[n] = new KilledWriter(folder.Of(Draft.Name(n)), seed * 1000 + ++begun, address, said.Enqueue);
    }

    private async Task UntilMoreAsync(int lines)
    {
        var (before, end) = (said.Count, Stopwatch.GetTimestamp());
        while (said.Count < before + lines)
        {
            Assert.True(Stopwatch.GetElapsedTime(end) < TimeSpan.FromSeconds(60), "nothing was acknowledged for a minute");
            await Task.Delay(10, Stop);
        }
    }

    private async Task<(int Entries, int Photos)> LookAsync()
    {
        string[][] acknowledged = [.. said.Select(l => l.Split(' '))];
        await using var store = await Store.OpenSharedAsync(server.AddressOf(database), folder.Of("look"), Guid.Empty, Stop);
        var all = new HashSet<Guid>();
        foreach (var unit in acknowledged.Where(l => l[0] == "entry").GroupBy(l => Guid.Parse(l[1])))
        {
            var journal = (await store.ReadAsync(unit.Key, Stop))!.Journal;
            Assert.Equal(Enumerable.Range(1, journal.Length), journal.Select(e => e.Number));
            Assert.All(journal, e => Assert.True(all.Add(e.Id), "an entry is there twice"));
            var kept = journal.ToDictionary(e => e.Id, e => e.Number);
            Assert.All(unit, l => Assert.Equal(int.Parse(l[3], CultureInfo.InvariantCulture), kept.GetValueOrDefault(Guid.Parse(l[2]))));
        }
        string[] photos = [.. acknowledged.Where(l => l[0] == "photo").Select(l => l[1]).Distinct()];
        foreach (var hash in photos)
        {
            await using var content = (await store.Photos.OpenAsync(hash, Stop))!.Content;
            Assert.Equal(hash, Convert.ToHexStringLower(await SHA256.HashDataAsync(content, Stop)));
        }
        return (acknowledged.Count(l => l[0] == "entry"), photos.Length);
    }
}
