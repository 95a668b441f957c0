using Ohmstead.Storage.Backups;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.Tests.Backups;

/// <summary>Which backup counts as the last, which are never removed, and what is none.</summary>
public sealed class BackupOrderTests : IAsyncLifetime
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
    }

    public async ValueTask DisposeAsync()
    {
        await store.DisposeAsync();
        folder.Dispose();
    }

    [Fact]
    public async Task A_clock_that_was_once_ahead_neither_deletes_the_backup_just_made_nor_is_restored_from()
    {
        await BackupAsync(years: 4);
        for (var n = 0; n < 3; n++)
        {
            await NoteAsync();
            await BackupAsync(hours: n);
        }
        await NoteAsync();
        var made = await BackupAsync(hours: 9, kept: 1);
        Assert.True(Directory.Exists(made.Folder));
        Assert.DoesNotContain(new BackupFolder(Backups).Names(), n => n.StartsWith("2030", StringComparison.Ordinal));
        Assert.Equal(5, (await RestoreAsync("new")).Entries);
    }

    [Fact]
    public async Task Two_backups_of_one_moment_are_two()
    {
        await BackupAsync();
        await NoteAsync();
        await BackupAsync();
        Assert.Equal(2, new BackupFolder(Backups).Names().Count);
    }

    [Fact]
    public async Task The_last_three_that_were_proved_stay_however_few_are_asked_for()
    {
        var made = new List<string>();
        for (var n = 0; n < 6; n++)
        {
            await NoteAsync();
            made.Add(Path.GetFileName((await BackupAsync(hours: n, kept: 1)).Folder));
        }
        Assert.Equal([made[5], made[4], made[3]], new BackupFolder(Backups).Names());
        // One that rotted since is none of the three: the fourth stays for it.
        Spoil(new BackupFolder(Backups).Database(made[4]));
        await NoteAsync();
        made.Add(Path.GetFileName((await BackupAsync(hours: 7, kept: 1)).Folder));
        Assert.Equal([made[6], made[5], made[4], made[3]], new BackupFolder(Backups).Names());
    }

    [Fact]
    public async Task A_damaged_database_is_not_backed_up_and_pushes_out_no_good_one()
    {
        await store.AppendAsync(unit, 1, [.. Enumerable.Range(0, 400).Select(_ => draft.Note(new string('y', 300)))], Stop);
        var good = await BackupAsync();
        await store.DisposeAsync();
        Spoil(Path.Combine(Data, SqliteFile.Name));
        var said = await Assert.ThrowsAsync<StoreUnusable>(() => BackupAsync(hours: 1, kept: 1));
        Assert.Contains("is damaged", said.Message, StringComparison.Ordinal);
        Assert.Contains("No backup was made", said.Message, StringComparison.Ordinal);
        Assert.Equal([Path.GetFileName(good.Folder)], new BackupFolder(Backups).Names());
        Assert.Empty(Directory.GetDirectories(Backups, "*.part"));
        Assert.Empty((await RestoreAsync("new")).Problems);
    }

    [Fact]
    public async Task A_photo_that_rotted_in_the_backup_is_replaced_by_the_good_one()
    {
        using (var picture = new MemoryStream(Draft.Picture(1)))
        {
            var kept = await store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop);
            await store.AppendAsync(unit, 1, [draft.Entry(new PhotoAdded(kept.Hash, "", ""))], Stop);
        }
        await BackupAsync();
        var photo = Directory.GetFiles(Path.Combine(Backups, "photos"), "*.jpg", SearchOption.AllDirectories).Single();
        var whole = await File.ReadAllBytesAsync(photo, Stop);
        Spoil(photo);
        Assert.Equal((0, 1), await BackupAsync(hours: 1) is var made ? (made.NewPhotos, made.ReplacedPhotos) : default);
        Assert.Equal(whole, await File.ReadAllBytesAsync(photo, Stop));
        Assert.Empty((await RestoreAsync("new")).Problems);
    }

    [Fact]
    public async Task Every_photo_has_its_turn_to_be_read_again()
    {
        var kept = new List<string>();
        for (var n = 0; n < 5; n++)
        {
            using var picture = new MemoryStream(Draft.Picture(n));
            kept.Add((await store.Photos.KeepAsync(picture, 1_000_000, Draft.Noon, Stop)).Hash);
        }
        kept.Sort(StringComparer.Ordinal);
        Directory.CreateDirectory(Backups);
        var photos = new BackupPhotos(Backups, new(Data), new(Backups), mostPhotos: 2);
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(Path.Combine(Data, SqliteFile.Name)));
        // All are new, and the turn has come to the second.
        Assert.Equal(5, (await photos.TakeAsync(context, Stop)).New);
        foreach (var hash in kept)
            Spoil(new PhotoPlaces(Backups).Find(hash)!.Value.Path);
        Assert.Equal([2, 2, 1, 0], await ReplacedAsync(4));

        async Task<List<int>> ReplacedAsync(int times)
        {
            var replaced = new List<int>();
            for (var n = 0; n < times; n++)
                replaced.Add((await photos.TakeAsync(context, Stop)).Replaced);
            return replaced;
        }
    }

    [Fact]
    public async Task A_restore_says_what_the_backup_lacks_before_it_does_anything()
    {
        var first = await BackupAsync();
        var later = draft.Note("later");
        await store.AppendAsync(unit, 1, [later, draft.Note("later still")], Stop);
        var second = await BackupAsync(hours: 1);
        await NoteAsync();
        var losses = await RestoreLoss.LookAsync(Backups, Path.GetFileName(first.Folder), Data, Stop);
        Assert.Equal(
            [(Data, 1, 3, later.At), ($"backup {Path.GetFileName(second.Folder)}", 1, 2, later.At)],
            losses.Select(l => (l.Of, l.Units, l.Entries, l.From!.Value))
        );
        Assert.Contains("3 entries on 1 unit", losses[0].ToString(), StringComparison.Ordinal);
        // The one that holds most lacks one entry of the workshop and nothing of the other backup; a folder without one lacks nothing.
        Assert.Equal(1, Assert.Single(await RestoreLoss.LookAsync(Backups, null, Data, Stop)).Entries);
        Assert.Empty(await RestoreLoss.LookAsync(Backups, null, folder.Of("nowhere"), Stop));
    }

    [Fact]
    public async Task A_backup_that_holds_less_than_one_before_says_so()
    {
        await NoteAsync();
        await BackupAsync();
        await using (var other = await Store.OpenAsync(folder.Of("other"), TimeProvider.System, Stop))
            await other.AppendAsync(draft.Id(), 0, [draft.TakenIn()], Stop);
        var made = await Backup.MakeAsync(folder.Of("other"), Backups, Draft.Noon.AddHours(1), 1, Stop);
        Assert.Equal(1, made.FewerEntries);
        Assert.Equal(2, (await RestoreAsync("new")).Entries);
    }

    private Task NoteAsync() => store.AppendAsync(unit, 1, [draft.Note("a")], Stop);

    private Task<BackupMade> BackupAsync(int hours = 0, int years = 0, int kept = 10) =>
        Backup.MakeAsync(Data, Backups, Draft.Noon.AddHours(hours).AddYears(years), kept, Stop);

    private Task<Restored> RestoreAsync(string to) => Restore.RunAsync(Backups, null, folder.Of(to), false, Stop);

    /// <summary>Changes bytes in the middle; the length stays.</summary>
    private static void Spoil(string path)
    {
        var bytes = File.ReadAllBytes(path);
        bytes.AsSpan(bytes.Length / 2, Math.Min(4096, bytes.Length / 4)).Fill(0xA5);
        File.WriteAllBytes(path, bytes);
    }
}
