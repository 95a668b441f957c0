using System.Collections.Immutable;
using Ohmstead.App.Components;
using Ohmstead.Electrical.Faults;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Repair;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Findings;

/// <summary>What is probably wrong, what to do about it, and what to measure again after it was done.</summary>
public sealed partial class UnitFindings
{
    private const int MostShown = 4;

    /// <summary>A less likely fault is one line until it is opened.</summary>
    private const double WorthOpening = 0.2;

    private string said = "";
    private IReadOnlyList<AlikeFindings> cards = [];
    private AfterRepair? after;
    private int afterOf = -1;
    private Diagnosed? drawnOf;
    private Overlay overlay = Overlay.None;
    private ImmutableDictionary<string, string> tags = ImmutableDictionary<string, string>.Empty;
    private IReadOnlyList<string> where = [];
    private IReadOnlyList<string> named = [];

    private FindingsView? View => Answer.Latest?.View;

    private IReadOnlyList<NextAdvice> Advice => Answer.Latest is { } latest ? latest.Next : [];

    private bool HasReadings => View is { Readings.Length: > 0 };

    private AlikeFindings? Settling => cards.FirstOrDefault(c => c.CanBeSettled);

    /// <summary>The one act that the page offers first.</summary>
    private FirstAct Act =>
        Answer.Latest is { View.Doubts: var doubts } latest
            ? FirstActs.Of(latest, doubts is [var first, ..] && UnitLinks.Of(Unit!, first, Shop).Words.Length > 0, Slips, after)
            : FirstAct.GetTo;

    private string Taken =>
        Counted.Of(Readings?.Readings.Count(r => r.IsTaken) ?? 0, "reading")
        + (Readings is { Symptoms.Length: > 0 and var told } ? $", {Counted.Of(told, "symptom")}" : "");

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        Place();
        if (Model is null || Readings is null || afterOf == Unit!.LastNumber)
            return;
        var (unit, model, readings) = (Unit, Model, Readings);
        afterOf = unit.LastNumber;
        var found = await WorkOutAsync(() => AfterRepair.Of(unit, model, readings));
        if (afterOf == unit.LastNumber)
            after = found;
    }

    /// <inheritdoc/>
    protected override bool ShouldRender()
    {
        Place();
        return true;
    }

    /// <summary>The first drawing of a screen does not ask whether it should be drawn: it is placed when the unit was read.</summary>
    private void Place()
    {
        if (Answer.Latest is { } latest && !ReferenceEquals(drawnOf, latest))
        {
            drawnOf = latest;
            cards = latest.View.CardsNow;
            where =
            [
                .. cards
                    .Take(1)
                    .SelectMany(c => c.Findings)
                    .SelectMany(f => f.Members)
                    .SelectMany(m => m.Parts)
                    .Distinct(StringComparer.Ordinal)
                    .Take(MostShown),
            ];
            overlay = Overlay.None with { Suspicion = KnownPart.Suspicion(latest.Result), Tags = latest.View.PartTags };
            tags = latest.View.Tags;
            named = [.. overlay.Tags.Keys.Order(StringComparer.Ordinal)];
        }
    }

    private string TagOf(Finding finding) => tags.GetValueOrDefault(finding.Mode.Name, "");

    private async Task JudgeAsync(FaultMode fault, Judgement judgement)
    {
        await EnterAsync(new FindingJudged(fault.Element, fault.Mode, judgement, ""));
        var name = PartNames.Headline(Sheet!, fault);
        said = judgement switch
        {
            Judgement.Confirmed => $"{name}: found. Get to it, mend it, then press Repaired.",
            Judgement.Dismissed => $"{name}: not this.",
            _ => $"{name}: open again.",
        };
    }

    private async Task ReachAsync(string step)
    {
        await EnterAsync(new WayChosen([step]));
        Navigation.NavigateTo($"/units/{Id}/apart");
    }

    private async Task ChangeAsync(PartChanged change)
    {
        await EnterAsync(change);
        said = $"Repaired: {PartNames.The(Sheet!, change.Element)}. Readings that it can have moved are to be taken again.";
    }
}
