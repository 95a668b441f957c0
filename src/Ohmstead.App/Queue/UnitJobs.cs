namespace Ohmstead.App.Queue;

/// <summary>
/// Work on units that nobody waits for: one unit at a time, in the order of asking. A newer request for a unit ends what an older one
/// began.
/// </summary>
/// <param name="title">What it is, in a few words.</param>
/// <param name="pause">How long a job waits for a newer one before it begins.</param>
internal sealed class UnitJobs(WorkQueue queue, string title, TimeProvider time, TimeSpan pause) : IAsyncDisposable
{
    private readonly Dictionary<Guid, CancellationTokenSource> latest = [];
    private readonly HashSet<Task> running = [];
    private readonly Lock door = new();
    private bool isEnded;

    /// <summary>Works on a unit until it is done or stopped.</summary>
    public required Func<Guid, Work, Task> Do { get; init; }

    /// <summary>Told of what went wrong: it must not take the program down.</summary>
    public required Action<Guid, Exception> Broke { get; init; }

    /// <summary>Told where a person stopped it.</summary>
    public required Action<Guid> Stopped { get; init; }

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
            if (isEnded)
                return;
            latest.TryGetValue(unitId, out older);
            latest[unitId] = mine;
            var job = Task.Run(() => RunAsync(unitId, mine), CancellationToken.None);
            running.Add(job);
            _ = job.ContinueWith(Forget, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        }
        older?.Cancel();
    }

    /// <summary>Ends what is under way, and returns when nothing of it will touch the store any more.</summary>
    public async ValueTask DisposeAsync()
    {
        CancellationTokenSource[] open;
        Task[] left;
        lock (door)
            (isEnded, open, left) = (true, [.. latest.Values], [.. running]);
        foreach (var job in open)
            await job.CancelAsync();
        await Task.WhenAll(left);
    }

    private void Forget(Task job)
    {
        lock (door)
            running.Remove(job);
    }

    private async Task RunAsync(Guid unitId, CancellationTokenSource mine)
    {
        try
        {
            await Task.Delay(pause, time, mine.Token);
            await queue.LaterAsync(title, work => Do(unitId, work), mine.Token);
        }
        catch (OperationCanceledException)
        {
            // Where a newer request took over, that tells when it is done.
            if (!mine.IsCancellationRequested)
                Stopped(unitId);
        }
#pragma warning disable CA1031 // The edge: whatever goes wrong in the background must not take the bench down.
        catch (Exception e)
#pragma warning restore CA1031
        {
            Broke(unitId, e);
        }
        lock (door)
            if (latest.TryGetValue(unitId, out var last) && last == mine)
                latest.Remove(unitId);
    }
}
