using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Storage.Backups;

/// <summary>A backup put back, into a folder of its own, after everything in it was looked at.</summary>
public static class Restore
{
    /// <summary>Restores a backup.</summary>
    /// <param name="backups">The folder of backups.</param>
    /// <param name="name">Which of them; null for the newest.</param>
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
            return Refused(
                new Problem(backups, $"holds no backup \"{name}\"", $"there are {string.Join(", ", names)}")
            );
        if (File.Exists(data) || (Directory.Exists(data) && Directory.EnumerateFileSystemEntries(data).Any()))
            return Refused(
                new Problem(data, "is not empty", "a backup goes into a new folder, so that nothing is overwritten")
            );
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
        var (source, copy) = (Path.Combine(folder.Of(name), SqliteFile.Name), Path.Combine(part, SqliteFile.Name));
        if (!await VerifiedCopy.MakeAsync(source, copy, manifest.Sha256, cancel))
            return Refused(
                new Problem(
                    source,
                    "is not as it was written (its hash differs)",
                    "restore another backup, with --backup"
                )
            );
        if (SqliteFile.Faults(copy) is { Count: > 0 } faults)
            return Refused([.. faults.Select(f => new Problem(source, f, "restore another backup, with --backup"))]);
        await using var context = new WorkshopContext(SqliteFile.ReadOnlyOptions(copy));
        await CheckJournalsAsync(context, source, manifest, problems, cancel);
        if (problems.Count > 0)
            return Refused([.. problems]);
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

    /// <summary>Every journal runs 1, 2, 3… to the number on its unit's card, and as much is there as the manifest says.</summary>
    private static async Task CheckJournalsAsync(
        WorkshopContext context,
        string source,
        BackupManifest manifest,
        List<Problem> problems,
        CancellationToken cancel
    )
    {
        var journals = await context
            .Entries.GroupBy(e => e.UnitId)
            .Select(g => new
            {
                UnitId = g.Key,
                Count = g.Count(),
                First = g.Min(e => e.Number),
                Last = g.Max(e => e.Number),
            })
            .ToDictionaryAsync(g => g.UnitId, cancel);
        foreach (var unit in await context.Units.Select(u => new { u.Id, u.LastNumber }).ToListAsync(cancel))
            if (
                !journals.TryGetValue(unit.Id, out var j)
                || j.First != 1
                || j.Last != j.Count
                || j.Last != unit.LastNumber
            )
                problems.Add(
                    new Problem(
                        source,
                        $"the journal of unit {unit.Id} has gaps",
                        "restore another backup, with --backup"
                    )
                );
        var entries = journals.Values.Sum(j => j.Count);
        if (entries != manifest.Entries)
            problems.Add(
                new Problem(
                    source,
                    string.Create(CultureInfo.InvariantCulture, $"holds {entries} entries"),
                    string.Create(CultureInfo.InvariantCulture, $"its manifest says {manifest.Entries}")
                )
            );
    }

    private static async Task<List<string>> PhotosAsync(
        WorkshopContext context,
        BackupFolder folder,
        string part,
        CancellationToken cancel
    )
    {
        var places = new PhotoFiles.PhotoPlaces(part);
        var damaged = new List<string>();
        foreach (var hash in await context.Photos.OrderBy(p => p.Hash).Select(p => p.Hash).ToListAsync(cancel))
            if (
                folder.Photos.Find(hash) is not { } found
                || !await VerifiedCopy.MakeAsync(
                    found.Path,
                    places.File(hash, Path.GetExtension(found.Path)),
                    hash,
                    cancel
                )
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
