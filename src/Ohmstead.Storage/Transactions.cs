using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Ohmstead.Storage.Databases;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage;

/// <summary>Where reading and writing pass: one writer at a time, each in a transaction; what breaks is tried again or told in words.</summary>
internal sealed class Transactions(IDatabase database) : IAsyncDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(150);
    private readonly SemaphoreSlim writer = new(1, 1);

    // Once somebody waited in vain, nobody waits any more until it answers again.
    private volatile bool isAway;

    /// <summary>True where photos are kept in the database.</summary>
    public bool KeepsPhotos => database.KeepsPhotos;

    /// <summary>The units that may have all the words: all that do, and few others.</summary>
    public IQueryable<UnitRow> MayHave(WorkshopContext context, IReadOnlyList<string> words) => database.MayHave(context, words);

    public Task<T> ReadAsync<T>(Func<WorkshopContext, Task<T>> read, CancellationToken cancel) =>
        InWordsAsync(
            async _ =>
            {
                await using var context = await database.ContextAsync(cancel);
                context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
                return await read(context);
            },
            cancel
        );

    /// <summary>
    /// Writes in one transaction, which is on the disk when this returns; what throws leaves nothing behind. Where the database may be
    /// away for a moment it is done again: what is written must be the same when it finds that it is there already.
    /// </summary>
    public async Task<T> WriteAsync<T>(Func<WorkshopContext, Task<T>> write, CancellationToken cancel)
    {
        await writer.WaitAsync(cancel);
        try
        {
            return await InWordsAsync(
                async ending =>
                {
                    await using var context = await database.ContextAsync(cancel);
                    await using var transaction = await database.BeginAsync(context, cancel);
                    var answer = await write(context);
                    await context.SaveChangesAsync(cancel);
                    // Once it is asked for, the end is waited for: whoever is told "cancelled" may count on nothing being kept.
                    ending();
                    await transaction.CommitAsync(CancellationToken.None);
                    return answer;
                },
                cancel
            );
        }
        finally
        {
            writer.Release();
        }
    }

    /// <summary>Does a step, again where that may help; what breaks for good is told in words.</summary>
    /// <param name="work">It calls what it is given when the end is asked for: if it breaks after that, nobody knows what became of it.</param>
    /// <exception cref="StoreUnusable">The database did not take or give it.</exception>
    public async Task<T> InWordsAsync<T>(Func<Action, Task<T>> work, CancellationToken cancel)
    {
        var begun = Stopwatch.GetTimestamp();
        var isUnsure = false;
        while (true)
        {
            var isEnding = false;
            try
            {
                var done = await work(() => isEnding = true);
                isAway = false;
                return done;
            }
            catch (Exception broken) when (database.Words(broken) is { } words)
            {
                var mayPass = database.MayPass(broken);
                isUnsure |= isEnding && mayPass;
                if (!mayPass || isAway || Stopwatch.GetElapsedTime(begun) > database.Patience)
                {
                    isAway = mayPass;
                    throw new StoreUnusable(words, broken) { IsUnsure = isUnsure };
                }
                await Task.Delay(Pause, cancel);
            }
        }
    }

    public ValueTask DisposeAsync()
    {
        writer.Dispose();
        return database.DisposeAsync();
    }
}
