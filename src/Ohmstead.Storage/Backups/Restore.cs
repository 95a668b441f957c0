using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Storage.Backups;

/// <summary>A backup put back, into a folder of its own, after everything in it was looked at.</summary>
public static class Restore
{
    /// <summary>Restores a backup.</summary>
    /// <param name="backups">The folder of backups.</param>
    /// <param name="name">Which of them; null for the one that holds most.</param>
    /// <param name="data">The new data folder: not there yet, or empty.</param>
    /// <param name="withoutDamagedPhotos">True to go on without photos that are missing or damaged; they are told.</param>
    /// <returns>What was restored; or every problem, and then nothing is left behind.</returns>
    public static async Task<Restored> RunAsync(
        string backups,
        string? name,
        string data,
        bool withoutDamagedPhotos,
        CancellationToken cancel
    )
    {
        (backups, data) = (Path.GetFullPath(backups), Path.GetFullPath(data));
        var folder = new BackupFolder(backups);
        var names = folder.Names();
        if (names.Count == 0)
            return Refused(new Problem(backups, "holds no backup", "a folder made by ohmstead backup is expected"));
        name ??= names[0];
        if (!names.Contains(name))
            return Refused(new Problem(backups, $"holds no backup \"{name}\"", $"there are {string.Join(", ", names)}"));
        if (File.Exists(data) || (Directory.Exists(data) && Directory.EnumerateFileSystemEntries(data).Any()))
            return Refused(new Problem(data, "is not empty", "a backup goes into a new folder, so that nothing is overwritten"));
        var part = data + ".restoring";
        if (Directory.Exists(part))
            Directory.Delete(part, recursive: true);
        try
        {
            var restored = await BuildAsync(folder, name, part, withoutDamagedPhotos, cancel);
            if (restored.Problems.Count > 0)
                return restored;
            if (Directory.Exists(data))
                Directory.Delete(data);
            Directory.Move(part, data);
            return restored;
        }
        finally
        {
            if (Directory.Exists(part))
                Directory.Delete(part, recursive: true);
        }
    }

    private static async Task<Restored> BuildAsync(
        BackupFolder folder,
        string name,
        string part,
        bool withoutDamagedPhotos,
        CancellationToken cancel
    )
    {
        var problems = new List<Problem>();
        if (BackupManifest.Read(Path.Combine(folder.Of(name), BackupManifest.Name), problems) is not { } manifest)
            return Refused([.. problems]);
        var (source, copy) = (folder.Database(name), Path.Combine(part, SqliteFile.Name));
        if (!await VerifiedCopy.MakeAsync(source, copy, manifest.Sha256, cancel))
            return Refused(new Problem(source, "is not as it was written (its hash differs)", "restore another backup, with --backup"));
        if (await SoundCopy.FaultsAsync(copy, cancel) is { Count: > 0 } faults)
            return Refused([.. faults.Select(f => new Problem(source, f, "restore another backup, with --backup"))]);
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(copy));
        if (await context.Entries.CountAsync(cancel) is var entries && entries != manifest.Entries)
            return Refused(
                new Problem(
                    source,
                    string.Create(CultureInfo.InvariantCulture, $"holds {entries} entries"),
                    string.Create(CultureInfo.InvariantCulture, $"its manifest says {manifest.Entries}")
                )
            );
        var damaged = await PhotosAsync(context, folder, part, cancel);
        var lost = damaged.Except(manifest.MissingPhotos).ToList();
        if (lost.Count > 0 && !withoutDamagedPhotos)
            return Refused([
                .. lost.Select(h => new Problem(
                    $"photo {h}",
                    "is missing from the backup, or damaged there",
                    "--without-damaged-photos restores the rest"
                )),
            ]);
        return new Restored([], name, manifest.Units, manifest.Entries, manifest.Photos - damaged.Count, damaged);
    }

    private static async Task<List<string>> PhotosAsync(WorkshopContext context, BackupFolder folder, string part, CancellationToken cancel)
    {
        var places = new PhotoFiles.PhotoPlaces(part);
        var damaged = new List<string>();
        foreach (var (hash, fileHash, _) in await PhotoList.ReadAsync(context, cancel))
            if (
                folder.Photos.Find(hash) is not { } found
                || !await VerifiedCopy.MakeAsync(found.Path, places.File(hash, Path.GetExtension(found.Path)), fileHash, cancel)
            )
                damaged.Add(hash);
        return damaged;
    }

    private static Restored Refused(params IReadOnlyList<Problem> problems) => new(problems, "", 0, 0, 0, []);
}

/// <summary>What was restored.</summary>
/// <param name="Problems">Why nothing was; empty when it went well.</param>
/// <param name="Backup">The backup's name.</param>
/// <param name="MissingPhotos">Photos that could not be brought back.</param>
public sealed record Restored(
    IReadOnlyList<Problem> Problems,
    string Backup,
    int Units,
    int Entries,
    int Photos,
    IReadOnlyList<string> MissingPhotos
);
