using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Screens.Readings;

/// <summary>One page of a dozen readings for someone who knows: Enter after each goes to the next.</summary>
public sealed partial class Round
{
    private ImmutableArray<string> round;
    private TypeSheet? roundOf;
    private RoundLine?[] lines = [];
    private string said = "";
    private bool isBegun;
    private ElementReference findings;
    private int? goTo;

    /// <summary>The meter whose test leads are asked for: one of the lines is a low-ohm reading with it.</summary>
    private ShopMeter? Leads =>
        round.IsDefault
            ? null
            : Lines.Select(o => o.IsOpen && Bands.Of(o.Spec.Id) is { } band ? LeadsToAsk(band) : null).FirstOrDefault(m => m is not null);

    private IEnumerable<ReadingOffer> Lines => round.Select(id => Offer(id)).OfType<ReadingOffer>();

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        if (Model is null || Trouble.Length > 0)
            return;
        if (!ReferenceEquals(roundOf, Sheet))
            _ = ChooseAsync(Sheet!);
        else
            _ = FillAsync();
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (round.IsDefault)
            return;
        if (!isBegun)
            GoOn(-1);
        isBegun = true;
        var to = goTo;
        goTo = null;
        if (to is { } n)
            await (n < 0 ? findings.FocusIfThereAsync() : lines[n]?.FocusAsync() ?? Task.CompletedTask);
    }

    private async Task ChooseAsync(TypeSheet sheet)
    {
        roundOf = sheet;
        var chosen = await UsualRounds.OfAsync(Bench.Work, sheet);
        if (!ReferenceEquals(roundOf, sheet))
            return;
        (round, lines) = ([.. chosen.Select(r => r.Id)], new RoundLine?[chosen.Length]);
        await InvokeAsync(StateHasChanged);
        await FillAsync();
    }

    private Task FillAsync() => Bands.FillAsync(Bench.Work, Model!, [.. Lines], Meter, () => InvokeAsync(StateHasChanged));

    private async Task<string> TakeAsync(ReadingOffer offer, Shown shown)
    {
        var taken = ReadingEntry.Enter(offer, shown, Unit!.Bench);
        if (taken.Fact is null)
            return taken.Refused;
        await EnterAsync(taken.Fact);
        said = $"Saved: {offer.Spec.Title}, {ShownText.Write(shown, offer.Spec.Quantity)}";
        StateHasChanged();
        return "";
    }

    private async Task TakeBackAsync()
    {
        var entry = await UndoAsync();
        said = entry is null ? "Nothing is left to undo" : $"Undone: {FactWords.Of(entry.Fact, Sheet)}";
        if (entry?.Fact is ReadingEntered r && round.IndexOf(r.ReadingId) is >= 0 and var at && lines[at] is { } line)
            await line.FocusAsync();
        StateHasChanged();
    }

    /// <summary>
    /// To the next line, from the last to the findings. The hand follows when the lines are drawn again: an entry may have opened the next one.
    /// </summary>
    private void GoOn(int from)
    {
        var offers = Lines.ToList();
        goTo = UsualRound.Next(offers, from);
        if (goTo is >= 0 and var next)
            Bench.Asked.Ask(Id, offers[next].Spec.Id, Unit!.LastNumber);
        StateHasChanged();
    }
}
