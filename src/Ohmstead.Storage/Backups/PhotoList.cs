using Microsoft.EntityFrameworkCore;

namespace Ohmstead.Storage.Backups;

/// <summary>The photos of a database as they should be on the disk, also of a database of a version before this one.</summary>
internal static class PhotoList
{
    /// <summary>By hash.</summary>
    public static async Task<List<(string Hash, string FileHash, long Bytes)>> ReadAsync(WorkshopContext context, CancellationToken cancel)
    {
        var hasFileHash =
            await context
                .Database.SqlQueryRaw<int>("SELECT COUNT(*) AS \"Value\" FROM pragma_table_info('Photos') WHERE name = 'FileHash'")
                .SingleAsync(cancel) > 0;
        var rows = hasFileHash
            ? await context
                .Photos.Select(p => new
                {
                    p.Hash,
                    p.FileHash,
                    p.Bytes,
                })
                .ToListAsync(cancel)
            : await context
                .Photos.Select(p => new
                {
                    p.Hash,
                    FileHash = "",
                    p.Bytes,
                })
                .ToListAsync(cancel);
        return
        [
            .. rows.Select(p => (p.Hash, p.FileHash.Length > 0 ? p.FileHash : p.Hash, p.Bytes))
                .OrderBy(p => p.Hash, StringComparer.Ordinal),
        ];
    }
}
