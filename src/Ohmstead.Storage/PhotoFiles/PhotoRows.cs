using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>The rows of photos, and their bytes where the database keeps them (<see cref="Transactions.KeepsPhotos"/>).</summary>
internal sealed class PhotoRows(Transactions transactions)
{
    /// <summary>True when the photo was kept, with its bytes.</summary>
    public Task<bool> HasAsync(string hash, CancellationToken cancel) =>
        transactions.ReadAsync(
            async context =>
                await context.Photos.AnyAsync(p => p.Hash == hash, cancel)
                && (!transactions.KeepsPhotos || await HasContentAsync(context, hash, cancel)),
            cancel
        );

    /// <summary>Puts in the row of a photo.</summary>
    /// <param name="file">Where its bytes lie.</param>
    public Task<bool> KeepAsync(PhotoRow row, string file, CancellationToken cancel) =>
        transactions.WriteAsync(
            async context =>
            {
                var known = await context.Photos.SingleOrDefaultAsync(p => p.Hash == row.Hash, cancel);
                var isSame = known is not null && (known.FileHash, known.Bytes) == (row.FileHash, row.Bytes);
                if (known is null)
                    context.Photos.Add(row);
                else
                    (known.FileHash, known.Bytes) = (row.FileHash, row.Bytes);
                // A row may have come in without its bytes: they were missing where it was moved from.
                if (transactions.KeepsPhotos && (!isSame || !await HasContentAsync(context, row.Hash, cancel)))
                {
                    var content = await context.FindAsync<PhotoContentRow>([row.Hash], cancel);
                    if (content is null)
                        context.Add(content = new PhotoContentRow { Hash = row.Hash });
                    content.Content = await File.ReadAllBytesAsync(file, cancel);
                }
                return known is null;
            },
            cancel
        );

    private static Task<bool> HasContentAsync(WorkshopContext context, string hash, CancellationToken cancel) =>
        context.Set<PhotoContentRow>().AnyAsync(c => c.Hash == hash, cancel);

    /// <summary>A photo's bytes and kind as the database has them; null where it has none, or they are not what was kept.</summary>
    public async Task<(byte[] Content, string MediaType)?> ContentAsync(string hash, CancellationToken cancel)
    {
        if (!transactions.KeepsPhotos)
            return null;
        var found = await transactions.ReadAsync(
            async context =>
                await (
                    from photo in context.Photos
                    join content in context.Set<PhotoContentRow>() on photo.Hash equals content.Hash
                    where photo.Hash == hash
                    select new
                    {
                        photo.FileHash,
                        photo.MediaType,
                        content.Content,
                    }
                ).SingleOrDefaultAsync(cancel),
            cancel
        );
        if (found is null)
            return null;
        var fileHash = found.FileHash.Length > 0 ? found.FileHash : hash;
        return Convert.ToHexStringLower(SHA256.HashData(found.Content)) == fileHash ? (found.Content, found.MediaType) : null;
    }
}
