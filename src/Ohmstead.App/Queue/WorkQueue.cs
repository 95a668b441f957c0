namespace Ohmstead.App.Queue;

/// <summary>
/// The one queue of all that is worked out behind the screens. What a person waits for begins at once; what nobody waits for has its
/// turn one after the other, and never keeps a person waiting.
/// </summary>
public sealed class WorkQueue
{
    private readonly List<Work> open = [];
    private readonly SemaphoreSlim turn = new(1);
    private readonly Lock door = new();

    /// <summary>Something came, began, got further or ended. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>What is under way or waits its turn, in the order of asking.</summary>
    public IReadOnlyList<Work> Open
    {
        get
        {
            lock (door)
                return [.. open];
        }
    }

    /// <summary>Begins what a person waits for. Work that does not look at its stop stays in the list until it ends.</summary>
    /// <param name="title">What it is, in a few words.</param>
    /// <param name="closed">The screen was closed: nobody waits any more.</param>
    public Work<T> Begin<T>(string title, Func<Work, T> work, CancellationToken closed = default)
    {
        var mine = new Work<T>(title, closed, Tell);
        Enter(mine);
        mine.Answer = AnswerAsync(mine, work, mine.Stopped);
        return mine;
    }

    /// <summary>Works out what a person waits for.</summary>
    public Task<T> RunAsync<T>(string title, Func<T> work, CancellationToken closed = default) => Begin(title, _ => work(), closed).Answer;

    /// <summary>Begins what takes long and goes on when its screen is closed: it waits for no turn, and keeps nothing waiting.</summary>
    public Task BesideAsync(string title, Func<Work, Task> work) =>
        Task.Run(async () =>
        {
            using var mine = new Work(title, isAwaited: true, CancellationToken.None, Tell);
            Enter(mine);
            try
            {
                mine.Begin();
                await work(mine);
            }
            finally
            {
                Leave(mine);
            }
        });

    /// <summary>Works on what nobody waits for, when its turn comes.</summary>
    /// <param name="ended">It is not wanted any more.</param>
    public async Task LaterAsync(string title, Func<Work, Task> work, CancellationToken ended)
    {
        using var mine = new Work(title, isAwaited: false, ended, Tell);
        Enter(mine);
        try
        {
            await turn.WaitAsync(mine.Stopped);
            try
            {
                mine.Begin();
                await work(mine);
            }
            finally
            {
                turn.Release();
            }
        }
        finally
        {
            Leave(mine);
        }
    }

    private async Task<T> AnswerAsync<T>(Work<T> mine, Func<Work, T> work, CancellationToken stopped) =>
        await Task.Run(() => Do(mine, work), CancellationToken.None).WaitAsync(stopped);

    private T Do<T>(Work<T> mine, Func<Work, T> work)
    {
        try
        {
            // Closed before it began: nobody waits for it.
            mine.Stopped.ThrowIfCancellationRequested();
            mine.Begin();
            var answer = work(mine);
            mine.Stopped.ThrowIfCancellationRequested();
            return answer;
        }
        finally
        {
            Leave(mine);
            mine.Dispose();
        }
    }

    private void Enter(Work mine)
    {
        lock (door)
            open.Add(mine);
        Tell();
    }

    private void Leave(Work mine)
    {
        lock (door)
            open.Remove(mine);
        Tell();
    }

    private void Tell() => Changed?.Invoke();
}
