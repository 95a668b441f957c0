namespace Ohmstead.App.Queue;

/// <summary>
/// Work on units that nobody waits for: one unit at a time, in the order of asking. A unit that waits keeps its place whatever is asked
/// again, and what is worked on knows the newest when it begins. A newer request ends what an older one began; not where other units wait,
/// nor twice in a row: else a bench that enters faster than is worked out would never see an answer.
/// </summary>
/// <param name="title">What it is, in a few words.</param>
/// <param name="pause">How long a job waits for a newer request before it begins.</param>
internal sealed class UnitJobs(WorkQueue queue, string title, TimeProvider time, TimeSpan pause) : IAsyncDisposable
{
    /// <summary>So long an answer that is already old may take to its end, from the request that made it old.</summary>
    private static readonly TimeSpan MostOutdated = TimeSpan.FromSeconds(20);

    private readonly Dictionary<Guid, Job> open = [];
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
                return open.Count;
        }
    }

    /// <summary>How long the unit that was asked for first has been without an answer; zero where none is.</summary>
    public TimeSpan Behind
    {
        get
        {
            lock (door)
                return open.Count == 0 ? TimeSpan.Zero : time.GetElapsedTime(open.Values.Min(j => j.AskedAt));
        }
    }

    /// <summary>True while a unit waits or is worked on.</summary>
    public bool IsBusy(Guid unitId)
    {
        lock (door)
            return open.ContainsKey(unitId);
    }

    /// <summary>Asks for work on a unit. Returns at once.</summary>
    public void Ask(Guid unitId)
    {
        CancellationTokenSource? outdated = null;
        lock (door)
        {
            if (isEnded)
                return;
            if (!open.TryGetValue(unitId, out var job))
                Begin(unitId, wasCut: false);
            else if (job.HasBegun && !job.IsAskedAgain)
            {
                (job.IsAskedAgain, job.AskedAgainAt) = (true, time.GetTimestamp());
                outdated = job.Stop;
                if (job.WasCut || open.Count > 1)
                {
                    outdated.CancelAfter(MostOutdated);
                    return;
                }
            }
        }
        outdated?.Cancel();
    }

    /// <summary>Ends what is under way, and returns when nothing of it will touch the store any more.</summary>
    public async ValueTask DisposeAsync()
    {
        CancellationTokenSource[] stops;
        Task[] left;
        lock (door)
            (isEnded, stops, left) = (true, [.. open.Values.Select(j => j.Stop)], [.. running]);
        foreach (var stop in stops)
            await stop.CancelAsync();
        await Task.WhenAll(left);
    }

    /// <summary>Called with the door shut.</summary>
    private void Begin(Guid unitId, bool wasCut, long? askedAt = null)
    {
        var job = new Job(new(Timeout.InfiniteTimeSpan, time), wasCut, askedAt ?? time.GetTimestamp());
        open[unitId] = job;
        var run = Task.Run(() => RunAsync(unitId, job), CancellationToken.None);
        running.Add(run);
        _ = run.ContinueWith(Forget, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
    }

    private void Forget(Task run)
    {
        lock (door)
            running.Remove(run);
    }

    private async Task RunAsync(Guid unitId, Job job)
    {
        try
        {
            await Task.Delay(pause, time, job.Stop.Token);
            await queue.LaterAsync(title, work => DoAsync(unitId, job, work), job.Stop.Token);
        }
        catch (OperationCanceledException)
        {
            // Where a newer request took over, that tells when it is done.
            if (!job.Stop.IsCancellationRequested)
                Stopped(unitId);
        }
#pragma warning disable CA1031 // The edge: whatever goes wrong in the background must not take the bench down.
        catch (Exception e)
#pragma warning restore CA1031
        {
            Broke(unitId, e);
        }
        lock (door)
        {
            open.Remove(unitId);
            if (job.IsAskedAgain && !isEnded)
                Begin(unitId, wasCut: job.Stop.IsCancellationRequested, job.Stop.IsCancellationRequested ? job.AskedAt : job.AskedAgainAt);
        }
    }

    private Task DoAsync(Guid unitId, Job job, Work work)
    {
        lock (door)
            job.HasBegun = true;
        return Do(unitId, work);
    }

    /// <param name="WasCut">True where the one before it on this unit was ended by a newer request.</param>
    /// <param name="AskedAt">When the first request came that has no answer yet.</param>
    private sealed record Job(CancellationTokenSource Stop, bool WasCut, long AskedAt)
    {
        /// <summary>From here on it may not know what is entered.</summary>
        public bool HasBegun { get; set; }

        /// <summary>There is something newer than what it began with.</summary>
        public bool IsAskedAgain { get; set; }

        public long AskedAgainAt { get; set; }
    }
}
