using Bunit;
using Microsoft.Extensions.Logging.Abstractions;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.App.Tests.Screens;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Words;

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

    [Fact]
    public async Task What_is_likely_so_far_is_shown_while_it_searches_and_is_no_finding()
    {
        using var goOn = new ManualResetEventSlim();
        await using var bench = await ScreenBench.OpenAsync(ScreenBench.ColdGates);
        await using var desk = new UnitDiagnoses(
            bench.Bench,
            NullLogger<UnitDiagnoses>.Instance,
            (library, readings, options) =>
            {
                var worn = library.Catalogue.Modes.First(m => m.Mode == "worn");
                options.Early!(new(2, [new([worn], 0.624), new([library.Catalogue.Modes.First(m => m.Mode == "open")], 0.04)]));
                goOn.Wait(TimeSpan.FromMinutes(1));
                return ScreenBench.NoFault(readings);
            }
        );
        DiagnosisState? seen = null;
        var (early, last) = (new TaskCompletionSource(), new TaskCompletionSource());
        desk.Changed += id =>
        {
            var state = desk.Of(id);
            if (state.SoFar is not null && Interlocked.CompareExchange(ref seen, state, null) is null)
                early.TrySetResult();
            if (state.Latest is not null)
                last.TrySetResult();
        };
        desk.Ask(ScreenBench.UnitId);
        var cancel = Xunit.TestContext.Current.CancellationToken;
        await early.Task.WaitAsync(TimeSpan.FromMinutes(1), cancel);
        // Only what is worth naming, in the words of a finding; and neither an answer, nor noted for the bench.
        Assert.Equal([("Worn roller, track 1", ValueText.Percent(0.624))], seen!.SoFar!.Likely.Select(l => (l.Name, l.Percent)));
        Assert.Null(seen.Latest);
        Assert.NotNull(seen.Progress);
        Assert.Equal(0, (await bench.UnitAsync()).Doubts.Number);
        var shown = bench.Context.Render<SearchProgress>(p => p.Add(s => s.Answer, seen)).Find("section").TextContent;
        Assert.Contains("Still searching. Most likely so far:", shown, StringComparison.Ordinal);
        Assert.Contains("Worn roller, track 1", shown, StringComparison.Ordinal);
        goOn.Set();
        await last.Task.WaitAsync(TimeSpan.FromMinutes(1), cancel);
        Assert.Null(desk.Of(ScreenBench.UnitId).SoFar);
    }

    [Fact]
    public async Task While_nothing_points_to_a_fault_it_says_so_and_that_it_still_searches()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var state = new DiagnosisState(null, 0.2, "") { SoFar = new([]) };
        var shown = bench.Context.Render<SearchProgress>(p => p.Add(s => s.Answer, state));
        Assert.Equal("Still searching. So far nothing points to a fault.", shown.Find("section").TextContent.Trim());
        // Once nothing is searched any more there is nothing so far either.
        Assert.Empty(bench.Context.Render<SearchProgress>(p => p.Add(s => s.Answer, state with { Progress = null })).FindAll("section"));
    }

    /// <summary>Each look at the clock is an hour after the last.</summary>
    private sealed class LeapingTime : TimeProvider
    {
        private long looks;

        public override long GetTimestamp() => Interlocked.Increment(ref looks) * TimestampFrequency * 3600;
    }
}
