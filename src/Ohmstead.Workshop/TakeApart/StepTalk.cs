using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>What is said before a step is done, and before it goes back.</summary>
public static class StepTalk
{
    /// <summary>From this chance on a step is called risky [%]. Common practice, no source.</summary>
    public const double Risky = 4;

    /// <summary>The warning before a risky step; empty for one that is not.</summary>
    public static string Warning(TakeApartStep step, Shop shop) =>
        step.BreakPercent < Risky ? ""
        : step.Price > 0
            ? $"Breaks in {ValueText.Plain(step.BreakPercent)} of 100 pulls. A new one: {MoneyText.Exact(step.Price, shop)}. Have it ready first."
        : $"Breaks in {ValueText.Plain(step.BreakPercent)} of 100 pulls.";

    /// <summary>True at a stop point: wires come loose here, or what it opens was hidden until now. A photo is taken first.</summary>
    public static bool IsStop(TakeApartStep step, TypeSheet sheet) =>
        !step.Lifts.IsEmpty || sheet.TakeApart.Count(s => s.After.Contains(step.Id)) >= 2;

    /// <summary>The wires of a step, each with its two ends as planned.</summary>
    public static ImmutableArray<string> Wires(TakeApartStep step, TypeSheet own) =>
        [
            .. step
                .Lifts.Select(id => own.Elements.FirstOrDefault(e => e.Id == id))
                .OfType<Element>()
                .Select(e => $"{PartNames.Of(own, e.Id)}: {PartNames.Terminal(own, e.From)} to {PartNames.Terminal(own, e.To)}"),
        ];

    /// <summary>What to watch while it goes back.</summary>
    public static ImmutableArray<string> WatchPoints(OffStep off)
    {
        var points = ImmutableArray.CreateBuilder<string>();
        if (off.Fact.Words.Length > 0)
            points.Add($"You wrote: {off.Fact.Words}");
        if (!off.Step.Lifts.IsEmpty)
            points.Add("Tug each joint. Look for a smooth, hollow fillet. No wire under an edge or across a vent.");
        if (off.Step.BreakPercent >= Risky)
            points.Add($"Breaks in {ValueText.Plain(off.Step.BreakPercent)} of 100: no force.");
        foreach (var noted in off.Noted)
            points.Add(
                $"{Counted.Of(noted.Pieces, "piece")} {Journal.FactWords.Fated(noted.Fate)}{(noted.Words.Length > 0 ? $": {noted.Words}" : "")}"
            );
        return points.ToImmutable();
    }
}
