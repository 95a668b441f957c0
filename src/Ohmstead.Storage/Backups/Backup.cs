using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Databases;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Backups;

/// <summary>Backups of a data folder, made while the tool runs on it. The database is copied whole, a photo once for all backups.</summary>
public static class Backup
{
    /// <summary>Makes one more backup.</summary>
    /// <param name="data">The data folder; it is only read.</param>
    /// <param name="to">The folder of backups; made when it is not there.</param>
    /// <param name="at">Names the backup.</param>
    /// <param name="kept">How many are kept, those that hold most; never fewer than the last three that were proved.</param>
    /// <exception cref="StoreUnusable">There is no workshop in <paramref name="data"/>, or it is damaged, or <paramref name="to"/> cannot be used.</exception>
    public static async Task<BackupMade> MakeAsync(string data, string to, DateTimeOffset at, int kept, CancellationToken cancel)
    {
        (data, to) = (Path.GetFullPath(data), Path.GetFullPath(to));
        var database = SqliteFile.In(data);
        if (data == to)
            throw new StoreUnusable($"{to} is the data folder itself. Name another folder, best on another disk");
        var source = new BackupSource(
            database,
            new PhotoPlaces(data),
            copy =>
            {
                SqliteFile.CopyInWords(database, copy);
                return Task.CompletedTask;
            },
            _ => Task.CompletedTask
        );
        return await BrokenDisk.InWordsAsync(to, () => MakeAsync(source, to, at, kept, cancel));
    }

    /// <summary>Makes one more backup of a workshop, of one in a database that is shared too: the backup is of the same kind.</summary>
    /// <param name="program">Another id for every program.</param>
    /// <exception cref="StoreUnusable">As above, or the database cannot be used.</exception>
    public static async Task<BackupMade> MakeAsync(
        WorkshopPlace place,
        string to,
        DateTimeOffset at,
        int kept,
        Guid program,
        CancellationToken cancel
    )
    {
        if (place.Database is not { } address)
            return await MakeAsync(place.Folder, to, at, kept, cancel);
        await using var store = await Store.OpenSharedAsync(address, place.Folder, program, cancel);
        return await MakeAsync(store, to, at, kept, cancel);
    }

    /// <summary>Makes one more backup of a workshop that is open.</summary>
    /// <exception cref="StoreUnusable">As above.</exception>
    public static async Task<BackupMade> MakeAsync(Store store, string to, DateTimeOffset at, int kept, CancellationToken cancel)
    {
        if (!store.Transactions.KeepsPhotos)
            return await MakeAsync(store.Folder, to, at, kept, cancel);
        var source = new BackupSource(
            "the database",
            new PhotoPlaces(store.Folder),
            copy => FileOf.MakeAsync(store, copy, cancel),
            hash => store.PhotoFolder.FindAsync(hash, cancel)
        );
        return await BrokenDisk.InWordsAsync(to, () => MakeAsync(source, Path.GetFullPath(to), at, kept, cancel));
    }

    /// <summary>What is backed up.</summary>
    /// <param name="Name">As it is told of.</param>
    /// <param name="Photos">Where its photos lie.</param>
    /// <param name="CopyAsync">Writes its database into a new file.</param>
    /// <param name="BringAsync">Brings a photo to where they lie, if it is not there.</param>
    private sealed record BackupSource(string Name, PhotoPlaces Photos, Func<string, Task> CopyAsync, Func<string, Task> BringAsync);

    private static async Task<BackupMade> MakeAsync(BackupSource source, string to, DateTimeOffset at, int kept, CancellationToken cancel)
    {
        Directory.CreateDirectory(to);
        using var mine = FolderLock.Take(to, "Or name another folder for the backups");
        var folder = new BackupFolder(to);
        var before = folder.Names().Select(folder.Manifest).FirstOrDefault();
        var name = folder.NameOf(at);
        var part = folder.Begin(name);
        try
        {
            var copy = Path.Combine(part, SqliteFile.Name);
            // The database first: a photo's file is written before its row, so whatever the copy speaks of is on the disk by now.
            await source.CopyAsync(copy);
            if (await SoundCopy.FaultsAsync(copy, cancel) is [var first, ..])
                throw new StoreUnusable($"{SqliteFile.Damaged(source.Name, first)}. No backup was made of it; those from before are kept");
            var (manifest, taken) = await DescribeAsync(copy, new(to, source.Photos, folder.Photos, bring: source.BringAsync), at, cancel);
            await File.WriteAllTextAsync(Path.Combine(part, BackupManifest.Name), manifest.Text(), cancel);
            folder.Finish(part, name);
            await folder.KeepAsync(kept, name, cancel);
            return new BackupMade(
                folder.Of(name),
                manifest.Units,
                manifest.Entries,
                manifest.Photos,
                taken.New,
                taken.Replaced,
                manifest.Bytes,
                manifest.MissingPhotos,
                Math.Max(0, (before?.Entries ?? 0) - manifest.Entries)
            );
        }
        finally
        {
            if (Directory.Exists(part))
                Directory.Delete(part, recursive: true);
        }
    }

    private static async Task<(BackupManifest Manifest, BackedUpPhotos Photos)> DescribeAsync(
        string copy,
        BackupPhotos photos,
        DateTimeOffset at,
        CancellationToken cancel
    )
    {
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(copy));
        var taken = await photos.TakeAsync(context, cancel);
        var (units, entries) = (await context.Units.CountAsync(cancel), await context.Entries.CountAsync(cancel));
        var documents = await context.Documents.CountAsync(cancel);
        var last = await context.Entries.Select(e => (DateTimeOffset?)e.At).MaxAsync(cancel);
        await using var bytes = File.OpenRead(copy);
        var hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(bytes, cancel));
        return (
            new BackupManifest(at, bytes.Length, hash, units, entries, documents, taken.All, last, IsChecked: true, taken.Missing),
            taken
        );
    }
}

/// <summary>A backup that was made.</summary>
/// <param name="Folder">Where it is.</param>
/// <param name="NewPhotos">Photos that no earlier backup had.</param>
/// <param name="ReplacedPhotos">Photos that were damaged in the folder of backups and are whole again.</param>
/// <param name="DatabaseBytes">Size of the database [bytes].</param>
/// <param name="MissingPhotos">Photos whose file is gone from the data folder, or damaged there.</param>
/// <param name="FewerEntries">So many entries fewer than an earlier backup holds; 0 when none holds more.</param>
public sealed record BackupMade(
    string Folder,
    int Units,
    int Entries,
    int Photos,
    int NewPhotos,
    int ReplacedPhotos,
    long DatabaseBytes,
    IReadOnlyList<string> MissingPhotos,
    int FewerEntries
);
