using Ohmstead.App.Queue;

namespace Ohmstead.App.Tests.Queue;

/// <summary>Work on units that nobody waits for.</summary>
public sealed class UnitJobsTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly (Guid One, Guid Two) Units = (new(1, 0, 0, new byte[8]), new(2, 0, 0, new byte[8]));

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_newer_request_ends_what_an_older_one_began_and_is_worked_out_itself()
    {
        var begun = new SemaphoreSlim(0);
        var ended = new TaskCompletionSource();
        var runs = 0;
        await using var jobs = Jobs(
            async (_, cancel) =>
            {
                if (Interlocked.Increment(ref runs) == 2)
                {
                    ended.SetResult();
                    return;
                }
                begun.Release();
                await Task.Delay(Timeout.Infinite, cancel);
            }
        );
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        jobs.Ask(Units.One);
        await ended.Task.WaitAsync(Patience, Stop);
        Assert.Equal(2, runs);
    }

    [Fact]
    public async Task One_unit_is_worked_on_at_a_time_and_the_others_wait()
    {
        var (begun, go) = (new SemaphoreSlim(0), new SemaphoreSlim(0));
        var (now, most) = (0, 0);
        await using var jobs = Jobs(
            async (_, cancel) =>
            {
                most = Math.Max(most, Interlocked.Increment(ref now));
                begun.Release();
                await go.WaitAsync(cancel);
                Interlocked.Decrement(ref now);
            }
        );
        jobs.Ask(Units.One);
        jobs.Ask(Units.Two);
        await begun.WaitAsync(Patience, Stop);
        Assert.Equal((2, true, true), (jobs.Count, jobs.IsBusy(Units.One), jobs.IsBusy(Units.Two)));
        go.Release();
        await begun.WaitAsync(Patience, Stop);
        go.Release();
        Assert.True(SpinWait.SpinUntil(() => jobs.Count == 0, Patience));
        Assert.Equal(1, most);
    }

    [Fact]
    public async Task What_goes_wrong_is_told_and_the_next_unit_has_its_turn()
    {
        var told = new TaskCompletionSource<(Guid, string)>();
        var worked = new TaskCompletionSource();
        await using var jobs = Jobs(
            (id, _) =>
            {
                if (id == Units.One)
                    throw new FormatException("broken");
                worked.SetResult();
                return Task.CompletedTask;
            },
            (id, e) => told.SetResult((id, e.Message))
        );
        jobs.Ask(Units.One);
        Assert.Equal((Units.One, "broken"), await told.Task.WaitAsync(Patience, Stop));
        jobs.Ask(Units.Two);
        await worked.Task.WaitAsync(Patience, Stop);
    }

    [Fact]
    public async Task At_the_end_it_waits_until_nothing_of_it_touches_the_store_any_more()
    {
        var begun = new SemaphoreSlim(0);
        var isWriting = false;
        var jobs = Jobs(
            async (_, cancel) =>
            {
                isWriting = true;
                begun.Release();
                try
                {
                    await Task.Delay(Timeout.Infinite, cancel);
                }
                finally
                {
                    await Task.Delay(50, CancellationToken.None);
                    isWriting = false;
                }
            }
        );
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        await jobs.DisposeAsync();
        Assert.False(isWriting);
    }

    [Fact]
    public async Task A_person_may_stop_it_in_the_queue_and_a_newer_request_is_no_stop()
    {
        var (begun, told) = (new SemaphoreSlim(0), new TaskCompletionSource<Guid>(TaskCreationOptions.RunContinuationsAsynchronously));
        var queue = new WorkQueue();
        await using var jobs = Jobs(
            async (_, cancel) =>
            {
                begun.Release();
                await Task.Delay(Timeout.Infinite, cancel);
            },
            queue: queue,
            stopped: told.SetResult
        );
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        Assert.False(told.Task.IsCompleted);
        queue.Open[^1].Stop();
        Assert.Equal(Units.One, await told.Task.WaitAsync(Patience, Stop));
        Assert.True(SpinWait.SpinUntil(() => jobs.Count == 0, Patience));
    }

    [Fact]
    public async Task A_unit_that_waits_keeps_its_place_however_often_it_is_asked_again()
    {
        var (begun, go, order) = (new SemaphoreSlim(0), new SemaphoreSlim(0), new List<Guid>());
        await using var jobs = Jobs(
            async (id, cancel) =>
            {
                order.Add(id);
                begun.Release();
                await go.WaitAsync(cancel);
            }
        );
        var queue = (Guid[])[Units.One, Units.Two, new(3, 0, 0, new byte[8])];
        jobs.Ask(queue[0]);
        await begun.WaitAsync(Patience, Stop);
        foreach (var unit in queue[1..])
        {
            jobs.Ask(unit);
            Assert.True(SpinWait.SpinUntil(() => jobs.Count == Array.IndexOf(queue, unit) + 1, Patience));
            await Task.Delay(50, Stop);
        }
        for (var n = 0; n < 5; n++)
            jobs.Ask(queue[1]);
        for (var n = 0; n < 2; n++)
        {
            go.Release();
            await begun.WaitAsync(Patience, Stop);
        }
        go.Release();
        Assert.True(SpinWait.SpinUntil(() => jobs.Count == 0, Patience));
        Assert.Equal(queue, order);
    }

    [Fact]
    public async Task Where_another_unit_waits_what_was_begun_comes_to_its_end_and_the_newer_request_has_its_turn_after_it()
    {
        var (begun, go) = (new SemaphoreSlim(0), new SemaphoreSlim(0));
        var (order, cut) = (new List<Guid>(), 0);
        await using var jobs = Jobs(
            async (id, cancel) =>
            {
                order.Add(id);
                begun.Release();
                await go.WaitAsync(CancellationToken.None);
                cut += cancel.IsCancellationRequested ? 1 : 0;
            }
        );
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        jobs.Ask(Units.Two);
        jobs.Ask(Units.One);
        jobs.Ask(Units.One);
        for (var n = 0; n < 2; n++)
        {
            go.Release();
            await begun.WaitAsync(Patience, Stop);
        }
        go.Release();
        Assert.True(SpinWait.SpinUntil(() => jobs.Count == 0, Patience));
        // Both came to the queue at once: either may be first there.
        Assert.Equal(Units.One, order[0]);
        Assert.Equal([Units.One, Units.One, Units.Two], order.Order());
        Assert.Equal(0, cut);
    }

    [Fact]
    public async Task Whoever_enters_faster_than_is_worked_out_sees_an_answer_all_the_same()
    {
        var (begun, go) = (new SemaphoreSlim(0), new SemaphoreSlim(0));
        var ends = new List<bool>();
        await using var jobs = Jobs(
            async (_, cancel) =>
            {
                begun.Release();
                try
                {
                    await go.WaitAsync(cancel);
                }
                finally
                {
                    ends.Add(!cancel.IsCancellationRequested);
                }
            }
        );
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        // The first is cut, the second is not, and what came meanwhile is worked out after it.
        jobs.Ask(Units.One);
        await begun.WaitAsync(Patience, Stop);
        jobs.Ask(Units.One);
        Assert.True(jobs.IsBusy(Units.One) && jobs.Behind > TimeSpan.Zero);
        go.Release();
        await begun.WaitAsync(Patience, Stop);
        go.Release();
        Assert.True(SpinWait.SpinUntil(() => jobs.Count == 0, Patience));
        Assert.Equal([false, true, true], ends);
        Assert.Equal(TimeSpan.Zero, jobs.Behind);
    }

    private static UnitJobs Jobs(
        Func<Guid, CancellationToken, Task> work,
        Action<Guid, Exception>? broke = null,
        WorkQueue? queue = null,
        Action<Guid>? stopped = null
    ) =>
        new(queue ?? new WorkQueue(), "Findings", TimeProvider.System, TimeSpan.Zero)
        {
            Do = (id, mine) => work(id, mine.Stopped),
            Broke = broke ?? ((_, e) => Assert.Fail(e.ToString())),
            Stopped = stopped ?? (_ => { }),
        };
}
