using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Backups;

/// <summary>Backups of a data folder, made while the tool runs on it. The database is copied whole, a photo once for all backups.</summary>
public static class Backup
{
    /// <summary>Makes one more backup.</summary>
    /// <param name="data">The data folder; it is only read.</param>
    /// <param name="to">The folder of backups; made when it is not there.</param>
    /// <param name="at">Names the backup.</param>
    /// <param name="kept">How many are kept, the newest; at least 1.</param>
    /// <exception cref="StoreUnusable">There is no workshop in <paramref name="data"/>, or <paramref name="to"/> cannot be used.</exception>
    public static async Task<BackupMade> MakeAsync(
        string data,
        string to,
        DateTimeOffset at,
        int kept,
        CancellationToken cancel
    )
    {
        (data, to) = (Path.GetFullPath(data), Path.GetFullPath(to));
        var database = SqliteFile.In(data);
        if (data == to)
            throw new StoreUnusable($"{to} is the data folder itself; name another folder, best on another disk");
        Directory.CreateDirectory(to);
        using var mine = FolderLock.Take(to, "Or name another folder for the backups");
        var folder = new BackupFolder(to);
        var name = BackupFolder.NameOf(at);
        var part = folder.Begin(name);
        var copy = Path.Combine(part, SqliteFile.Name);
        // The database first: a photo's file is written before its row, so whatever the copy speaks of is on the disk by now.
        SqliteFile.CopyInWords(database, copy);
        var (manifest, newPhotos) = await DescribeAsync(copy, new PhotoPlaces(data), folder.Photos, at, cancel);
        await File.WriteAllTextAsync(Path.Combine(part, BackupManifest.Name), manifest.Text(), cancel);
        folder.Finish(part, name);
        folder.Keep(kept);
        return new BackupMade(
            folder.Of(name),
            manifest.Units,
            manifest.Entries,
            manifest.Photos,
            newPhotos,
            manifest.Bytes,
            manifest.MissingPhotos
        );
    }

    private static async Task<(BackupManifest Manifest, int NewPhotos)> DescribeAsync(
        string copy,
        PhotoPlaces from,
        PhotoPlaces to,
        DateTimeOffset at,
        CancellationToken cancel
    )
    {
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(copy));
        var photos = await context.Photos.OrderBy(p => p.Hash).Select(p => new { p.Hash, p.Bytes }).ToListAsync(cancel);
        var (missing, fresh) = (new List<string>(), 0);
        foreach (var photo in photos)
        {
            if (to.Find(photo.Hash) is { } there && new FileInfo(there.Path).Length == photo.Bytes)
                continue;
            if (
                from.Find(photo.Hash) is { } found
                && await VerifiedCopy.MakeAsync(
                    found.Path,
                    to.File(photo.Hash, Path.GetExtension(found.Path)),
                    photo.Hash,
                    cancel
                )
            )
                fresh++;
            else
                missing.Add(photo.Hash);
        }
        var (units, entries) = (await context.Units.CountAsync(cancel), await context.Entries.CountAsync(cancel));
        await using var bytes = File.OpenRead(copy);
        var hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(bytes, cancel));
        return (new BackupManifest(at, bytes.Length, hash, units, entries, photos.Count, missing), fresh);
    }
}

/// <summary>A backup that was made.</summary>
/// <param name="Folder">Where it is.</param>
/// <param name="NewPhotos">Photos that no earlier backup had.</param>
/// <param name="DatabaseBytes">Size of the database [bytes].</param>
/// <param name="MissingPhotos">Photos whose file is gone from the data folder, or damaged there.</param>
public sealed record BackupMade(
    string Folder,
    int Units,
    int Entries,
    int Photos,
    int NewPhotos,
    long DatabaseBytes,
    IReadOnlyList<string> MissingPhotos
);
