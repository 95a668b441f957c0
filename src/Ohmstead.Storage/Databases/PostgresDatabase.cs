using System.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.Databases;

/// <summary>A PostgreSQL database that several programs have open at once: a club's.</summary>
internal sealed class PostgresDatabase : IDatabase
{
    /// <summary>Whoever writes has this lock of the database to the end of the transaction: as in a file, one at a time.</summary>
    private const long WritersLock = 0x4F68_6D73_7465_6164;

    /// <summary>Whoever makes or changes the tables has this one.</summary>
    private const long TablesLock = WritersLock + 1;

    private readonly NpgsqlDataSource source;
    private readonly PooledDbContextFactory<PostgresContext> contexts;
    private readonly PostgresWords words;

    /// <param name="patience">How long a step is tried again before the person is told.</param>
    public PostgresDatabase(PostgresAddress address, TimeSpan patience)
    {
        (Address, Patience) = (address, patience);
        words = new PostgresWords(address.Name);
        source = NpgsqlDataSource.Create(address.Text);
        contexts = new(new DbContextOptionsBuilder<PostgresContext>().UseNpgsql(source).Options);
    }

    public PostgresAddress Address { get; }

    public bool KeepsPhotos => true;

    /// <summary>A server that is started anew is back in a second or two; a person waits that long without a word.</summary>
    public static readonly TimeSpan UsualPatience = TimeSpan.FromSeconds(6);

    public TimeSpan Patience { get; }

    /// <summary>What reads or writes a whole workshop pauses between two questions, while it is busy with files; then nothing is cut off.</summary>
    public static Task MayPauseAsync(WorkshopContext context, CancellationToken cancel) =>
        context.Database.IsNpgsql()
            ? context.Database.ExecuteSqlAsync($"SET LOCAL idle_in_transaction_session_timeout = 0", cancel)
            : Task.CompletedTask;

    public async Task<WorkshopContext> ContextAsync(CancellationToken cancel) => await contexts.CreateDbContextAsync(cancel);

    /// <summary>
    /// The lock is what makes a step that broke off at its very end safe to do again: the second begins only when the first has ended,
    /// kept or not, and finds what it left.
    /// </summary>
    public async Task<IDbContextTransaction> BeginAsync(WorkshopContext context, CancellationToken cancel)
    {
        var transaction = await context.Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, cancel);
        try
        {
            await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({WritersLock})", cancel);
            return transaction;
        }
        catch
        {
            await transaction.DisposeAsync();
            throw;
        }
    }

    // Its own index of letters by threes serves what is asked of the columns (migration LightLists), where the server has it.
    public IQueryable<UnitRow> MayHave(WorkshopContext context, IReadOnlyList<string> words) => context.Units;

    public string? Words(Exception broken) => words.Of(broken);

    public bool MayPass(Exception broken) => PostgresWords.MayPass(broken);

    /// <summary>Brings the tables up to this version. Of several programs that start at once the first does it, the others wait.</summary>
    public async Task MigrateAsync(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        // A lock of the session: all that follows stays on this connection.
        await context.Database.OpenConnectionAsync(cancel);
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({TablesLock})", cancel);
        try
        {
            var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
            if (applied.Any(a => string.CompareOrdinal(a, context.Database.GetMigrations().Last()) > 0))
                throw new StoreUnusable(
                    $"{Address.Name} was written by a newer Ohmstead than this one. Start the newer one on every bench"
                );
            if (applied.Count == 0 && await HasTablesAsync(context, cancel))
                throw new StoreUnusable($"{Address.Name} is a database of another program. Name an empty one with --database");
            if ((await context.Database.GetPendingMigrationsAsync(cancel)).Any())
                await context.Database.MigrateAsync(cancel);
        }
        finally
        {
            await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({TablesLock})", CancellationToken.None);
        }
    }

    public ValueTask DisposeAsync() => source.DisposeAsync();

    private static async Task<bool> HasTablesAsync(WorkshopContext context, CancellationToken cancel) =>
        await context
            .Database.SqlQuery<int>(
                $"SELECT COUNT(*)::int AS \"Value\" FROM information_schema.tables WHERE table_schema = current_schema() AND table_name <> '__EFMigrationsHistory'"
            )
            .SingleAsync(cancel) > 0;
}
