using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;

namespace Ohmstead.Storage.Tests;

/// <summary>What is found in the folder at the start: a database that is lost, damaged, newer, or another program's is said, and stays as it is.</summary>
public sealed class StartTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Database => folder.Of(SqliteFile.Name);

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(true, "is missing")]
    [InlineData(false, "is empty")]
    public async Task A_database_that_was_lost_beside_photos_is_never_begun_anew(bool isGone, string words)
    {
        await FillAsync();
        foreach (var rest in (string[])["-wal", "-shm"])
            File.Delete(Database + rest);
        if (isGone)
            File.Delete(Database);
        else
            await File.WriteAllBytesAsync(Database, [], Stop);
        var said = await RefusedAsync();
        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.Contains("photos beside it", said, StringComparison.Ordinal);
        Assert.Contains("ohmstead restore", said, StringComparison.Ordinal);
        Assert.Equal(0, File.Exists(Database) ? new FileInfo(Database).Length : 0);
    }

    [Fact]
    public async Task A_database_without_a_table_beside_photos_is_not_an_empty_workshop()
    {
        await FillAsync();
        File.Delete(Database);
        SqliteFile.Prepare(Database);
        Assert.Contains("photos beside it", await RefusedAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_database_is_said_at_the_start_and_left_as_it_is()
    {
        await FillAsync(entries: 400);
        var bytes = await File.ReadAllBytesAsync(Database, Stop);
        bytes.AsSpan(bytes.Length / 2, 4096).Fill(0xA5);
        await File.WriteAllBytesAsync(Database, bytes, Stop);
        Assert.Contains("is damaged", await RefusedAsync(), StringComparison.Ordinal);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(Database, Stop));
    }

    [Fact]
    public async Task A_database_of_a_newer_version_is_refused_and_the_copy_from_before_goes_back_in_its_place()
    {
        var unit = await FillAsync();
        OwnCopies.Make(folder.Path, Database, Draft.Noon);
        await RunAsync("INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Later', '99.0.0')");
        await RunAsync("ALTER TABLE Units ADD COLUMN Later TEXT NOT NULL DEFAULT ''");
        var newer = SHA256.HashData(await File.ReadAllBytesAsync(Database, Stop));
        var said = await RefusedAsync();
        Assert.Contains("newer Ohmstead", said, StringComparison.Ordinal);
        Assert.Contains("copies", said, StringComparison.Ordinal);
        Assert.Equal(newer, SHA256.HashData(await File.ReadAllBytesAsync(Database, Stop)));
        File.Copy(Directory.GetFiles(folder.Of("copies"), "*.db").Single(), Database, overwrite: true);
        await using var store = await OpenAsync();
        Assert.Equal("tag 12", (await store.ReadAsync(unit, Stop))!.Card.Tag);
    }

    [Fact]
    public async Task A_database_of_another_program_gets_no_tables_of_ours()
    {
        await RunAsync("CREATE TABLE Recipes (Id INTEGER PRIMARY KEY)");
        Assert.Contains("another program", await RefusedAsync(), StringComparison.Ordinal);
        await using var context = new WorkshopContext(SqliteFile.Options(Database));
        Assert.False((await context.Database.GetAppliedMigrationsAsync(Stop)).Any());
    }

    private async Task<Guid> FillAsync(int entries = 1)
    {
        await using var store = await OpenAsync();
        var unit = draft.Id();
        var notes = Enumerable.Range(0, entries).Select(_ => draft.Note(new string('y', 300)));
        await store.AppendAsync(unit, 0, [draft.TakenIn(), .. notes], Stop);
        using var picture = new MemoryStream(Draft.Picture(1));
        await store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop);
        return unit;
    }

    private async Task RunAsync(string command)
    {
        await using (var context = new WorkshopContext(SqliteFile.Options(Database)))
            await context.Database.ExecuteSqlRawAsync(command, Stop);
        SqliteFile.Close(Database);
    }

    private async Task<string> RefusedAsync() => (await Assert.ThrowsAsync<StoreUnusable>(OpenAsync)).Message;

    private Task<Store> OpenAsync() => Store.OpenAsync(folder.Path, TimeProvider.System, Stop);
}
