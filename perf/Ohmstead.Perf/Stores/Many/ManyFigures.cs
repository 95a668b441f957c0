using System.Data.Common;
using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Npgsql;
using Ohmstead.Storage;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Perf.Stores.Many;

/// <summary>One bench with very many units, in a folder and in a database: the pages of the real process, and what grows with the units.</summary>
internal static class ManyFigures
{
    /// <summary>In front of every id that the real writer makes here.</summary>
    public const int Seed = 0x0A11CE;

    private const int PhotosAUnit = 2;
    private const int ReadingsAUnit = 20;
    private const int Runs = 60;

    private static readonly int[] Sizes = [1000, 10_000, 100_000];

    /// <param name="arguments">Sizes, all three where they are left out; <c>folder</c> or <c>database</c> for one store only.</param>
    public static async Task<int> RunAsync(string[] arguments)
    {
        int[] sizes = [.. arguments.Where(a => char.IsDigit(a[0])).Select(a => int.Parse(a, CultureInfo.InvariantCulture))];
        sizes = sizes.Length == 0 ? Sizes : sizes;
        var table = new ManyTable(sizes, Runs);
        if (!arguments.Contains("database"))
            await FolderAsync(sizes, table);
        if (!arguments.Contains("folder"))
            await DatabaseAsync(sizes, table);
        return table.Report(
            FormattableString.Invariant(
                $"{ReadingsAUnit} readings, {PhotosAUnit} photos and 6 notes a unit, one unit in ten on the bench. {Grown.Templates} units were written by the tool; the others are copies of their rows under other ids, tags and times, of which a sample was held against what the tool writes of the same entries, column by column. {Runs} of each page after 5, each unit's page of another unit."
            )
        );
    }

    private static async Task FolderAsync(int[] sizes, ManyTable table)
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-many-").FullName;
        try
        {
            var data = Path.Combine(folder, "data");
            IReadOnlyList<Guid> ids;
            await using (var store = await Store.OpenAsync(data, TimeProvider.System))
                ids = await FillAsync(store);
            var file = Path.Combine(data, "workshop.db");
            foreach (var units in sizes)
            {
                await using (var connection = new SqliteConnection($"Data Source={file};Pooling=false"))
                    await GrowAsync(connection, isPostgres: false, units);
                if (units == sizes[0])
                    await Sampled.CheckAsync(data, Path.Combine(folder, "sampled"), [.. ids.Take(4).Select(i => Grown.IdOf(i, 1))]);
                await MeasureAsync("folder", units, table, ids, ["--data", data], () => Task.FromResult(new FileInfo(file).Length / 1e6));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task DatabaseAsync(int[] sizes, ManyTable table)
    {
        await using var cluster = await Cluster.StartAsync();
        var folder = Directory.CreateTempSubdirectory("ohmstead-many-").FullName;
        try
        {
            var address = await cluster.DatabaseAsync("many");
            IReadOnlyList<Guid> ids;
            await using (var store = await Store.OpenSharedAsync(address, Path.Combine(folder, "fill"), Guid.NewGuid()))
                ids = await FillAsync(store);
            foreach (var units in sizes)
            {
                await using (var connection = new NpgsqlConnection(address + ";Pooling=false"))
                    await GrowAsync(connection, isPostgres: true, units);
                string[] start = ["--database", address, "--data", Path.Combine(folder, "place")];
                await MeasureAsync("database", units, table, ids, start, () => MegabytesAsync(address));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<IReadOnlyList<Guid>> FillAsync(Store store)
    {
        var sheet = RepositoryRoot.Sample;
        var filled = new FilledStore(store, Seed, PhotosAUnit, ReadingsAUnit);
        await filled.FillAsync(
            sheet.Id,
            await File.ReadAllTextAsync(RepositoryRoot.SamplePath),
            [.. sheet.Readings.Select(r => r.Id)],
            CancellationToken.None,
            Grown.Templates
        );
        return filled.Ids;
    }

    private static async Task GrowAsync(DbConnection connection, bool isPostgres, int units)
    {
        await connection.OpenAsync();
        var began = Stopwatch.GetTimestamp();
        await new Grown(connection, isPostgres).GrowAsync(units);
        Console.Error.WriteLine(
            FormattableString.Invariant(
                $"{(isPostgres ? "database" : "folder")}: {units} units, {Stopwatch.GetElapsedTime(began).TotalSeconds:F0} s"
            )
        );
    }

    private static async Task<double> MegabytesAsync(string address)
    {
        await using var connection = new NpgsqlConnection(address + ";Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand("SELECT pg_database_size(current_database())", connection);
        return (long)(await command.ExecuteScalarAsync())! / 1e6;
    }

    private static async Task MeasureAsync(
        string store,
        int units,
        ManyTable table,
        IReadOnlyList<Guid> ids,
        string[] start,
        Func<Task<double>> megabytes
    )
    {
        var began = Stopwatch.GetTimestamp();
        using var server = ServerFigures.Start([.. start, "--port", "0"]);
        try
        {
            using var http = new HttpClient { BaseAddress = await ServerFigures.AddressAsync(server), Timeout = TimeSpan.FromMinutes(5) };
            await ServerFigures.GetAsync(http, "/");
            table.Put(store, units, "first page after the start", "s", [Stopwatch.GetElapsedTime(began).TotalSeconds]);
            var (next, rounds) = (0, units / Grown.Templates);
            Guid Any() => ++next % rounds is var round and > 0 ? Grown.IdOf(ids[next * 37 % ids.Count], round) : ids[next * 37 % ids.Count];
            foreach (
                var (what, path, isBound) in ((string, Func<string>, bool)[])
                    [
                        ("start page", () => "/", true),
                        ("search, two words that most units have", () => "/search?words=pitt+copper", true),
                        (
                            "search, one unit's tag",
                            () => FormattableString.Invariant($"/search?words=0{next++ % 2}1{next % 10}-{rounds - 1}"),
                            true
                        ),
                        ("search, nothing found", () => "/search?words=nowhere", true),
                        ("search, a word that is there beside one that is not", () => "/search?words=copper+nowhere", true),
                        ("a unit's page", () => $"/units/{Any()}", true),
                        ("its look-over", () => $"/units/{Any()}/look-over", true),
                        ("all that were handed back", () => "/handed-back", false),
                        ("taking in a unit", () => "/units/new", false),
                        ("the drawer", () => "/drawer", false),
                        ("the bench day", () => "/day", false),
                    ]
            )
                table.Put(store, units, what, "ms", await TimesAsync(() => ServerFigures.GetAsync(http, path()), isBound), isBound);
            table.Put(
                store,
                units,
                "an entry with a photo, kept",
                "ms",
                await TimesAsync(() => ServerFigures.PostAsync(http, Any().ToString()), true)
            );
            server.Refresh();
            table.Put(store, units, "most memory of the process", "MB", [server.PeakWorkingSet64 / 1e6]);
            table.Put(store, units, "the database", "MB", [await megabytes()]);
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
        }
    }

    /// <summary>What takes seconds is not asked for so often, when no bound is held against it.</summary>
    private static async Task<double[]> TimesAsync(Func<Task> ask, bool isBound)
    {
        var times = new List<double>();
        var began = Stopwatch.GetTimestamp();
        for (var n = -5; n < Runs; n++)
        {
            var start = Stopwatch.GetTimestamp();
            await ask();
            if (n >= 0)
                times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            if (n >= 4 && Stopwatch.GetElapsedTime(began).TotalSeconds > (isBound ? 60 : 10))
                break;
        }
        return [.. times];
    }
}
