using System.Data;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Databases;

namespace Ohmstead.Storage.Moves;

/// <summary>
/// A workshop from a folder into a database, and back. All of it goes in one transaction, is compared row by row before that ends, and
/// what it came from stays as it is.
/// </summary>
public static class Move
{
    /// <summary>Moves the workshop of a folder into a database that is empty.</summary>
    /// <exception cref="StoreUnusable">There is none, the database is not empty, or it cannot be used.</exception>
    public static async Task<Moved> ToDatabaseAsync(
        string folder,
        WorkshopPlace to,
        TimeProvider time,
        Guid program,
        CancellationToken cancel
    )
    {
        await using var source = await Store.OpenFoundAsync(folder, time, cancel);
        await using var target = await to.OpenAsync(time, program, cancel);
        return await CopyAsync(source, target, to.ToString(), cancel);
    }

    /// <summary>Moves the workshop of a database into a new folder.</summary>
    /// <exception cref="StoreUnusable">The folder is not empty, or one of both cannot be used.</exception>
    public static async Task<Moved> ToFolderAsync(
        WorkshopPlace place,
        string folder,
        TimeProvider time,
        Guid program,
        CancellationToken cancel
    )
    {
        folder = Path.GetFullPath(folder);
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
            throw new StoreUnusable($"{folder} is not empty. Name a new folder, so that nothing is overwritten");
        var part = folder + ".moving";
        if (Directory.Exists(part))
            Directory.Delete(part, recursive: true);
        var copies = Directory.CreateTempSubdirectory("ohmstead-move-");
        try
        {
            Moved moved;
            await using (var source = await (place with { Folder = copies.FullName }).OpenAsync(time, program, cancel))
            await using (var target = await Store.OpenAsync(part, time, cancel))
                moved = await CopyAsync(source, target, folder, cancel);
            if (Directory.Exists(folder))
                Directory.Delete(folder);
            Directory.Move(part, folder);
            return moved;
        }
        finally
        {
            copies.Delete(recursive: true);
            if (Directory.Exists(part))
                Directory.Delete(part, recursive: true);
        }
    }

    private static Task<Moved> CopyAsync(Store source, Store target, string name, CancellationToken cancel) =>
        source.Transactions.ReadAsync(
            async from =>
            {
                // What others write meanwhile is in all of it or in none.
                await using var moment = await from.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
                await PostgresDatabase.MayPauseAsync(from, cancel);
                var copy = new MoveCopy(source, target, name);
                return await target.Transactions.WriteAsync(to => copy.RunAsync(from, to, cancel), cancel);
            },
            cancel
        );
}

/// <summary>What was moved.</summary>
/// <param name="Documents">Sheets and settings, every version of them.</param>
/// <param name="MissingPhotos">Photos whose bytes were gone or damaged before.</param>
public sealed record Moved(int Units, int Entries, int Documents, int Photos, IReadOnlyList<string> MissingPhotos);
