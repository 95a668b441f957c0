using System.Data;
using Microsoft.EntityFrameworkCore;

namespace Ohmstead.Storage.Databases;

/// <summary>A database that is shared, as a file: what a backup of it holds, so that every backup is of one kind.</summary>
internal static class FileOf
{
    /// <summary>Writes the file: the workshop as it is at one moment, while others go on.</summary>
    public static async Task MakeAsync(Store shared, string file, CancellationToken cancel)
    {
        var filling = file + ".filling";
        await using (var to = new WorkshopContext(SqliteFile.Options(filling)))
        {
            await to.Database.MigrateAsync(cancel);
            await shared.Transactions.ReadAsync(
                async from =>
                {
                    await using var moment = await from.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
                    await PostgresDatabase.MayPauseAsync(from, cancel);
                    await using var all = await to.Database.BeginTransactionAsync(cancel);
                    to.ChangeTracker.Clear();
                    await RowCopy.CopyAsync(from, to, cancel);
                    await all.CommitAsync(cancel);
                    return 0;
                },
                cancel
            );
        }
        SqliteFile.Close(filling);
        SqliteFile.CopyInWords(filling, file);
        foreach (var rest in (string[])["", "-wal", "-shm"])
            File.Delete(filling + rest);
    }
}
