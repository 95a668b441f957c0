using Microsoft.AspNetCore.Components;
using Ohmstead.App.Components;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Screens.Readings;

/// <summary>One reading fills the screen: how it is set up and what to expect before, what it means after.</summary>
public sealed partial class OneReading
{
    private string? shownReading;
    private ReadingOffer? offer;
    private SetupWords? words;
    private Expectation? band;
    private Shown? shown;
    private NextAdvice? next;
    private Overlay drawn = Overlay.None;
    private IReadOnlyList<string> look = [];
    private string undone = "";
    private bool isCouldNot;
    private bool isFresh;
    private ElementReference nextLink;
    private ElementReference undoKey;

    /// <summary>The reading chosen; null to take what tells most.</summary>
    [Parameter]
    public string? ReadingId { get; set; }

    private IReadOnlyList<NextAdvice> Advice => Answer.Latest is { } latest ? latest.Next : [];

    private string Place =>
        offer is null ? ""
        : Advice.Count > 0 && Advice[0].Reading.Spec.Id == offer.Spec.Id ? "the one that tells most now"
        : offer.Spec.IsGate ? "a cold check: others wait for it"
        : "";

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        if (shownReading == ReadingId && offer is not null)
            return;
        shownReading = ReadingId;
        (shown, undone, isCouldNot) = (null, "", false);
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
        await (next is null ? undoKey : nextLink).FocusAsync();
    }

    /// <inheritdoc/>
    protected override bool ShouldRender()
    {
        next =
            Advice.FirstOrDefault(n =>
                n.Reading.Spec.Id != offer?.Spec.Id && Offer(n.Reading.Spec.Id) is { IsMeasured: false, IsOpen: true }
            )
            ?? (
                Offers.FirstOrDefault(o =>
                    o is { IsOpen: true, IsMeasured: false, IsWaived: false, Last: null } && o.Spec.Id != offer?.Spec.Id
                )
                    is { } first
                    ? new NextAdvice(new(first.Spec, 0, first.Spec.Minutes, []), [])
                    : null
            );
        return true;
    }

    private void Choose()
    {
        if (Model is null)
            return;
        var keep = offer?.Spec.Id;
        var id =
            ReadingId
            ?? keep
            ?? (
                Advice.Count > 0
                    ? Advice[0].Reading.Spec.Id
                    : Offers.FirstOrDefault(o => o is { IsOpen: true, Last: null, IsWaived: false })?.Spec.Id
            );
        offer = Offer(id);
        if (offer is null)
            return;
        words = SetupWords.Of(Model.Sheet, offer.Spec, offer.State);
        band = Bands.Get(Model, offer, Meter);
        drawn = CircuitOverlays.Of(offer, band);
        look = drawn.Probe is { } probe ? [probe.First, probe.Second] : [];
    }

    private async Task<string> TakeAsync(Shown value)
    {
        var taken = Taking.Enter(offer!, value, Unit!.Bench);
        if (taken.Fact is null)
            return taken.Refused;
        await EnterAsync(taken.Fact);
        (shown, undone, isCouldNot, isFresh) = (value, "", false, true);
        StateHasChanged();
        return "";
    }

    private async Task<string> WaiveAsync(string why, string by, string instead)
    {
        var taken = Taking.Waive(offer!, why, by, instead);
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
        (shown, isCouldNot) = (null, false);
        undone = entry is null ? "Nothing is left to take back." : $"Taken back: {FactWords.Of(entry.Fact, Sheet)}.";
        if (entry?.Fact is ReadingEntered r && r.ReadingId != offer?.Spec.Id)
            Navigation.NavigateTo($"/units/{Id}/reading/{r.ReadingId}");
    }

    private void Again() => (shown, undone) = (null, "");

    private Meaning Said => Meaning.Of(shown!, offer!.Spec, band!, Meter.For(offer.Spec.Quantity));

    private string PointsTo()
    {
        if (Answer.Latest is not { } latest || Answer.Progress is not null || band is null || shown is null)
            return "";
        if (Said.Verdict is Verdict.Normal or Verdict.NotTaken)
            return "";
        var likely = Likely.Of(Model!, offer!.Spec, offer.State, shown, band, Meter, latest.Result);
        return likely.Length > 0
            ? char.ToUpperInvariant(likely[0]) + likely[1..] + "."
            : "No single fault is likely to do this alone yet.";
    }
}
