using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Queue;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Proving;

/// <summary>The wiring check as one run: the supply, its readings one after another, what they say, and the signature.</summary>
public sealed partial class CheckBeforeMains
{
    [Inject]
    private ILogger<CheckBeforeMains> Log { get; set; } = null!;

    private WiringRun run = new([]);
    private RewireResult? result;
    private WiringQuestion? wantedOf,
        resultOf;
    private bool isWeighing,
        isStopped;
    private Work? weighing;
    private string checkTrouble = "",
        undone = "",
        part = "";
    private ImmutableArray<WrongEnd> wrongEnds = [];
    private SupplyStated? stated;
    private RewireChecked? passed;
    private int? wanted;
    private bool isCouldNot;

    /// <summary>True when the answer knows the last reading.</summary>
    private bool IsWeighed => Equals(resultOf, wantedOf);

    private bool IsAsked => WiringCheck.LastWiring(Unit!, Sheet!) > 0;

    private int Place => wanted ?? run.Next;

    /// <summary>The reading in hand; null when all are taken and none was asked for again.</summary>
    private WiringStep? Step => Place < run.Steps.Length ? run.Steps[Place] : null;

    private string Count =>
        Step is null
            ? $"{Counted.All(run.Steps.Length, "reading")} taken"
            : $"Reading {ValueText.Plain(Place + 1)} of {ValueText.Plain(run.Steps.Length)} · about {ValueText.Plain(Math.Ceiling(run.MinutesLeft))} min left";

    private IEnumerable<string> Marks =>
        run.Steps.Select(
            (s, n) =>
                n == Place ? "now"
                : !s.IsDone ? ""
                : IsOff(s) ? "bad"
                : "done"
        );

    private IReadOnlyList<(string, string, Meaning?)> LastTwo =>
        [
            .. run.Last(2)
                .Select(s => (s.Offer.Spec.Title, ShownText.Write(s.Offer.Last!.Value.Fact.Shown, s.Offer.Spec.Quantity), MeaningOf(s))),
        ];

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        if (Model is null || Trouble.Length > 0)
            return;
        (stated, passed) = (WiringCheck.Supply(Unit!, Sheet!), WiringCheck.Standing(Unit!, Sheet!));
        if (part.Length == 0)
            part = Model.Sheet.Elements.First(e => e.Kind != ElementKind.Insulation).Id;
        Follow();
        if (PlanningBound.RefuseRewire(Model.Sheet) is { Length: > 0 } tooLarge)
        {
            checkTrouble = $"The wiring was not checked: {tooLarge}";
            return;
        }
        // Mains waits for the check whatever was doubted of a reading.
        var readings = BenchReadings.Of(WiringRun.Since(Unit!, Sheet!) with { Doubts = UnitDoubts.None }, Model, Shop);
        checkTrouble = readings.IsSound ? "" : $"The readings cannot be used: {readings.Problems[0].Wrong}.";
        wrongEnds = WrongEnd.Of(Unit!, Sheet!);
        // What is drawn before the window is live is thrown away: nothing is weighed for it.
        if (!readings.IsSound || !RendererInfo.IsInteractive)
            return;
        var question = new WiringQuestion(CircuitKey.Of(Unit!, Sheet!, Shop), readings.Value!, Shop.Rewire, wrongEnds);
        if (question.Equals(wantedOf))
            return;
        wantedOf = question;
        if (!isWeighing)
            _ = WeighAsync(question, Model.Sheet);
    }

    /// <summary>One at a time: what is typed meanwhile is weighed when this is done.</summary>
    private async Task WeighAsync(WiringQuestion question, TypeSheet planned)
    {
        (isWeighing, isStopped) = (true, false);
        var mine = BeginWork("Wiring check", work => question.Answer(planned, work.Tell, work.Stopped));
        weighing = mine;
        RewireResult? weighed = null;
        try
        {
            weighed = await mine.Answer;
        }
        catch (OperationCanceledException)
        {
            // Where the screen was closed nobody waits for it, and nothing went wrong.
            if (!Closed.IsCancellationRequested)
                await InvokeAsync(ShowStopped);
            return;
        }
#pragma warning disable CA1031 // The edge: a check that breaks says so, and mains stays locked.
        catch (Exception e)
#pragma warning restore CA1031
        {
            Log.LogError(e, "The wiring check of unit {Unit} could not be weighed", Id);
        }
        await InvokeAsync(() => ShowAsync(question, weighed));
    }

    private void ShowStopped()
    {
        (isWeighing, isStopped) = (false, true);
        StateHasChanged();
    }

    private async Task ShowAsync(WiringQuestion question, RewireResult? weighed)
    {
        isWeighing = false;
        (result, resultOf) = (weighed, question);
        checkTrouble = weighed is null
            ? "The check could not be worked out. Mains stays locked. The window that the tool was started from says why."
            : "";
        Follow();
        StateHasChanged();
        if (question.Equals(wantedOf))
            return;
        wantedOf = null;
        await UnitReadAsync();
        StateHasChanged();
    }

    /// <summary>What was stopped is worked out after all.</summary>
    private Task AgainAsync()
    {
        (wantedOf, isStopped) = (null, false);
        return UnitReadAsync();
    }

    /// <summary>The list stays the same from reading to reading; only what was read in it grows.</summary>
    private void Follow()
    {
        if (result is not null && Model is not null)
            run = WiringRun.Of(Unit!, Model, Shop, result.ToRead);
    }

    private Meaning? MeaningOf(WiringStep step)
    {
        if (Model is null || step.Offer.Last is null)
            return null;
        Bands.Get(Model, step.Offer, Meter);
        return MeaningOf(step.Offer);
    }

    private bool IsOff(WiringStep step) => MeaningOf(step)?.Verdict is Verdict.Off or Verdict.Jumps or Verdict.Failed;

    private void GoTo(int place)
    {
        (wanted, isCouldNot, undone) = (place == run.Next ? null : Math.Clamp(place, 0, run.Steps.Length), false, "");
        StateHasChanged();
    }

    private async Task<string> TakeAsync(Shown shown)
    {
        var taken = ReadingEntry.Enter(Step!.Offer, shown, Unit!.Bench);
        if (taken.Fact is null)
            return taken.Refused;
        await EnterAsync(taken.Fact);
        (wanted, isCouldNot, undone) = (null, false, "");
        StateHasChanged();
        return "";
    }

    private async Task<string> WaiveAsync(string why, string by, string instead)
    {
        var taken = ReadingEntry.Waive(Step!.Offer, why, by, instead);
        if (taken.Fact is null)
            return taken.Refused;
        await EnterAsync(taken.Fact);
        (wanted, isCouldNot) = (null, false);
        StateHasChanged();
        return "";
    }

    private async Task TakeBackAsync()
    {
        var entry = await UndoAsync();
        undone = entry is null ? "Nothing to undo." : $"Undone: {FactWords.Of(entry.Fact, Sheet)}.";
        var at = entry?.Fact is ReadingEntered r ? run.Steps.ToList().FindIndex(s => s.Offer.Spec.Id == r.ReadingId) : -1;
        wanted = at >= 0 && at != run.Next ? at : null;
    }

    private Task StateAsync(SupplyStated fact) => EnterAsync(fact, new BenchSet(Unit!.Bench with { LowVolts = fact.AcVolts }));

    private Task RewiredAsync(ImmutableArray<string> parts)
    {
        wanted = null;
        return EnterAsync([.. parts.Select(p => new PartChanged(p, PartChange.Rewired, null, "resoldered"))]);
    }

    private Task SignAsync(string by, string looked) =>
        EnterAsync(new RewireChecked(WiringCheck.MarkOf(Unit!, Sheet!), by.Length > 0 ? by : Who, looked));
}
