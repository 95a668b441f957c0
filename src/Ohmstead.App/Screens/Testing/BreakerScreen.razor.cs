using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Components;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Testing;

/// <summary>A breaker is timed: what to expect first, then the count that nothing disturbs, then what it did and how long it cools.</summary>
public sealed partial class BreakerScreen
{
    private BreakerRun? run;
    private BreakerPlan? plan;
    private ImmutableArray<Resistive> breakers = [];
    private Resistive? breaker;
    private BenchTest? test;
    private BenchTest? meanwhile;
    private TestResult? result;
    private (Entry Entry, BreakerTimed Fact)? last;
    private double coolLeft;
    private string amps = "";
    private string refused = "";
    private string why = "";
    private string leave = "";
    private string shown = "";
    private bool isLocked;

    /// <summary>How often it says to switch off, once the count is over.</summary>
    private static readonly TimeSpan StopAgain = TimeSpan.FromSeconds(2);

    private int called = int.MaxValue;
    private DateTimeOffset stopped;
    private int worked;

    /// <summary>Which; null for the first.</summary>
    [Parameter]
    public string? BreakerId { get; set; }

    private string Expected =>
        !double.IsFinite(plan!.Expected.Seconds) ? "At these amps it should not open."
        : Math.Round(plan.Expected.LowSeconds) < Math.Round(plan.Expected.HighSeconds)
            ? string.Create(CultureInfo.InvariantCulture, $"{plan.Expected.LowSeconds:0}–{plan.Expected.HighSeconds:0} s")
        : string.Create(CultureInfo.InvariantCulture, $"about {plan.Expected.Seconds:0} s");

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        if (Unit is null || shown == (BreakerId ?? ""))
            return;
        (shown, amps, refused) = (BreakerId ?? "", "", "");
        await ChooseAsync();
    }

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        await ChooseAsync();
    }

    private async Task ChooseAsync()
    {
        run = BreakerRun.Of(Unit!);
        breakers = Model is null ? [] : BreakerPlan.Breakers(Model.Sheet);
        breaker = breakers.FirstOrDefault(b => BreakerId is null || b.Id == BreakerId);
        test = Tests.FirstOrDefault(t => t.Id == TestList.OfBreaker(breaker?.Id ?? ""));
        if (breaker is null || test is null)
            return;
        last = BreakerRun.Last(Unit!, breaker.Id);
        if (amps.Length == 0)
            amps = ValueText.Plain(BreakerPlan.TestAmps(breaker));
        Follow();
        meanwhile = TestPlan.Meanwhile(Tests);
        var of = ++worked;
        var found = await WorkOutAsync(test);
        if (of == worked)
            result = found;
    }

    private void Follow()
    {
        if (breaker is null)
            return;
        var (typed, problem) = BreakerEntry.Amps(amps);
        refused = problem;
        plan = problem.Length > 0 ? null : BreakerPlan.Of(Unit!, Model!.Sheet, breaker, typed, Shop);
        coolLeft = plan is null ? 0 : BreakerEntry.CoolLeft(Unit!, plan, Now);
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
            StartClock();
        if (isLocked != run is not null)
        {
            isLocked = run is not null;
            await ScriptAsync("ohmstead.handsOff", isLocked);
        }
    }

    /// <inheritdoc/>
    protected override async Task BeatAsync()
    {
        if (run is null)
        {
            if (coolLeft > 0)
                coolLeft = BreakerEntry.CoolLeft(Unit!, plan!, Now);
            return;
        }
        var left = run.LeftAt(Now);
        // From the count on it does not stop to say so, until the load is off.
        if (left == 0 && (called != 0 || Now - stopped >= StopAgain))
        {
            (called, stopped) = (0, Now);
            await ScriptAsync("ohmstead.tone", "stop");
        }
        if (left == called)
            return;
        called = left;
        // The last five seconds are counted aloud.
        if (left <= 5)
            await ScriptAsync("ohmstead.tone", "count");
    }

    private Task AmpsAsync(ChangeEventArgs e)
    {
        amps = (string?)e.Value ?? "";
        Follow();
        return Task.CompletedTask;
    }

    private async Task StartAsync()
    {
        var started = BreakerEntry.Start(Unit!, Locks, breaker!.Id, plan!, Now);
        (refused, called) = (started.Refused, int.MaxValue);
        if (started.Fact is { } fact)
            await EnterAsync(fact);
    }

    private async Task<string> HeldAsync(DateTimeOffset from, bool isEarly)
    {
        var timed = isEarly ? BreakerEntry.Early(Unit!, from, Now) : BreakerEntry.Held(Unit!, from, Now);
        if (timed.Fact is null)
            return timed.Refused;
        await EnterAsync(timed.Fact);
        StateHasChanged();
        return "";
    }

    private async Task DropAsync()
    {
        if (last is not { } timed || why.Trim().Length == 0)
        {
            refused = "Say in a few words why it does not count.";
            return;
        }
        await EnterAsync(new Corrected(timed.Entry.Id, timed.Fact with { Why = why.Trim() }));
        why = "";
    }

    private async Task LeaveAsync()
    {
        refused = await LeaveAsync(test!, leave);
        if (refused.Length == 0)
            leave = "";
    }
}
