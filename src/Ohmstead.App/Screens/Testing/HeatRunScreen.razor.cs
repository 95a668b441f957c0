using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Testing;

namespace Ohmstead.App.Screens.Testing;

/// <summary>A heat run: the clock that calls for each reading, where the rise is going, and what the unit may carry when it has ended.</summary>
public sealed partial class HeatRunScreen
{
    /// <summary>Until a reading is taken the tone comes again so often.</summary>
    private static readonly TimeSpan CallAgain = TimeSpan.FromSeconds(20);

    private HeatRunState? run;
    private HeatRunState? done;
    private ImmutableArray<HeatStep> steps = [];
    private HeatPicture? picture;
    private TestResult? result;
    private TestBound? limit;
    private IReadOnlyList<(Guid Id, string Tag, HeatRunState Run)> others = [];
    private DateTimeOffset? calledAt;
    private string said = "";
    private string refused = "";
    private string why = "";
    private string leave = "";
    private HeatCarryTyped known = new("", "", "");
    private int worked;

    /// <summary>By all readings so far; null while it is worked out, and before the third.</summary>
    private HeatRunAnswer? Latest =>
        run is { Missing: 0 } && steps is [.., var last] && last.Question == run.Question() ? last.Answer : null;

    private TestEnd Settled =>
        Latest?.MayStop switch
        {
            "below" => TestEnd.Pass,
            "above" => TestEnd.Fail,
            _ => TestEnd.ClosePass,
        };

    private string Heading =>
        Latest is { Final: var final }
            ? string.Create(CultureInfo.InvariantCulture, $"Final rise {final.LowKelvin:0}–{final.HighKelvin:0} °C")
            : "The rise so far";

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        (run, done, result, limit) = (HeatRunState.Of(Unit!), HeatRunState.Done(Unit!), null, null);
        if (Trouble.Length > 0 || Model is null || Tests.FirstOrDefault(t => t.Id == TestList.Heat) is not { } test)
            return;
        limit = TestBounds.Of(test, Shop, null, 0);
        known = HeatEntry.Known(Tests, run ?? done, Model, Shop);
        others = await OthersAsync();
        if (!RendererInfo.IsInteractive)
            return;
        var of = ++worked;
        if (run is { IsRunning: true } on)
        {
            // The curve stands there at once; the forecasts come to it.
            picture = HeatPicture.Of(on, [.. steps.Where(s => on.Readings.Any(r => r.Minutes == s.Minutes))]);
            _ = ForecastAsync(on, of);
        }
        else if (done is not null)
        {
            var (unit, model, shop) = (Unit!, Model, Shop);
            result = await WorkOutAsync(() => TestResult.Of(test with { Taken = TestTaken.OfHeat(done) }, unit, model, shop, null));
        }
    }

    private async Task ForecastAsync(HeatRunState on, int of)
    {
        var known = steps;
        var found = await WorkOutAsync(() => on.Forecasts(known));
        if (of != worked)
            return;
        (steps, picture) = (found, HeatPicture.Of(on, found));
        await InvokeAsync(StateHasChanged);
    }

    /// <inheritdoc/>
    protected override void OnAfterRender(bool firstRender)
    {
        if (firstRender)
            StartClock();
    }

    /// <inheritdoc/>
    protected override async Task BeatAsync()
    {
        var due = run?.IsCalledAt(Now) == true || others.Any(o => o.Run.IsCalledAt(Now));
        if (!due)
            calledAt = null;
        else if (calledAt is not { } last || Now - last >= CallAgain)
        {
            calledAt = Now;
            await ToneAsync();
        }
    }

    /// <summary>Heat runs that are on elsewhere in the shop: their tone is heard here too.</summary>
    private async Task<IReadOnlyList<(Guid, string, HeatRunState)>> OthersAsync()
    {
        var all = new List<(Guid, string, HeatRunState)>();
        foreach (var card in await Bench.Store.CardsAsync(withHandedBack: false, CancellationToken.None))
            if (
                card.Next.Action == NextAction.HeatRun
                && card.Id != Id
                && await Bench.ReadAsync(card.Id) is { } unit
                && HeatRunState.Of(unit) is { IsRunning: true, IsOff: false } on
            )
                all.Add((card.Id, card.Tag, on));
        return all;
    }

    private async Task<string> BeginAsync(HeatBeginTyped typed)
    {
        var begun = HeatEntry.Begin(run, Locks, typed, limit!, Now);
        if (begun.Fact is null)
            return begun.Refused;
        (steps, picture, said) = ([], null, "");
        await EnterAsync(begun.Fact);
        StateHasChanged();
        return "";
    }

    private async Task UnplugAsync()
    {
        var unplugged = HeatEntry.Unplug(run!, Now);
        (refused, said, calledAt) = (unplugged.Refused, "", null);
        if (unplugged.Fact is { } fact)
            await EnterAsync(fact);
    }

    private async Task<string> ReadAsync(HeatReadTyped typed)
    {
        var read = HeatEntry.Read(run!, typed, Now);
        if (read.Fact is null)
            return read.Refused;
        calledAt = null;
        await EnterAsync(read.Fact);
        said =
            !Locks.IsEmpty ? "Saved. Leave the plug out: mains is locked."
            : typed.StaysOut ? "Saved. Leave the plug out: the unit cools."
            : "Saved. Leads off the blades, then plug in again, and leave it alone.";
        StateHasChanged();
        return "";
    }

    private async Task<string> CoolAsync(string seconds, string ohms)
    {
        var cooled = HeatEntry.Cool(run!, seconds, ohms);
        if (cooled.Fact is not { } fact)
            return cooled.Refused;
        said = "Saved.";
        await EnterAsync(fact);
        StateHasChanged();
        return "";
    }

    private async Task EndAsync()
    {
        if (Latest is { } answer)
            await EnterAsync(HeatEntry.End(run!, answer));
    }

    private async Task GiveUpAsync()
    {
        var given = HeatEntry.GiveUp(why);
        refused = given.Refused;
        if (given.Fact is not { } fact)
            return;
        (why, steps, picture) = ("", [], null);
        await EnterAsync(fact);
    }

    private async Task LeaveAsync()
    {
        refused = await LeaveAsync(Tests.First(t => t.Id == TestList.Heat), leave);
        if (refused.Length == 0)
            leave = "";
    }

    private async Task<(ImmutableArray<string> Words, string Refused)> CarryAsync(HeatCarryTyped typed)
    {
        var (fact, words, problem) = HeatEntry.Carry(
            done!,
            typed,
            Unit!.Bench.SupplyVolts is { } volts ? new(volts, Sheet!.SupplyVolts) : null
        );
        if (fact is not null)
            await EnterAsync(fact);
        return (words, problem);
    }

    private Task ToneAsync() => ScriptAsync("ohmstead.tone", "call");
}
