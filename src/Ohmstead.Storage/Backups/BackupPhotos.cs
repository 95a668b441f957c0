using System.Security.Cryptography;
using System.Text;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Backups;

/// <summary>
/// The photos of a folder of backups. A new one is copied once for all backups. Those there are read again by and by, so much at every
/// backup, each in its turn: one that rotted is replaced by the one of the data folder.
/// </summary>
/// <param name="mostPhotos">So many are read again at a time.</param>
/// <param name="bring">Brings a photo to <paramref name="from"/> where it may lie elsewhere.</param>
internal sealed class BackupPhotos(
    string folder,
    PhotoPlaces from,
    PhotoPlaces to,
    int mostPhotos = 2_000,
    Func<string, Task>? bring = null
)
{
    /// <summary>Where the last backup left off, in a file of its own.</summary>
    private const string TurnName = "photos-checked-to.txt";

    /// <summary>What a slow stick reads in some ten seconds.</summary>
    private const long MostBytes = 256_000_000;

    /// <summary>Brings the photos of a database in, and looks through the next of those that are here.</summary>
    public async Task<BackedUpPhotos> TakeAsync(WorkshopContext context, CancellationToken cancel)
    {
        var photos = await PhotoList.ReadAsync(context, cancel);
        var (missing, fresh, replaced) = (new List<string>(), 0, 0);
        var turn = InTurn(photos.ConvertAll(p => (p.Hash, p.Bytes)));
        foreach (var (hash, fileHash, bytes) in photos)
        {
            var there = to.Find(hash)?.Path;
            var isSound =
                there is not null
                && new FileInfo(there).Length == bytes
                && (!turn.Contains(hash) || await HashAsync(there, cancel) == fileHash);
            if (isSound)
                continue;
            if (bring is not null && from.Find(hash) is null)
                await bring(hash);
            if (
                from.Find(hash) is not { } found
                || !await VerifiedCopy.MakeAsync(found.Path, to.File(hash, Path.GetExtension(found.Path)), fileHash, cancel)
            )
                missing.Add(hash);
            else if (there is null)
                fresh++;
            else
                replaced++;
        }
        if (turn.Count > 0)
            await File.WriteAllTextAsync(Path.Combine(folder, TurnName), turn.Last() + "\n", cancel);
        return new(photos.Count, fresh, replaced, missing);
    }

    private static async Task<string> HashAsync(string path, CancellationToken cancel)
    {
        await using var bytes = File.OpenRead(path);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(bytes, cancel));
    }

    /// <summary>Those whose turn it is: the next after the last one looked at, and from the first again after the last.</summary>
    private HashSet<string> InTurn(List<(string Hash, long Bytes)> photos)
    {
        var path = Path.Combine(folder, TurnName);
        var last = File.Exists(path) ? File.ReadAllText(path, Encoding.UTF8).Trim() : "";
        var first = photos.FindIndex(p => string.CompareOrdinal(p.Hash, last) > 0);
        var turn = new HashSet<string>(StringComparer.Ordinal);
        long bytes = 0;
        foreach (var (hash, size) in photos.Skip(first).Concat(photos.Take(Math.Max(first, 0))))
        {
            if (turn.Count > 0 && (turn.Count >= mostPhotos || bytes + size > MostBytes))
                break;
            turn.Add(hash);
            bytes += size;
        }
        return turn;
    }
}

/// <summary>What became of the photos.</summary>
/// <param name="New">Those that no earlier backup had.</param>
/// <param name="Replaced">Those that were damaged in the backup and are whole again.</param>
/// <param name="Missing">Those whose file is gone from the data folder, or damaged there, and that the backup has not either.</param>
internal sealed record BackedUpPhotos(int All, int New, int Replaced, IReadOnlyList<string> Missing);
