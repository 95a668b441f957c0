using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;

namespace Ohmstead.Storage;

/// <summary>Where reading and writing pass: one writer at a time, each in a transaction; what breaks is told in words.</summary>
internal sealed class Transactions(string path) : IDisposable
{
    private readonly PooledDbContextFactory<WorkshopContext> contexts = new(SqliteFile.Options(path));
    private readonly SemaphoreSlim writer = new(1, 1);

    public Task<T> ReadAsync<T>(Func<WorkshopContext, Task<T>> read, CancellationToken cancel) =>
        InWordsAsync(async () =>
        {
            await using var context = await contexts.CreateDbContextAsync(cancel);
            context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
            return await read(context);
        });

    /// <summary>Writes in one transaction, which is on the disk when this returns; what throws leaves nothing behind.</summary>
    public async Task<T> WriteAsync<T>(Func<WorkshopContext, Task<T>> write, CancellationToken cancel)
    {
        await writer.WaitAsync(cancel);
        try
        {
            return await InWordsAsync(async () =>
            {
                await using var context = await contexts.CreateDbContextAsync(cancel);
                // SQLite's provider begins IMMEDIATE: the transaction can write from the start and need not be begun again.
                await using var transaction = await context.Database.BeginTransactionAsync(cancel);
                var answer = await write(context);
                await context.SaveChangesAsync(cancel);
                // Once it is asked for, the end is waited for: whoever is told "cancelled" may count on nothing being kept.
                await transaction.CommitAsync(CancellationToken.None);
                return answer;
            });
        }
        finally
        {
            writer.Release();
        }
    }

    /// <summary>Brings the tables up to this version.</summary>
    /// <param name="beforeBegin">Called before the first tables are made in an empty database.</param>
    /// <param name="beforeChange">Called before tables of an older version are changed.</param>
    public Task MigrateAsync(Action beforeBegin, Action beforeChange, CancellationToken cancel) =>
        InWordsAsync(async () =>
        {
            SqliteFile.Prepare(path);
            if (SqliteFile.Faults(path, isQuick: true) is [var first, ..])
                throw new StoreUnusable(SqliteFile.Damaged(path, first));
            await using var context = await contexts.CreateDbContextAsync(cancel);
            var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
            if (applied.Any(a => string.CompareOrdinal(a, context.Database.GetMigrations().Last()) > 0))
                throw new StoreUnusable(Newer);
            if (applied.Count == 0 && await SqliteFile.HasTablesAsync(context, cancel))
                throw new StoreUnusable($"{path} is a database of another program. Name another folder with --data");
            var pending = (await context.Database.GetPendingMigrationsAsync(cancel)).ToList();
            if (pending.Count == 0)
                return 0;
            (applied.Count > 0 ? beforeChange : beforeBegin)();
            await SqliteFile.ForgetMigrationLockAsync(context, cancel);
            await context.Database.MigrateAsync(cancel);
            return pending.Count;
        });

    private string Newer =>
        $"{path} was written by a newer Ohmstead than this one. Start the newer one. To go back for good, put the newest file of the folder {OwnCopies.FolderName} in its place; what was entered since is lost by that";

    public void Dispose()
    {
        writer.Dispose();
        SqliteFile.Close(path);
    }

    private async Task<T> InWordsAsync<T>(Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception broken) when (Failure(broken) is { } failure && SqliteFile.Words(failure, path) is { } words)
        {
            throw new StoreUnusable(words, broken);
        }
    }

    private static SqliteException? Failure(Exception broken) =>
        broken as SqliteException ?? (broken as DbUpdateException)?.InnerException as SqliteException;
}
