using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Tests.Screens;
using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Background;

/// <summary>What the background does with an answer that is not finished.</summary>
public sealed class UnitDiagnosesTests
{
    [Fact]
    public async Task A_search_that_the_last_guard_ends_is_no_finding_and_says_so()
    {
        await using var bench = await ScreenBench.OpenAsync([.. ScreenBench.ColdGates, ScreenBench.Read("load-1", 14.8)]);
        var leaping = new Bench(bench.Bench.Store, bench.Bench.Photos, new LeapingTime(), Guid.NewGuid);
        await using var desk = new UnitDiagnoses(leaping, NullLogger<UnitDiagnoses>.Instance);
        var ended = new TaskCompletionSource<DiagnosisState>(TaskCreationOptions.RunContinuationsAsynchronously);
        desk.Changed += id =>
        {
            if (desk.Of(id) is { Trouble.Length: > 0 } or { Latest: not null })
                ended.TrySetResult(desk.Of(id));
        };
        desk.Ask(ScreenBench.UnitId);
        var state = await ended.Task.WaitAsync(TimeSpan.FromMinutes(2), Xunit.TestContext.Current.CancellationToken);
        Assert.Null(state.Latest);
        Assert.Null(state.Progress);
        Assert.StartsWith("Still searching", state.Trouble, StringComparison.Ordinal);
    }

    /// <summary>Each look at the clock is an hour after the last.</summary>
    private sealed class LeapingTime : TimeProvider
    {
        private long looks;

        public override long GetTimestamp() => Interlocked.Increment(ref looks) * TimestampFrequency * 3600;
    }
}
