using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>
/// The card of a unit, from its journal and its type sheet alone, cheap enough to make at every entry. The diagnosis may
/// later put a better next thing in (<c>IStore.SaveFoundAsync</c>).
/// </summary>
public static class CardOf
{
    /// <summary>Makes the card.</summary>
    /// <param name="sheet">The unit's type sheet; null while there is none, or when it is not sound.</param>
    /// <param name="shop">The shop, whose limits and meters say which checks have passed.</param>
    public static UnitCard Make(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        var photos = unit.All<PhotoAdded>().Select(p => p.Fact).ToList();
        var first = photos.Find(p => p.About.Length == 0) ?? photos.FirstOrDefault();
        return new UnitCard(
            unit.Id,
            unit.Card.Tag,
            sheet?.Title ?? "",
            unit.Card.SheetId,
            unit.Card.Owner,
            first?.Photo ?? "",
            FactWords.Of(unit.Last.Fact, sheet),
            unit.Last.At,
            Next(unit, sheet, shop),
            unit.HandedBack is not null
        );
    }

    /// <summary>The next thing, where a diagnosis knows it better than the sheet's order.</summary>
    public static NextThing NextAfter(BenchUnit unit, TypeSheet sheet, Shop shop, Diagnosed done)
    {
        var usual = Make(unit, sheet, shop).Next;
        if (
            done.Next is [{ IsAgain: true } again, ..]
            && usual.Action is NextAction.TakeReading or NextAction.JudgeFindings or NextAction.MakePaper or NextAction.Return
        )
            return ToTake(again, again.Again);
        return usual.Action != NextAction.TakeReading ? usual
            : done.Next is [var best, ..] ? ToTake(best, "Take the reading")
            : new(NextAction.JudgeFindings, "Look at the findings", 5, "");
    }

    private static NextThing ToTake(NextAdvice advice, string act) =>
        new(NextAction.TakeReading, $"{act}: {advice.Reading.Spec.Title}", advice.Reading.Minutes, advice.Reading.Spec.Id);

    private static NextThing Next(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        if (unit.HandedBack is { } back)
            return new NextThing(NextAction.Nothing, FactWords.ReturnTitle(back.Manner), 0, "");
        if (sheet is null)
            return new NextThing(NextAction.NameKind, "Say what type of unit it is", 2, "");
        if (BreakerRun.Of(unit) is { } timed)
            return new NextThing(NextAction.TimeBreaker, $"Timing: {PartNames.Of(sheet, timed.Started.Breaker)}", 1, timed.Started.Breaker);
        if (HeatRunState.Of(unit) is { IsRunning: true } run)
            return new NextThing(NextAction.HeatRun, run.IsOff ? "Heat run: end it" : "Heat run: the next reading", 2, "");
        if (!unit.ClosedStages.Contains(Stage.LookOver))
            return new NextThing(NextAction.LookOver, "Go on with the look-over", 10, "");
        if (ApartNext(unit, sheet) is { } apart)
            return apart;
        if (!WiringCheck.IsOpen(unit, sheet))
            return unit.Unrepaired.FirstOrDefault() is { } first
                ? ToRepair(first, sheet)
                : new NextThing(NextAction.CheckWiring, "Make the wiring check", 25, "");
        if (!unit.ClosedStages.Contains(Stage.Readings) && NextReading(unit, sheet, shop) is { } reading)
            return WiringCheck.IsMains(reading) && FirstDanger(unit, sheet, shop) is { } danger
                ? danger
                : new NextThing(
                    NextAction.TakeReading,
                    $"Take the reading: {PartNames.Reading(sheet, reading.Id)}",
                    reading.Minutes,
                    reading.Id
                );
        if (!unit.ClosedStages.Contains(Stage.Findings))
            return unit.Unrepaired.FirstOrDefault() is { } finding
                ? ToRepair(finding, sheet)
                : new NextThing(NextAction.JudgeFindings, "Look at the findings", 5, "");
        // No paper is made of it: the findings lead to the end of the round.
        if (unit.IsPractice)
            return new NextThing(NextAction.JudgeFindings, "Look at the findings", 5, "");
        return unit.All<PaperMade>().Any(p => p.Fact.Paper == PaperMade.ServiceRecord && p.Entry.Number > unit.LastChange)
            ? new NextThing(NextAction.Return, "Return it", 5, "")
            : new NextThing(NextAction.MakePaper, "Make the service record", 5, PaperMade.ServiceRecord);
    }

    /// <summary>What was found that keeps the mains off.</summary>
    private static NextThing? FirstDanger(BenchUnit unit, TypeSheet sheet, Shop shop) =>
        Endangering.Open(unit, sheet, shop).FirstOrDefault(d => d.State != Danger.NotLookedAt) is { } danger
            ? new NextThing(NextAction.LookOver, $"{EndangeringWords.What(danger)}. {EndangeringWords.Act(danger)}", 20, danger.Item.Id)
            : null;

    /// <summary>On to what is to be reached; the repair there; the wires; the check while the case is open; then the rest back.</summary>
    private static NextThing? ApartNext(BenchUnit unit, TypeSheet sheet)
    {
        var state = ApartState.Of(unit, sheet);
        if (state.NextOff() is { } step)
            return new NextThing(NextAction.TakeApart, $"Take off: {PartNames.Step(sheet, step.Id)}", step.MinutesOut, step.Id);
        if (state.NextBack() is not { } last)
            return null;
        if (unit.Unrepaired.FirstOrDefault() is { } finding)
            return ToRepair(finding, sheet);
        return state.LooseWires.IsEmpty && !WiringCheck.IsOpen(unit, sheet)
            ? new NextThing(NextAction.CheckWiring, "Make the wiring check while the case is open", 25, "")
            : new NextThing(NextAction.PutBack, $"Put back: {PartNames.Step(sheet, last.Step.Id)}", last.Step.MinutesIn, last.Step.Id);
    }

    private static NextThing ToRepair(FindingJudged finding, TypeSheet sheet) =>
        new(NextAction.Repair, $"Repair: {PartNames.Fault(sheet, finding.Element, finding.Mode)}", 20, finding.Element);

    /// <summary>
    /// The first reading of the sheet, closed case before open, that is not taken and whose checks stand. None where the unit's changes or
    /// its readings make no sense: other screens say so.
    /// </summary>
    private static ReadingSpec? NextReading(BenchUnit unit, TypeSheet sheet, Shop shop)
    {
        if (OwnSheet.OnBench(unit, sheet, shop) is not { IsSound: true, Value: { } own })
            return null;
        if (BenchReadings.Of(unit, new UnitModel(own), shop).Value is not { } readings)
            return null;
        var tried = readings.Readings.Select(r => r.Spec.Id).ToHashSet(StringComparer.Ordinal);
        return own
            .Readings.Where(r => !tried.Contains(r.Id) && Gates.Missing(own, readings, r).IsEmpty)
            .OrderBy(r => r.IsOpenCase)
            .FirstOrDefault();
    }
}
