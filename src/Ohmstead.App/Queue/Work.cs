namespace Ohmstead.App.Queue;

/// <summary>A piece of work behind the screens: what it is, how far it is, and its stop. Any thread may ask, tell and stop.</summary>
public class Work : IDisposable
{
    /// <summary>Progress is told in steps of at least this.</summary>
    private const double LeastStep = 0.02;

    private readonly CancellationTokenSource stop;
    private readonly Action changed;
    private double share = -1;
    private volatile bool hasBegun;

    /// <param name="closed">Ends it like a stop.</param>
    /// <param name="changed">Told when it began and when it got further.</param>
    internal Work(string title, bool isAwaited, CancellationToken closed, Action changed)
    {
        (Title, IsAwaited, this.changed) = (title, isAwaited, changed);
        stop = CancellationTokenSource.CreateLinkedTokenSource(closed);
        Stopped = stop.Token;
    }

    /// <summary>It got further. Called from the thread that works.</summary>
    public event Action? Moved;

    /// <summary>What it is, in a few words.</summary>
    public string Title { get; }

    /// <summary>True where somebody waits for it at a screen.</summary>
    public bool IsAwaited { get; }

    /// <summary>False while it waits its turn.</summary>
    public bool HasBegun => hasBegun;

    /// <summary>Share done [0..1]; null where it does not tell.</summary>
    public double? Share => Volatile.Read(ref share) is >= 0 and var told ? told : null;

    /// <summary>Ends when it is stopped, or when its screen is closed.</summary>
    public CancellationToken Stopped { get; }

    /// <summary>It is so far done [0..1]; it never falls back.</summary>
    public void Tell(double done)
    {
        if (done - Math.Max(0, Volatile.Read(ref share)) < LeastStep)
            return;
        Volatile.Write(ref share, Math.Min(done, 1));
        Moved?.Invoke();
        changed();
    }

    /// <summary>Stops it: whoever waits for it comes free at once.</summary>
    public void Stop()
    {
        try
        {
            stop.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It ended in the same moment.
        }
    }

    internal void Begin()
    {
        hasBegun = true;
        changed();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        stop.Dispose();
        GC.SuppressFinalize(this);
    }
}

/// <summary>Work with an answer.</summary>
public sealed class Work<T> : Work
{
    internal Work(string title, CancellationToken closed, Action changed)
        : base(title, isAwaited: true, closed, changed) { }

    /// <summary>The answer; cancelled where it was stopped.</summary>
    public Task<T> Answer { get; internal set; } = null!;
}
