namespace Ohmstead.App.Background;

/// <summary>
/// Work on units that nobody waits for: one unit at a time, in the order of asking. A newer request for a unit ends what an older one
/// began.
/// </summary>
/// <param name="pause">How long a job waits for a newer one before it begins.</param>
/// <param name="work">Works on a unit until it is done or cancelled.</param>
/// <param name="broke">Told of what went wrong: it must not take the program down.</param>
internal sealed class UnitJobs(TimeProvider time, TimeSpan pause, Func<Guid, CancellationToken, Task> work, Action<Guid, Exception> broke)
    : IAsyncDisposable
{
    private readonly Dictionary<Guid, CancellationTokenSource> latest = [];
    private readonly SemaphoreSlim turn = new(1);
    private readonly Lock door = new();

    /// <summary>How many units wait or are worked on.</summary>
    public int Count
    {
        get
        {
            lock (door)
                return latest.Count;
        }
    }

    /// <summary>True while a unit waits or is worked on.</summary>
    public bool IsBusy(Guid unitId)
    {
        lock (door)
            return latest.ContainsKey(unitId);
    }

    /// <summary>Asks for work on a unit. Returns at once.</summary>
    public void Ask(Guid unitId)
    {
        var mine = new CancellationTokenSource();
        CancellationTokenSource? older;
        lock (door)
        {
            latest.TryGetValue(unitId, out older);
            latest[unitId] = mine;
        }
        older?.Cancel();
        _ = Task.Run(() => RunAsync(unitId, mine), CancellationToken.None);
    }

    /// <summary>Ends what is under way, and returns when nothing of it will touch the store any more.</summary>
    public async ValueTask DisposeAsync()
    {
        CancellationTokenSource[] open;
        lock (door)
            open = [.. latest.Values];
        foreach (var job in open)
            await job.CancelAsync();
        // Never given back: whoever waits for the turn was cancelled.
        await turn.WaitAsync();
    }

    private async Task RunAsync(Guid unitId, CancellationTokenSource mine)
    {
        try
        {
            await Task.Delay(pause, time, mine.Token);
            await turn.WaitAsync(mine.Token);
            try
            {
                await work(unitId, mine.Token);
            }
            finally
            {
                turn.Release();
            }
        }
        catch (OperationCanceledException)
        {
            // A newer request took over; it tells when it is done.
        }
#pragma warning disable CA1031 // The edge: whatever goes wrong in the background must not take the bench down.
        catch (Exception e)
#pragma warning restore CA1031
        {
            broke(unitId, e);
        }
        lock (door)
            if (latest.TryGetValue(unitId, out var last) && last == mine)
                latest.Remove(unitId);
    }
}
