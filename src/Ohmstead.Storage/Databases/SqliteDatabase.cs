using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.Databases;

/// <summary>The database as a file in the data folder. One program at a time has it open (<see cref="FolderLock"/>).</summary>
internal sealed class SqliteDatabase(string path) : IDatabase
{
    private readonly PooledDbContextFactory<WorkshopContext> contexts = new(SqliteFile.Options(path));

    public bool KeepsPhotos => false;

    // A disk that failed does so again at once.
    public TimeSpan Patience => TimeSpan.Zero;

    public Task<WorkshopContext> ContextAsync(CancellationToken cancel) => contexts.CreateDbContextAsync(cancel);

    // SQLite's provider begins IMMEDIATE: the transaction can write from the start and need not be begun again.
    public Task<IDbContextTransaction> BeginAsync(WorkshopContext context, CancellationToken cancel) =>
        context.Database.BeginTransactionAsync(cancel);

    public IQueryable<UnitRow> MayHave(WorkshopContext context, IReadOnlyList<string> words) =>
        LetterIndex.Asked(words) is { Length: > 0 } asked ? LetterIndex.Find(context, asked) : context.Units;

    public string? Words(Exception broken) =>
        (broken as SqliteException ?? (broken as DbUpdateException)?.InnerException as SqliteException) is { } failure
            ? SqliteFile.Words(failure, path)
            : null;

    public bool MayPass(Exception broken) => false;

    /// <summary>Brings the tables up to this version.</summary>
    /// <param name="beforeBegin">Called before the first tables are made in an empty database.</param>
    /// <param name="beforeChange">Called before tables of an older version are changed.</param>
    public async Task MigrateAsync(Action beforeBegin, Action beforeChange, CancellationToken cancel)
    {
        SqliteFile.Prepare(path);
        if (SqliteFile.Faults(path, isQuick: true) is [var first, ..])
            throw new StoreUnusable(SqliteFile.Damaged(path, first));
        await using var context = await ContextAsync(cancel);
        var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
        if (applied.Any(a => string.CompareOrdinal(a, context.Database.GetMigrations().Last()) > 0))
            throw new StoreUnusable(Newer);
        if (applied.Count == 0 && await SqliteFile.HasTablesAsync(context, cancel))
            throw new StoreUnusable($"{path} is a database of another program. Name another folder with --data");
        var pending = (await context.Database.GetPendingMigrationsAsync(cancel)).ToList();
        if (pending.Count == 0)
            return;
        (applied.Count > 0 ? beforeChange : beforeBegin)();
        await SqliteFile.ForgetMigrationLockAsync(context, cancel);
        await context.Database.MigrateAsync(cancel);
    }

    private string Newer =>
        $"{path} was written by a newer Ohmstead than this one. Start the newer one. To go back for good, put the newest file of the folder {OwnCopies.FolderName} in its place; what was entered since is lost by that";

    public ValueTask DisposeAsync()
    {
        SqliteFile.Close(path);
        return ValueTask.CompletedTask;
    }
}
