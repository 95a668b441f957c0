using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Ohmstead.Storage;

/// <summary>All that is peculiar to SQLite: where the file is, how it is opened, copied and looked through.</summary>
internal static class SqliteFile
{
    /// <summary>The name of the database in the data folder.</summary>
    public const string Name = "workshop.db";

    /// <summary>The database of a data folder.</summary>
    /// <exception cref="StoreUnusable">There is none.</exception>
    public static string In(string folder) =>
        Path.Combine(folder, Name) is var file && File.Exists(file)
            ? file
            : throw new StoreUnusable($"{folder} holds no workshop: {Name} is not there. Name the data folder with --data");

    public static DbContextOptions<WorkshopContext> Options(string path) =>
        new DbContextOptionsBuilder<WorkshopContext>()
            .UseSqlite(Connection(path, SqliteOpenMode.ReadWriteCreate))
            .AddInterceptors(new Durable())
            .Options;

    /// <summary>Write-ahead log: readers do not wait for the writer. The file remembers it.</summary>
    public static void Prepare(string path)
    {
        using var connection = new SqliteConnection(Connection(path, SqliteOpenMode.ReadWriteCreate, isPooled: false));
        connection.Open();
        Run(connection, "PRAGMA journal_mode=WAL");
    }

    /// <summary>For looking into a copy, which stays as it is.</summary>
    public static DbContextOptions<WorkshopContext> ReadOnlyOptions(string path) =>
        new DbContextOptionsBuilder<WorkshopContext>()
            .UseSqlite(Connection(path, SqliteOpenMode.ReadOnly, isPooled: false))
            .UseQueryTrackingBehavior(QueryTrackingBehavior.NoTracking)
            .Options;

    /// <summary>
    /// A run that was killed while it migrated leaves its lock row behind, and the next would wait for it for ever. The lock of
    /// the folder is ours by now, so nobody else migrates.
    /// </summary>
    public static Task ForgetMigrationLockAsync(WorkshopContext context, CancellationToken cancel) =>
        context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancel);

    /// <summary>Copies the database as it is now, while others read and write it, into a new file that is on the disk when this returns.</summary>
    public static void Copy(string from, string to)
    {
        using (var source = new SqliteConnection(Connection(from, SqliteOpenMode.ReadOnly, isPooled: false)))
        using (var target = new SqliteConnection(Connection(to, SqliteOpenMode.ReadWriteCreate, isPooled: false)))
        {
            source.Open();
            target.Open();
            source.BackupDatabase(target);
            // One file, to be moved and hashed as it is.
            Run(target, "PRAGMA journal_mode=DELETE");
        }
        using var file = new FileStream(to, FileMode.Open, FileAccess.ReadWrite);
        file.Flush(flushToDisk: true);
    }

    /// <summary>The same; a database that cannot be read is told in words.</summary>
    /// <exception cref="StoreUnusable">The database is damaged, or the disk is full.</exception>
    public static void CopyInWords(string from, string to)
    {
        try
        {
            Copy(from, to);
        }
        catch (SqliteException broken) when (Words(broken, from) is { } words)
        {
            throw new StoreUnusable(words, broken);
        }
    }

    /// <summary>Closes the connections that are kept open for reuse, so that the folder can be moved or removed.</summary>
    public static void Close(string path)
    {
        using var connection = new SqliteConnection(Connection(path, SqliteOpenMode.ReadWriteCreate));
        SqliteConnection.ClearPool(connection);
    }

    /// <summary>What SQLite finds wrong with a file; empty when it is sound.</summary>
    /// <param name="isQuick">True to leave out whether every index agrees with its table, which takes several times as long.</param>
    public static IReadOnlyList<string> Faults(string path, bool isQuick = false)
    {
        var faults = new List<string>();
        try
        {
            using var connection = new SqliteConnection(Connection(path, SqliteOpenMode.ReadOnly, isPooled: false));
            connection.Open();
            using var check = connection.CreateCommand();
            check.CommandText = isQuick ? "PRAGMA quick_check(20)" : "PRAGMA integrity_check(20)";
            using var found = check.ExecuteReader();
            while (found.Read())
                if (found.GetString(0) is var line && line != "ok")
                    faults.Add(line);
        }
        catch (SqliteException broken) when (IsDamage(broken))
        {
            faults.Add(broken.Message);
        }
        return faults;
    }

    /// <summary>That a database is damaged, and what to do.</summary>
    public static string Damaged(string path, string how) =>
        $"{path} is damaged ({how}). Ohmstead did not change it. Bring back a backup with: ohmstead restore BACKUP --data NEW";

    /// <summary>True when a file holds tables, besides those in which changes of the tables are written down.</summary>
    public static async Task<bool> HasTablesAsync(WorkshopContext context, CancellationToken cancel) =>
        await context
            .Database.SqlQueryRaw<int>(
                "SELECT COUNT(*) AS \"Value\" FROM sqlite_master WHERE type = 'table' AND substr(name, 1, 4) <> '__EF' AND substr(name, 1, 7) <> 'sqlite_'"
            )
            .SingleAsync(cancel) > 0;

    /// <summary>What a failure of SQLite means to the person at the bench; null when it is a fault of the program.</summary>
    public static string? Words(SqliteException failure, string path) =>
        failure.SqliteErrorCode switch
        {
            _ when IsDamage(failure) => Damaged(path, failure.Message),
            13 => $"{path}: the disk is full. Free some space on it",
            8 or 14 => $"{path} cannot be opened for writing. Look at the permissions of the folder",
            10 => $"{path}: the disk does not read or write ({failure.Message})",
            5 or 6 => $"{path} is in use by another program. Close that one",
            _ => null,
        };

    private static bool IsDamage(SqliteException failure) => failure.SqliteErrorCode is 11 or 26;

    private static string Connection(string path, SqliteOpenMode mode, bool isPooled = true) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = isPooled,
            ForeignKeys = mode == SqliteOpenMode.ReadOnly ? null : true,
            DefaultTimeout = 30,
        }.ToString();

    private static void Run(DbConnection connection, string command)
    {
        using var pragma = connection.CreateCommand();
        pragma.CommandText = command;
        pragma.ExecuteNonQuery();
    }

    /// <summary>FULL: a commit is on the disk before it returns, so that power loss takes nothing either.</summary>
    private sealed class Durable : DbConnectionInterceptor
    {
        private const string Pragmas = "PRAGMA synchronous=FULL; PRAGMA cache_size=-16000";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Run(connection, Pragmas);

        public override Task ConnectionOpenedAsync(
            DbConnection connection,
            ConnectionEndEventData eventData,
            CancellationToken cancellationToken = default
        )
        {
            Run(connection, Pragmas);
            return Task.CompletedTask;
        }
    }
}
