using Ohmstead.App.Phones;

namespace Ohmstead.App.Tests.Phones;

/// <summary>A live connection ends with its device's time, or when the device is shut out, and no other device's does.</summary>
public sealed class LiveConnectionsTests
{
    private readonly HeldTimers time = new();
    private readonly LiveConnections live;

    public LiveConnectionsTests() => live = new(time);

    [Fact]
    public async Task It_is_ended_when_the_time_of_its_device_is_over()
    {
        var (device, end) = (Of(TimeSpan.FromHours(3)), new TaskCompletionSource());
        var running = live.RunAsync(device, end.SetResult, () => end.Task);
        Assert.Equal(TimeSpan.FromHours(3), time.Due);
        Assert.True(live.Has(device.Id));
        time.Ring();
        await running;
        Assert.False(live.Has(device.Id));
        Assert.True(time.IsGone);
    }

    [Fact]
    public async Task Shutting_out_ends_every_connection_of_the_device_and_of_no_other()
    {
        var (device, other) = (Of(TimeSpan.FromDays(1)), Of(TimeSpan.FromDays(1)));
        TaskCompletionSource[] ends = [new(), new(), new()];
        Task[] running =
        [
            live.RunAsync(device, ends[0].SetResult, () => ends[0].Task),
            live.RunAsync(device, ends[1].SetResult, () => ends[1].Task),
            live.RunAsync(other, ends[2].SetResult, () => ends[2].Task),
        ];
        live.End(device.Id);
        await Task.WhenAll(running[..2]);
        Assert.True(live.Has(other.Id));
        Assert.False(running[2].IsCompleted);
        live.End(other.Id);
        await running[2];
    }

    [Fact]
    public async Task One_that_breaks_is_not_counted_any_more_and_coming_and_going_is_told()
    {
        var (device, told) = (Of(TimeSpan.FromDays(400)), 0);
        live.Changed += () => told++;
        await Assert.ThrowsAsync<IOException>(() => live.RunAsync(device, () => { }, () => throw new IOException()));
        Assert.False(live.Has(device.Id));
        Assert.Equal(2, told);
        // A timer takes no more than 49 days.
        Assert.InRange(time.Due, TimeSpan.FromDays(1), TimeSpan.FromDays(49));
    }

    private Device Of(TimeSpan left) => new(Guid.NewGuid(), "Tablet", null, true, "", "") { Until = time.GetUtcNow() + left };

    /// <summary>A clock that stands, whose timers ring when they are told to.</summary>
    private sealed class HeldTimers : TimeProvider
    {
        private Action? ring;

        public TimeSpan Due { get; private set; }

        public bool IsGone { get; private set; }

        public void Ring() => ring!();

        public override DateTimeOffset GetUtcNow() => DateTimeOffset.UnixEpoch.AddYears(60);

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            (Due, ring) = (dueTime, () => callback(state));
            return new Held(this);
        }

        private sealed class Held(HeldTimers all) : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose() => all.IsGone = true;

            public ValueTask DisposeAsync()
            {
                Dispose();
                return ValueTask.CompletedTask;
            }
        }
    }
}
