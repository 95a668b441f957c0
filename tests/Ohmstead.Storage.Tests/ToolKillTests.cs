using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;

namespace Ohmstead.Storage.Tests;

/// <summary>
/// The whole tool is killed while pages and photos go over HTTP, at moments drawn by a seed: every photo with its entry that the browser was
/// told is kept, is there, once.
/// </summary>
public sealed partial class ToolKillTests
{
    private const int KillsAFolder = 10;
    private const int Units = 3;
    private const string Sheet = "twin-175";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact, Trait("kind", "long")]
    public async Task Five_hundred_kills_of_the_whole_tool_take_nothing_that_was_acknowledged()
    {
        var (entries, photos) = await new LongRun("tool", 500).GoOnAsync(KillsAFolder, lanes: 1, KillAsync);
        Assert.True(entries >= 500 && photos >= 500, "too little was acknowledged: the test saw nothing");
    }

    private static async Task<(int Entries, int Photos)> KillAsync(int first, int kills)
    {
        using var folder = new TempFolder();
        var data = folder.Of("data");
        var draft = new Draft(first + 1);
        Guid[] units = [.. Enumerable.Range(0, Units).Select(_ => draft.Id())];
        await using (var store = await Store.OpenAsync(data, TimeProvider.System, Stop))
            foreach (var unit in units)
                await store.AppendAsync(unit, 0, [draft.TakenIn(sheetId: Sheet)], Stop);
        var kept = new Dictionary<Guid, (Guid Unit, string Hash)>();
        for (var kill = 0; kill < kills; kill++)
        {
            await RunAndKillAsync(data, units, new Random(first + kill), kept);
            await LookAsync(data, units, kept);
        }
        return (kept.Count, kept.Values.Select(k => k.Hash).Distinct().Count());
    }

    private static async Task RunAndKillAsync(string data, Guid[] units, Random random, Dictionary<Guid, (Guid Unit, string Hash)> kept)
    {
        var start = new ProcessStartInfo(Path.Combine(LongRun.Root, "ohmstead"), ["--data", data, "--port", "0"])
        {
            RedirectStandardOutput = true,
        };
        using var tool = Process.Start(start)!;
        try
        {
            using var http = new HttpClient { BaseAddress = await AddressAsync(tool), Timeout = TimeSpan.FromSeconds(60) };
            http.DefaultRequestHeaders.Add("Origin", http.BaseAddress!.GetLeftPart(UriPartial.Authority));
            var entering = Enumerable.Range(0, 2).Select(_ => EnterAsync(http, units, new Random(random.Next()), kept)).ToList();
            entering.Add(LookAroundAsync(http, units));
            await Task.Delay(random.Next(700), Stop);
            tool.Kill(entireProcessTree: true);
            await Task.WhenAll(entering);
        }
        finally
        {
            if (!tool.HasExited)
                tool.Kill(entireProcessTree: true);
            await tool.WaitForExitAsync(Stop);
        }
    }

    /// <summary>Photo after photo, until the tool is gone.</summary>
    private static async Task EnterAsync(HttpClient http, Guid[] units, Random random, Dictionary<Guid, (Guid Unit, string Hash)> kept)
    {
        while (true)
        {
            var (entry, unit) = (
                new Guid(random.Next(), (short)random.Next(), 0, [.. BitConverter.GetBytes(random.NextInt64())]),
                units[random.Next(Units)]
            );
            byte[] picture = Draft.Picture(random.Next());
            try
            {
                using var content = new ByteArrayContent(picture);
                using var answer = await http.PostAsync(
                    new Uri($"/units/{unit}/photos?entry={entry}&title=killed", UriKind.Relative),
                    content,
                    Stop
                );
                answer.EnsureSuccessStatusCode();
                lock (kept)
                    kept.Add(entry, (unit, ""));
            }
            catch (HttpRequestException broken) when (broken.StatusCode is null)
            {
                return;
            }
        }
    }

    private static async Task LookAroundAsync(HttpClient http, Guid[] units)
    {
        for (var n = 0; ; n++)
        {
            try
            {
                await http.GetByteArrayAsync(new Uri(n % 2 == 0 ? "/" : $"/units/{units[n % Units]}", UriKind.Relative), Stop);
            }
            catch (HttpRequestException broken) when (broken.StatusCode is null)
            {
                return;
            }
        }
    }

    private static async Task LookAsync(string data, Guid[] units, Dictionary<Guid, (Guid Unit, string Hash)> kept)
    {
        await using var store = await Store.OpenAsync(data, TimeProvider.System, Stop);
        Assert.Empty(SqliteFile.Faults(Path.Combine(data, SqliteFile.Name)));
        var there = new Dictionary<Guid, (Guid Unit, string Hash)>();
        foreach (var unit in units)
        {
            var journal = (await store.ReadAsync(unit, Stop))!.Journal;
            Assert.Equal(Enumerable.Range(1, journal.Length), journal.Select(e => e.Number));
            foreach (var entry in journal)
                if (entry.Fact is Workshop.Journal.PhotoAdded photo)
                    there.Add(entry.Id, (unit, photo.Photo));
        }
        foreach (var (entry, (unit, _)) in kept.ToList())
        {
            Assert.True(there.TryGetValue(entry, out var found) && found.Unit == unit, $"entry {entry} was acknowledged and is not there");
            kept[entry] = found;
        }
        foreach (var hash in there.Values.Select(t => t.Hash).Distinct())
        {
            await using var content = (await store.Photos.OpenAsync(hash, Stop))!.Content;
            Assert.Equal(hash, Convert.ToHexStringLower(await SHA256.HashDataAsync(content, Stop)));
        }
    }

    private static async Task<Uri> AddressAsync(Process tool)
    {
        while (await tool.StandardOutput.ReadLineAsync(Stop) is { } line)
            if (Address().Match(line) is { Success: true } found)
                return new Uri(found.Value);
        throw new InvalidOperationException("The tool ended without an address.");
    }

    [GeneratedRegex("http://[0-9.:]+/")]
    private static partial Regex Address();
}
