using Ohmstead.Storage.Databases;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage;

/// <content>How a workshop is opened, in a folder or in a database that is shared.</content>
public sealed partial class Store
{
    /// <summary>Opens the workshop that is in a folder.</summary>
    /// <exception cref="StoreUnusable">As below, or there is none.</exception>
    public static Task<Store> OpenFoundAsync(string folder, TimeProvider time, CancellationToken cancel = default)
    {
        SqliteFile.In(Path.GetFullPath(folder));
        return OpenAsync(folder, time, cancel);
    }

    /// <summary>Opens the workshop in a folder, or begins one there. Tables of an older version are copied first, then brought up to this one.</summary>
    /// <param name="time">Names the copy.</param>
    /// <exception cref="StoreUnusable">The folder is in use, cannot be written to, or holds a damaged database.</exception>
    public static async Task<Store> OpenAsync(string folder, TimeProvider time, CancellationToken cancel = default)
    {
        folder = Path.GetFullPath(folder);
        Make(folder);
        var folderLock = FolderLock.Take(folder, "Or name another folder with --data");
        var path = Path.Combine(folder, SqliteFile.Name);
        var database = new SqliteDatabase(path);
        var transactions = new Transactions(database);
        try
        {
            if (!File.Exists(path) || new FileInfo(path).Length == 0)
                RefuseLostDatabase(folder, path);
            await transactions.InWordsAsync(
                async _ =>
                {
                    await database.MigrateAsync(
                        () => RefuseLostDatabase(folder, path),
                        () => OwnCopies.Make(folder, path, time.GetUtcNow()),
                        cancel
                    );
                    return 0;
                },
                cancel
            );
            return await BrokenDisk.InWordsAsync(
                folder,
                () => Task.FromResult(new Store(folder, folderLock, transactions, null, BenchMark.Of(folder, time.GetUtcNow())))
            );
        }
        catch
        {
            await transactions.DisposeAsync();
            folderLock.Dispose();
            throw;
        }
    }

    /// <summary>Opens the workshop in a PostgreSQL database, or begins one there; others may have it open.</summary>
    /// <param name="address">Where it is: <c>Host=…;Database=…;Username=…</c>.</param>
    /// <param name="folder">The data folder of this machine: copies of photos lie in it, nothing that could be lost.</param>
    /// <param name="program">Another id for every program.</param>
    /// <exception cref="StoreUnusable">The database does not answer, or is not to be used; the address is not understood.</exception>
    public static Task<Store> OpenSharedAsync(string address, string folder, Guid program, CancellationToken cancel = default) =>
        OpenSharedAsync(address, folder, program, PostgresDatabase.UsualPatience, cancel);

    /// <param name="patience">How long a step is tried again before the person is told.</param>
    internal static async Task<Store> OpenSharedAsync(
        string address,
        string folder,
        Guid program,
        TimeSpan patience,
        CancellationToken cancel
    )
    {
        folder = LocalFolder(folder);
        Make(folder);
        var database = new PostgresDatabase(PostgresAddress.Read(address, program), patience);
        var transactions = new Transactions(database);
        try
        {
            await transactions.InWordsAsync(
                async _ =>
                {
                    await database.MigrateAsync(cancel);
                    return 0;
                },
                cancel
            );
            // The journal is one, whoever writes it: the place alone is the bench.
            var bench = await BrokenDisk.InWordsAsync(folder, () => Task.FromResult(BenchMark.Of(folder, DateTimeOffset.UnixEpoch)));
            return await BrokenDisk.InWordsAsync(
                folder,
                () => Task.FromResult(new Store(folder, null, transactions, new PostgresNotices(database.Address), bench))
            );
        }
        catch
        {
            await transactions.DisposeAsync();
            throw;
        }
    }

    /// <summary>What a machine keeps of a database that is elsewhere: apart from a workshop that may lie in the same data folder.</summary>
    internal static string LocalFolder(string folder) => Path.Combine(Path.GetFullPath(folder), "database");

    private static void Make(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnusable($"{folder} cannot be a data folder: {BrokenDisk.Words(e) ?? e.Message}", e);
        }
    }

    /// <summary>A database that is gone or empty beside what belonged to it was lost: an empty workshop in its place would hide that.</summary>
    private static void RefuseLostDatabase(string folder, string path)
    {
        var what =
            PhotoPlaces.Any(folder) ? "photos"
            : OwnCopies.Any(folder) ? "copies of a database"
            : "";
        if (what.Length > 0)
            throw new StoreUnusable(
                $"{path} is {(File.Exists(path) ? "empty" : "missing")}, but there are {what} beside it: the database was lost. Ohmstead does not begin an empty workshop there. Bring back a backup with: ohmstead restore BACKUP --data NEW"
            );
    }
}
