namespace Ohmstead.App.Tests.Screens;

/// <summary>A clock that a test moves; timers of it beat when it is moved past them.</summary>
internal sealed class MovedTime : TimeProvider
{
    private readonly Lock gate = new();
    private readonly List<Beat> beats = [];
    private DateTimeOffset now = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow()
    {
        lock (gate)
            return now;
    }

    /// <summary>Moves it, and lets every timer that is due beat once.</summary>
    public void Move(double seconds)
    {
        List<Beat> due;
        lock (gate)
        {
            now = now.AddSeconds(seconds);
            due = [.. beats];
        }
        foreach (var beat in due)
            beat.Call();
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var beat = new Beat(this, () => callback(state));
        lock (gate)
            beats.Add(beat);
        return beat;
    }

    private sealed class Beat(MovedTime time, Action call) : ITimer
    {
        public void Call() => call();

        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
            lock (time.gate)
                time.beats.Remove(this);
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
