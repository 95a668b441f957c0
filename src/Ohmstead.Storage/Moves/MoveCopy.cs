using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Databases;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.Moves;

/// <summary>The copy of a move, in one transaction. It may be asked for again where that transaction's answer was lost.</summary>
/// <param name="name">Where it goes, as it is told of.</param>
internal sealed class MoveCopy(Store source, Store target, string name)
{
    private readonly List<string> missing = [];
    private bool isAgain;

    /// <summary>Copies, and holds both against each other.</summary>
    /// <exception cref="StoreUnusable">There is a workshop already, and it is not this copy; or the copy would not be the same.</exception>
    public async Task<Moved> RunAsync(WorkshopContext from, WorkshopContext to, CancellationToken cancel)
    {
        var isFirst = !isAgain;
        isAgain = true;
        await PostgresDatabase.MayPauseAsync(to, cancel);
        if (await RowCopy.IsEmptyAsync(to, cancel))
        {
            await RowCopy.CopyAsync(from, to, cancel);
            missing.Clear();
            foreach (var photo in await from.Photos.AsNoTracking().OrderBy(p => p.Hash).ToListAsync(cancel))
                if (!await PhotoAsync(to, photo, cancel))
                    missing.Add(photo.Hash);
        }
        else if (isFirst)
            throw new StoreUnusable($"{name}: there is a workshop already. Name an empty one, so that nothing is mixed");
        if (await RowCopy.DifferencesAsync(from, to, cancel) is [_, ..] differences)
            throw new StoreUnusable($"{name}: nothing was moved, it would not have been the same ({string.Join(", ", differences)})");
        return new Moved(
            await to.Units.CountAsync(cancel),
            await to.Entries.CountAsync(cancel),
            await to.Documents.CountAsync(cancel),
            await to.Photos.CountAsync(cancel) - missing.Count,
            [.. missing]
        );
    }

    /// <returns>False when the photo is missing, or not what was kept.</returns>
    private async Task<bool> PhotoAsync(WorkshopContext to, PhotoRow photo, CancellationToken cancel)
    {
        if (await source.PhotoFolder.FindAsync(photo.Hash, cancel) is not { } found)
            return false;
        var fileHash = photo.FileHash.Length > 0 ? photo.FileHash : photo.Hash;
        if (!target.Transactions.KeepsPhotos)
            return await Backups.VerifiedCopy.MakeAsync(
                found.Path,
                new PhotoPlaces(target.Folder).File(photo.Hash, Path.GetExtension(found.Path)),
                fileHash,
                cancel
            );
        var content = await File.ReadAllBytesAsync(found.Path, cancel);
        if (Convert.ToHexStringLower(SHA256.HashData(content)) != fileHash)
            return false;
        to.Add(new PhotoContentRow { Hash = photo.Hash, Content = content });
        await to.SaveChangesAsync(cancel);
        to.ChangeTracker.Clear();
        return true;
    }
}
