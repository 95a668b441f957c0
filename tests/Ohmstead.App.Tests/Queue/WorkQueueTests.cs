using Ohmstead.App.Queue;

namespace Ohmstead.App.Tests.Queue;

/// <summary>The queue behind the screens: who waits for whom, how far it is, and what a stop does.</summary>
public sealed class WorkQueueTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly WorkQueue queue = new();

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_person_is_answered_while_something_that_nobody_waits_for_has_its_turn()
    {
        var (begun, go) = (new TaskCompletionSource(), new TaskCompletionSource());
        var later = queue.LaterAsync(
            "Findings",
            _ =>
            {
                begun.SetResult();
                return go.Task;
            },
            Stop
        );
        await begun.Task.WaitAsync(Patience, Stop);
        Assert.Equal(7, await queue.RunAsync("A band", () => 7, Stop).WaitAsync(Patience, Stop));
        Assert.Equal(("Findings", false, true), queue.Open.Select(w => (w.Title, w.IsAwaited, w.HasBegun)).Single());
        go.SetResult();
        await later.WaitAsync(Patience, Stop);
        Assert.Empty(queue.Open);
    }

    [Fact]
    public async Task What_nobody_waits_for_has_its_turn_one_after_the_other_in_the_order_of_asking()
    {
        var (go, order) = (new TaskCompletionSource(), new List<string>());
        Task Ask(string title) =>
            queue.LaterAsync(
                title,
                async _ =>
                {
                    await go.Task;
                    order.Add(title);
                },
                Stop
            );
        var asked = new[] { Ask("one"), Ask("two"), Ask("three") };
        Assert.Equal([true, false, false], queue.Open.Select(w => w.HasBegun));
        go.SetResult();
        await Task.WhenAll(asked).WaitAsync(Patience, Stop);
        Assert.Equal(["one", "two", "three"], order);
    }

    [Fact]
    public async Task Whoever_stops_comes_free_at_once_though_the_work_does_not_look_at_its_stop()
    {
        using var go = new ManualResetEventSlim();
        var work = queue.Begin(
            "Plan",
            _ =>
            {
                go.Wait(CancellationToken.None);
                return 1;
            },
            Stop
        );
        Assert.True(SpinWait.SpinUntil(() => work.HasBegun, Patience));
        work.Stop();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work.Answer.WaitAsync(Patience, Stop));
        Assert.Single(queue.Open);
        go.Set();
        Assert.True(SpinWait.SpinUntil(() => queue.Open.Count == 0, Patience));
        // A stop after the end stops nothing, and breaks nothing.
        work.Stop();
    }

    [Fact]
    public async Task Work_that_looks_at_its_stop_ends_with_it_and_half_an_answer_is_none()
    {
        var work = queue.Begin("Which type fits", w => w.Stopped.WaitHandle.WaitOne(Patience), Stop);
        work.Stop();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work.Answer.WaitAsync(Patience, Stop));
        Assert.True(SpinWait.SpinUntil(() => queue.Open.Count == 0, Patience));
    }

    [Fact]
    public async Task Of_a_screen_that_is_closed_nothing_is_begun()
    {
        using var closed = new CancellationTokenSource();
        await closed.CancelAsync();
        var isBegun = false;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => queue.RunAsync("A band", () => isBegun = true, closed.Token));
        Assert.True(SpinWait.SpinUntil(() => queue.Open.Count == 0, Patience));
        Assert.False(isBegun);
    }

    [Fact]
    public async Task How_far_it_is_is_told_in_steps_and_never_falls_back()
    {
        var told = new List<double?>();
        using var go = new ManualResetEventSlim();
        var work = queue.Begin(
            "A type sheet",
            w =>
            {
                go.Wait(CancellationToken.None);
                foreach (var share in new[] { 0.001, 0.25, 0.251, 0.1, 1.5 })
                    w.Tell(share);
                return 0;
            },
            Stop
        );
        Assert.Null(work.Share);
        work.Moved += () => told.Add(work.Share);
        go.Set();
        await work.Answer.WaitAsync(Patience, Stop);
        Assert.Equal([0.25, 1], told);
    }

    [Fact]
    public async Task What_takes_long_goes_on_beside_the_rest_and_takes_nobodys_turn()
    {
        var go = new TaskCompletionSource();
        var merge = queue.BesideAsync("A merge", _ => go.Task);
        await queue.LaterAsync("Findings", _ => Task.CompletedTask, Stop).WaitAsync(Patience, Stop);
        Assert.True(SpinWait.SpinUntil(() => queue.Open.Count == 1, Patience));
        Assert.Equal("A merge", queue.Open[0].Title);
        go.SetResult();
        await merge.WaitAsync(Patience, Stop);
        Assert.Empty(queue.Open);
    }

    [Fact]
    public async Task What_goes_wrong_reaches_who_waits_and_leaves_the_queue()
    {
        await Assert.ThrowsAsync<FormatException>(() => queue.RunAsync<int>("A paper", () => throw new FormatException("broken"), Stop));
        Assert.Empty(queue.Open);
    }
}
