using Microsoft.Data.Sqlite;
using Ohmstead.Storage.Backups;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.Tests.Backups;

/// <summary>Backups made while the store is written to, put back, and looked at before they are.</summary>
public sealed class BackupTests : IAsyncLifetime
{
    private readonly TempFolder folder = new();
    private readonly Draft draft = new();
    private Store store = null!;
    private Guid unit;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Data => folder.Of("data");

    private string Backups => folder.Of("backups");

    public async ValueTask InitializeAsync()
    {
        store = await Store.OpenAsync(Data, TimeProvider.System, Stop);
        unit = draft.Id();
        await store.AppendAsync(unit, 0, [draft.TakenIn()], Stop);
        await PhotoAsync(1);
    }

    public async ValueTask DisposeAsync()
    {
        await store.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public async Task A_backup_taken_during_writes_restores_to_a_sound_store_with_all_that_was_acknowledged_before()
    {
        using var end = new CancellationTokenSource();
        using var written = new SemaphoreSlim(0);
        var acknowledged = 1;
        var writing = Task.Run(
            async () =>
            {
                for (var n = 2; !end.IsCancellationRequested; n++)
                {
                    if (n % 5 == 0)
                        await PhotoAsync(n);
                    else
                        await store.AppendAsync(unit, acknowledged, [draft.Note(Draft.Name(n))], Stop);
                    Volatile.Write(ref acknowledged, (await store.ReadAsync(unit, Stop))!.LastNumber);
                    written.Release();
                }
            },
            Stop
        );
        for (var n = 0; n < 3; n++)
        {
            while (Volatile.Read(ref acknowledged) < 20 * (n + 1))
                await await Task.WhenAny(written.WaitAsync(Stop), writing);
            var before = Volatile.Read(ref acknowledged);
            await BackupAsync(n);
            var to = folder.Of("restored-" + Draft.Name(n));
            var restored = await Restore.RunAsync(Backups, null, to, false, Stop);
            Assert.Empty(restored.Problems);
            await using var again = await Store.OpenAsync(to, TimeProvider.System, Stop);
            var journal = (await again.ReadAsync(unit, Stop))!.Journal;
            Assert.True(journal.Length >= before);
            var here = (await store.ReadAsync(unit, Stop))!.Journal;
            Assert.Equal(here.Take(journal.Length).Select(e => (e.Id, e.Number)), journal.Select(e => (e.Id, e.Number)));
            foreach (var e in journal)
                if (e.Fact is PhotoAdded p)
                    await (await again.Photos.OpenAsync(p.Photo, Stop))!.Content.DisposeAsync();
        }
        await end.CancelAsync();
        await writing;
    }

    [Fact]
    public async Task A_photo_is_copied_once_for_all_backups_and_old_backups_go()
    {
        Assert.Equal(1, (await BackupAsync(0)).NewPhotos);
        await PhotoAsync(2);
        var second = await BackupAsync(1);
        Assert.Equal((2, 1), (second.Photos, second.NewPhotos));
        for (var n = 2; n < 7; n++)
            Assert.Equal(0, (await BackupAsync(n)).NewPhotos);
        Assert.Equal(4, new BackupFolder(Backups).Names().Count);
        Assert.Equal(2, Directory.GetFiles(Path.Combine(Backups, "photos"), "*.jpg", SearchOption.AllDirectories).Length);
    }

    [Fact]
    public async Task Nothing_is_overwritten_and_what_is_not_there_is_said()
    {
        await BackupAsync(0);
        Directory.CreateDirectory(folder.Of("full"));
        await File.WriteAllTextAsync(folder.Of("full", "mine.txt"), "mine", Stop);
        Assert.Contains(
            "is not empty",
            Said(await Restore.RunAsync(Backups, null, folder.Of("full"), false, Stop)),
            StringComparison.Ordinal
        );
        Assert.Equal("mine", await File.ReadAllTextAsync(folder.Of("full", "mine.txt"), Stop));
        Assert.Contains(
            "no backup \"x\"",
            Said(await Restore.RunAsync(Backups, "x", folder.Of("new"), false, Stop)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "holds no backup",
            Said(await Restore.RunAsync(folder.Of("nowhere"), null, folder.Of("new"), false, Stop)),
            StringComparison.Ordinal
        );
        await Assert.ThrowsAsync<StoreUnusable>(() => Backup.MakeAsync(folder.Of("nowhere"), Backups, Draft.Noon, 4, Stop));
        await Assert.ThrowsAsync<StoreUnusable>(() => Backup.MakeAsync(Data, Data, Draft.Noon, 4, Stop));
    }

    [Fact]
    public async Task A_database_that_was_changed_is_not_restored()
    {
        var made = await BackupAsync(0);
        var database = Path.Combine(made.Folder, SqliteFile.Name);
        var bytes = await File.ReadAllBytesAsync(database, Stop);
        bytes[^100] ^= 0x40;
        await File.WriteAllBytesAsync(database, bytes, Stop);
        await RefusedAsync("its hash differs");
    }

    [Fact]
    public async Task A_journal_with_a_gap_is_not_restored_even_when_its_hash_is_right()
    {
        await store.AppendAsync(unit, 1, [draft.Note("a"), draft.Note("b")], Stop);
        var made = await BackupAsync(0);
        var database = Path.Combine(made.Folder, SqliteFile.Name);
        await using (var connection = new SqliteConnection($"Data Source={database};Pooling=False"))
        {
            await connection.OpenAsync(Stop);
            await using var delete = connection.CreateCommand();
            delete.CommandText = "DELETE FROM Entries WHERE Number = 2";
            await delete.ExecuteNonQueryAsync(Stop);
        }
        var manifest = Path.Combine(made.Folder, "manifest.json");
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(await File.ReadAllBytesAsync(database, Stop)));
        var text = await File.ReadAllTextAsync(manifest, Stop);
        await File.WriteAllTextAsync(manifest, System.Text.RegularExpressions.Regex.Replace(text, "[0-9a-f]{64}", hash), Stop);
        await RefusedAsync("has gaps");
        await File.WriteAllTextAsync(manifest, "{ \"ohmstead\": \"backup/1\", \"database\": 3 }", Stop);
        await RefusedAsync("$.at");
    }

    [Fact]
    public async Task A_damaged_photo_stops_the_restore_unless_the_rest_is_asked_for()
    {
        await BackupAsync(0);
        var photo = Directory.GetFiles(Path.Combine(Backups, "photos"), "*.jpg", SearchOption.AllDirectories).Single();
        await File.WriteAllBytesAsync(photo, Draft.Picture(99), Stop);
        await RefusedAsync(Path.GetFileNameWithoutExtension(photo));
        var restored = await Restore.RunAsync(Backups, null, folder.Of("rest"), true, Stop);
        Assert.Empty(restored.Problems);
        Assert.Equal([Path.GetFileNameWithoutExtension(photo)], restored.MissingPhotos);
    }

    [Fact]
    public async Task A_photo_gone_from_the_data_folder_is_told_by_the_backup_and_does_not_stop_its_restore()
    {
        var photo = Directory.GetFiles(Path.Combine(Data, "photos"), "*.jpg", SearchOption.AllDirectories).Single();
        File.Delete(photo);
        Assert.Equal([Path.GetFileNameWithoutExtension(photo)], (await BackupAsync(0)).MissingPhotos);
        Assert.Empty((await Restore.RunAsync(Backups, null, folder.Of("rest"), false, Stop)).Problems);
    }

    private async Task RefusedAsync(string why)
    {
        Assert.Contains(why, Said(await Restore.RunAsync(Backups, null, folder.Of("new"), false, Stop)), StringComparison.Ordinal);
        Assert.Equal(["backups", "data"], Directory.GetDirectories(folder.Path).Select(d => Path.GetFileName(d)).Order());
    }

    private static string Said(Restored restored) => string.Join('\n', restored.Problems);

    private Task<BackupMade> BackupAsync(int hour) => Backup.MakeAsync(Data, Backups, Draft.Noon.AddHours(hour), 4, Stop);

    private async Task PhotoAsync(int number)
    {
        using var picture = new MemoryStream(Draft.Picture(number));
        var kept = await store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop);
        await store.AppendAsync(unit, 1, [draft.Entry(new PhotoAdded(kept.Hash, "", ""))], Stop);
    }
}
