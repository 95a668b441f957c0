using System.IO.Compression;
using Ohmstead.App.Demo;
using Ohmstead.App.Web;
using Ohmstead.Storage.Tests.Databases;

namespace Ohmstead.App.Tests.Commands;

/// <summary>The invented workshop in a club's database and back, as a person does it at the command line.</summary>
public sealed class MoveTests(PostgresServer server) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("ohmstead-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_invented_workshop_goes_into_a_database_into_a_backup_and_back_and_nothing_is_lost()
    {
        var (address, second) = (await server.DatabaseAsync("club"), await server.DatabaseAsync("club_again"));
        await using (var store = await Storage.Store.OpenAsync(Of("home"), TimeProvider.System, TestContext.Current.CancellationToken))
            await DemoWorkshop.FillAsync(
                new Bench(store, store.Photos, TimeProvider.System, Guid.CreateVersion7),
                TestContext.Current.CancellationToken
            );
        var before = Exported("home", "--database", "none");
        Assert.Contains(
            "Compared one by one: the same.",
            Done("move", "database", "--data", Of("home"), "--database", address),
            StringComparison.Ordinal
        );
        // From now on the folder says where the workshop is.
        Assert.Equal(before, Exported("home"));
        Assert.Contains("a workshop already", Refused("move", "database", "--data", Of("home")), StringComparison.Ordinal);
        Done("move", "folder", "--data", Of("back"), "--database", address);
        Assert.Equal(before, Exported("back"));
        Done("backup", Of("backups"), "--data", Of("home"));
        Assert.Contains(
            $"Start on it with: ohmstead --database \"{second}\"",
            Done("restore", Of("backups"), "--database", second),
            StringComparison.Ordinal
        );
        Assert.Equal(before, Exported("other", "--database", second));
        Assert.Contains("name the database", Refused("move", "folder", "--data", Of("new")), StringComparison.Ordinal);
        Assert.Contains(".pgpass", Refused("export", Of("x.zip"), "--database", address + ";Password=x"), StringComparison.Ordinal);
    }

    /// <summary>Every file of an export by its bytes; its table of contents holds the time.</summary>
    private List<(string Name, string Bytes)> Exported(string data, params string[] more)
    {
        var path = Of($"{Guid.NewGuid():N}.zip");
        Done(["export", path, "--data", Of(data), .. more]);
        using var zip = ZipFile.OpenRead(path);
        var files = new List<(string, string)>();
        foreach (var entry in zip.Entries.Where(e => e.FullName != "ohmstead.json").OrderBy(e => e.FullName, StringComparer.Ordinal))
        {
            using var content = entry.Open();
            using var bytes = new MemoryStream();
            content.CopyTo(bytes);
            files.Add((entry.FullName, Convert.ToHexString(bytes.ToArray())));
        }
        Assert.True(files.Count > 20, "too little was exported: the test saw nothing");
        return files;
    }

    private string Of(string name) => Path.Combine(folder, name);

    private static string Done(params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.True(code == 0, error);
        return output;
    }

    private static string Refused(params string[] arguments)
    {
        var (code, _, error) = Tool.Run(arguments);
        Assert.NotEqual(0, code);
        return error;
    }
}
