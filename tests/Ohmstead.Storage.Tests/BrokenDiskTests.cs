using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Backups;

namespace Ohmstead.Storage.Tests;

/// <summary>
/// A disk that is full or write-protected. The full one is the system's own device for it (/dev/full takes nothing, with the error of a
/// full disk) in place of the file that is written, and SQLite's own bound of a file's pages: both hold for root too.
/// </summary>
public sealed class BrokenDiskTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_full_disk_is_not_another_ohmstead()
    {
        File.CreateSymbolicLink(folder.Of("ohmstead.process"), "/dev/full");
        await (await OpenAsync()).DisposeAsync();
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_to_is_not_another_ohmstead()
    {
        // The kernel's own constants: nobody writes them, root neither.
        File.CreateSymbolicLink(folder.Of("ohmstead.lock"), "/proc/sys/kernel/osrelease");
        var said = await Assert.ThrowsAsync<StoreUnusable>(OpenAsync);
        Assert.DoesNotContain("another ohmstead", said.Message, StringComparison.Ordinal);
        Assert.Matches("permissions|write-protected", said.Message);
        Assert.Contains("--data", said.Message, StringComparison.Ordinal);
    }

    /// <summary>Names of errno(3) on Linux; what Windows calls the same lies in its documentation of system error codes.</summary>
    [Theory]
    [InlineData(11, true, "")]
    [InlineData(unchecked((int)0x80070020), true, "")]
    [InlineData(28, false, "the disk is full")]
    [InlineData(unchecked((int)0x80070070), false, "the disk is full")]
    [InlineData(30, false, "write-protected")]
    [InlineData(unchecked((int)0x80070013), false, "write-protected")]
    [InlineData(122, false, "takes no more")]
    [InlineData(5, false, "does not read or write")]
    [InlineData(40, false, "")]
    public void Only_a_file_that_another_program_has_is_in_use(int code, bool isInUse, string words)
    {
        var broken = new IOException("as the system says it", code);
        Assert.Equal(isInUse, BrokenDisk.IsInUse(broken));
        Assert.Equal(words.Length > 0, BrokenDisk.Words(broken) is not null);
        Assert.Contains(words, BrokenDisk.Words(broken) ?? "", StringComparison.Ordinal);
    }

    /// <summary>A lock that leads to itself: an error of the system that has no words of its own here.</summary>
    [Fact]
    public async Task A_lock_that_cannot_be_opened_is_not_another_ohmstead()
    {
        File.CreateSymbolicLink(folder.Of("ohmstead.lock"), "ohmstead.lock");
        var said = await Assert.ThrowsAsync<StoreUnusable>(OpenAsync);
        Assert.DoesNotContain("another ohmstead", said.Message, StringComparison.Ordinal);
        Assert.Contains("--data", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_backup_folder_that_cannot_be_written_to_is_not_another_ohmstead()
    {
        await (await OpenAsync()).DisposeAsync();
        Directory.CreateDirectory(folder.Of("backups"));
        File.CreateSymbolicLink(folder.Of("backups", "ohmstead.lock"), "/proc/sys/kernel/osrelease");
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => Backup.MakeAsync(folder.Path, folder.Of("backups"), Draft.Noon, 4, Stop));
        Assert.DoesNotContain("another ohmstead", said.Message, StringComparison.Ordinal);
        Assert.Matches("permissions|write-protected", said.Message);
        Assert.Contains("name another folder for the backups", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_entry_that_a_full_disk_does_not_take_is_refused_in_words_and_the_next_is_kept_when_there_is_room()
    {
        await using var store = await OpenAsync();
        var unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        var note = draft.Note(new string('y', 200_000));
        await BoundAsync(1);
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.AppendAsync(unit, 1, [note], Stop));
        Assert.Contains("the disk is full", said.Message, StringComparison.Ordinal);
        Assert.Equal(1, (await store.ReadAsync(unit, Stop))!.LastNumber);
        await BoundAsync(1_000_000);
        await store.AppendAsync(unit, 1, [note], Stop);
        Assert.Equal(2, (await store.ReadAsync(unit, Stop))!.LastNumber);
    }

    [Fact]
    public async Task A_photo_that_a_full_disk_does_not_take_is_refused_in_words_and_leaves_nothing()
    {
        await using var store = await OpenAsync();
        // The first that comes in is written under this name.
        File.CreateSymbolicLink(folder.Of("photos", "incoming", "1"), "/dev/full");
        using var picture = new MemoryStream(Draft.Picture(1));
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop));
        Assert.Contains("the disk is full", said.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Of("photos"), "*", SearchOption.AllDirectories));
        picture.Position = 0;
        Assert.Equal("", (await store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop)).Refused);
    }

    private Task<Store> OpenAsync() => Store.OpenAsync(folder.Path, TimeProvider.System, Stop);

    /// <summary>Bounds the pages of the database on the connection that the store uses next. SQLite takes no bound below what there is.</summary>
    private async Task BoundAsync(int pages)
    {
        await using var context = new WorkshopContext(SqliteFile.Options(folder.Of(SqliteFile.Name)));
        await using var connection = new SqliteConnection(context.Database.GetConnectionString());
        await connection.OpenAsync(Stop);
        await using var bound = connection.CreateCommand();
        bound.CommandText = FormattableString.Invariant($"PRAGMA max_page_count = {pages}");
        await bound.ExecuteNonQueryAsync(Stop);
    }
}
