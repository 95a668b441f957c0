using System.Globalization;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Readings;

/// <summary>One reading fills the screen: how it is set up and what to expect before, what it means after.</summary>
public sealed partial class OneReading
{
    private string? shownReading;
    private ReadingOffer? offer;
    private SetupWords? words;
    private Expectation? band;
    private Shown? shown;
    private Shown? typed;
    private Slip? slip;
    private NextAdvice? next;
    private Overlay drawn = Overlay.None;
    private IReadOnlyList<string> look = [];
    private IReadOnlyList<string>? named;
    private string undone = "";
    private bool isCouldNot;
    private bool isFresh;
    private bool isOnPhoto;
    private (int Done, int Total) count;
    private Ladder? ladder;
    private LowAndHigh means = LowAndHigh.None;
    private (UnitModel, string, Expectation) meansOf;
    private LeadPins pins = LeadPins.None;
    private ElementReference nextLink;
    private ElementReference undoKey;

    /// <summary>The reading chosen; null to take what tells most.</summary>
    [Parameter]
    public string? ReadingId { get; set; }

    private IReadOnlyList<NextAdvice> Advice => Answer.Latest is { } latest ? latest.Next : [];

    private string Nth => count.Total > 0 ? $"Reading {Number(count.Done + 1)} of {Number(count.Total)}" : "";

    private string Standing =>
        offer is null ? ""
        : Advice.Count > 0 && Advice[0].Reading.Spec.Id == offer.Spec.Id ? "best next"
        : offer.Spec.IsGate ? "a cold check"
        : "";

    /// <summary>What is said to hands that hold the probes: where they go; then what was read, and what it means.</summary>
    private string Spoken =>
        shown is not null
            ? $"{ShownText.Write(shown, offer!.Spec.Quantity)}.{(band is null ? "" : $" {Said.Words}.")}"
            : $"{offer!.Spec.Title}.{(words!.Red.Length > 0 ? $" Red on {words.Red}, black on {words.Black}." : "")}";

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        if (shownReading == ReadingId && offer is not null)
            return;
        shownReading = ReadingId;
        (shown, slip, undone, isCouldNot) = (null, null, "", false);
        Choose();
    }

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        if (offer is not null)
            Choose();
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!isFresh || shown is null)
            return;
        // Enter again goes on: the hand stays on the number pad.
        isFresh = false;
        await (next is null ? undoKey : nextLink).FocusIfThereAsync();
    }

    /// <inheritdoc/>
    protected override bool ShouldRender()
    {
        next = NextAdvice.After(offer?.Spec.Id, Advice, Offers);
        return true;
    }

    private void Choose()
    {
        if (Model is null)
            return;
        var keep = offer?.Spec.Id;
        offer = Offer(ReadingId ?? keep ?? NextAdvice.First(Advice, Offers));
        if (offer is null)
            return;
        if (offer.Spec.Id != keep)
            Bench.Asked.Ask(Id, offer.Spec.Id, Unit!.LastNumber);
        words = SetupWords.Of(Model.Sheet, offer.Spec, offer.State);
        band = Bands.Get(Model, offer, Meter);
        drawn = Overlay.Of(Model.Sheet, offer.Spec with { State = offer.State });
        look =
            drawn.Path is { } path ? path.Terminals
            : drawn.Probe is { } probe ? [probe.First, probe.Second]
            : [];
        named = drawn.Path is { } dark ? [.. dark.Parts.Select(p => p.Id)] : null;
        ladder = drawn.Path is { } way ? CircuitOverlays.Ladder(Model.Sheet, way, offer.State.Controls, Answer.Latest) : null;
        pins = LeadPins.Of(Unit!, offer.Spec);
        _ = CountAsync(Sheet!);
        _ = MeansAsync(Model, offer, band);
    }

    /// <summary>Which of the quick list's readings this is; no count for one that is not on it.</summary>
    private async Task CountAsync(TypeSheet sheet)
    {
        var round = await UsualRounds.OfAsync(Bench.Work, sheet);
        var id = offer?.Spec.Id;
        var counted = round.Any(r => r.Id == id)
            ? (round.Count(r => r.Id != id && Offer(r.Id) is { Last: not null }), round.Length)
            : default;
        if (counted == count)
            return;
        count = counted;
        await InvokeAsync(StateHasChanged);
    }

    /// <summary>What low and high would mean, worked out beside the screen.</summary>
    private async Task MeansAsync(UnitModel model, ReadingOffer asked, Expectation expected)
    {
        if (meansOf == (model, asked.Spec.Id, expected))
            return;
        (meansOf, means) = ((model, asked.Spec.Id, expected), LowAndHigh.None);
        var (path, meter) = (drawn.Path, Meter);
        var found = await WorkOutAsync(() => LowAndHigh.Of(model, asked.Spec, asked.State, expected, meter, path));
        if (meansOf != (model, asked.Spec.Id, expected))
            return;
        means = found;
        await InvokeAsync(StateHasChanged);
    }

    /// <summary>The line voltage beside it says all of the power.</summary>
    private bool IsPlainMains => offer is { IsMains: true, State.Source: { HasLamp: false, SeriesOhms: 0 } };

    /// <summary>Set by a field beside it, so not said twice.</summary>
    private bool IsSetHere(string control) =>
        BenchConditions.LooseThrottles(Sheet!, offer!.Spec).Any(c => PartNames.Control(Sheet!, c) == control);

    /// <summary>What is taken out, each with its words.</summary>
    private string[] TakenOut => [.. words!.Also.Take(offer!.State.Lifted.Length)];

    /// <summary>What is clipped together, and a single part that is taken out.</summary>
    private string[] Also => TakenOut.Length > 1 ? [.. words!.Also.Skip(TakenOut.Length)] : [.. words!.Also];

    /// <summary>The load lies across the leads, and the load on hand beside it says which.</summary>
    private bool IsPlainLoad =>
        offer is { State.Loads: [var load] }
        && ((load.From, load.To) == (offer.Spec.From, offer.Spec.To) || (load.To, load.From) == (offer.Spec.From, offer.Spec.To))
        && BenchConditions.LoadsFor(offer.Spec, Shop).Length > 0;

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    /// <summary>The meter whose test leads are asked for before this reading; null for none.</summary>
    private Workshop.Shops.ShopMeter? Leads => offer is { IsOpen: true } && band is not null ? LeadsToAsk(band) : null;

    private Task<string> TakeAsync(Shown value)
    {
        (slip, typed) = (band is null ? null : Slip.Of(value, band), value);
        if (slip is null)
            return KeepAsync(value);
        StateHasChanged();
        return Task.FromResult("");
    }

    private async Task<string> KeepAsync(Shown value)
    {
        var taken = ReadingEntry.Enter(offer!, value, Unit!.Bench);
        if (taken.Fact is null)
            return taken.Refused;
        await EnterAsync(taken.Fact);
        (shown, slip, undone, isCouldNot, isFresh) = (value, null, "", false, true);
        StateHasChanged();
        return "";
    }

    private async Task<string> WaiveAsync(string why, string by, string instead)
    {
        var taken = ReadingEntry.Waive(offer!, why, by, instead);
        if (taken.Fact is null)
            return taken.Refused;
        await EnterAsync(taken.Fact);
        (shown, isCouldNot, isFresh) = (Shown.NotTaken($"waived by {by.Trim()}: {why.Trim()}"), false, true);
        StateHasChanged();
        return "";
    }

    private async Task TakeBackAsync()
    {
        var entry = await UndoAsync();
        (shown, slip, isCouldNot) = (null, null, false);
        undone = entry is null ? "Nothing is left to undo." : $"Undone: {FactWords.Of(entry.Fact, Sheet)}.";
        if (entry?.Fact is ReadingEntered r && r.ReadingId != offer?.Spec.Id)
            Navigation.NavigateTo($"/units/{Id}/reading/{r.ReadingId}");
    }

    private void Again() => (shown, undone) = (null, "");

    /// <summary>The slip to ask about here: the surest that this screen does not say already.</summary>
    private SlipWords? AskedOf =>
        SureSlips.FirstOrDefault(s =>
            (s.Spec.Id != offer!.Spec.Id || s.Correction is not null) && !offer.Shut.Any(g => g.Gate.Id == s.Spec.Id)
        );

    /// <summary>True where reading it again comes before the next.</summary>
    private bool IsDoubted => offer!.Doubted.Length > 0;

    private Meaning Said =>
        IsDoubted ? Meaning.OfDoubted(offer!.Doubted, offer.Spec) : Meaning.Of(shown!, offer!.Spec, band!, Meter.For(offer.Spec.Quantity));

    private string PointsTo()
    {
        if (Answer.Latest is not { } latest || Answer.Progress is not null || band is null || shown is null)
            return "";
        if (Said.Verdict is Verdict.Normal or Verdict.NotTaken or Verdict.Doubted)
            return "";
        var likely = Likely.Of(Model!, offer!.Spec, offer.State, shown, band, Meter, latest.Result);
        return likely.Length > 0 ? char.ToUpperInvariant(likely[0]) + likely[1..] + "." : "No single fault is likely to do this alone yet.";
    }
}
