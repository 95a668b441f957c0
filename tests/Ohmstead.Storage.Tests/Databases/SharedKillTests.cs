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
    private readonly TempFolder folder = new();
    private readonly ConcurrentQueue<string> said = new();
    private readonly Process?[] writers = new Process?[Writers];
    private CutLine line = null!;
    private string address = "";
    private int begun;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await server.DatabaseAsync("killed");
        line = new CutLine(server.Port);
        address = server.AddressOf("killed", line.Port);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var writer in writers)
        {
            writer?.Kill();
            writer?.Dispose();
        }
        await line.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public Task Six_blows_take_nothing_that_was_acknowledged() => StrikeAsync(blows: 6, seed: 100);

    [Fact, Trait("kind", "long")]
    public Task A_thousand_blows_take_nothing_that_was_acknowledged() => StrikeAsync(blows: 1000, seed: 9000);

    private async Task StrikeAsync(int blows, int seed)
    {
        var random = new Random(seed);
        for (var n = 0; n < Writers; n++)
            Begin(n, seed);
        await UntilMoreAsync(10);
        for (var blow = 0; blow < blows; blow++)
        {
            await Task.Delay(random.Next(150), Stop);
            switch (blow % 3)
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
                    Assert.False(writers[n]!.HasExited, "the writer ended by itself");
                    writers[n]!.Kill();
                    await writers[n]!.WaitForExitAsync(Stop);
                    Begin(n, seed);
                    break;
            }
            // Something must be at stake at the next blow.
            await UntilMoreAsync(3);
            if (blow % 100 == 99)
                await LookAsync(withPhotos: false);
        }
        for (var n = 0; n < Writers; n++)
        {
            writers[n]!.Kill();
            await writers[n]!.WaitForExitAsync(Stop);
        }
        await LookAsync(withPhotos: true);
        TestContext.Current.SendDiagnosticMessage("{0} blows, {1} lines acknowledged", blows, said.Count);
        Assert.True(
            said.Count(l => l.StartsWith("photo", StringComparison.Ordinal)) > 0,
            "no photo was acknowledged: the test saw nothing of them"
        );
    }

    private void Begin(int n, int seed)
    {
        var program = AppContext.BaseDirectory.Replace("Ohmstead.Storage.Tests", "Ohmstead.Storage.Killed", StringComparison.Ordinal);
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        foreach (
            var a in (string[])
                [
                    Path.Combine(program, "Ohmstead.Storage.Killed.dll"),
                    folder.Of(Draft.Name(n)),
                    (seed + ++begun).ToString(CultureInfo.InvariantCulture),
                    address,
                ]
        )
            start.ArgumentList.Add(a);
        writers[n]?.Dispose();
        var process = writers[n] = Process.Start(start)!;
        process.OutputDataReceived += (_, e) =>
        {
            if (e.Data is { } text && text.EndsWith(" ok", StringComparison.Ordinal))
                said.Enqueue(text);
        };
        process.BeginOutputReadLine();
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

    private async Task LookAsync(bool withPhotos)
    {
        string[][] acknowledged = [.. said.Select(l => l.Split(' '))];
        await using var store = await Store.OpenSharedAsync(server.AddressOf("killed"), folder.Of("look"), Guid.Empty, Stop);
        var all = new HashSet<Guid>();
        foreach (var unit in acknowledged.Where(l => l[0] == "entry").GroupBy(l => Guid.Parse(l[1])))
        {
            var journal = (await store.ReadAsync(unit.Key, Stop))!.Journal;
            Assert.Equal(Enumerable.Range(1, journal.Length), journal.Select(e => e.Number));
            Assert.All(journal, e => Assert.True(all.Add(e.Id), "an entry is there twice"));
            var kept = journal.ToDictionary(e => e.Id, e => e.Number);
            Assert.All(unit, l => Assert.Equal(int.Parse(l[3], CultureInfo.InvariantCulture), kept.GetValueOrDefault(Guid.Parse(l[2]))));
        }
        if (!withPhotos)
            return;
        foreach (var hash in acknowledged.Where(l => l[0] == "photo").Select(l => l[1]).Distinct())
        {
            await using var content = (await store.Photos.OpenAsync(hash, Stop))!.Content;
            Assert.Equal(hash, Convert.ToHexStringLower(await SHA256.HashDataAsync(content, Stop)));
        }
    }
}
