using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Readings;

/// <summary>What was read on a unit, as everything reasons from it: from the facts of its journal to the readings of the core.</summary>
public static class BenchReadings
{
    /// <summary>
    /// The readings that speak of the unit as it is now, with the conditions of each and with what the last diagnosis doubts of them;
    /// every problem where a journal or a shop holds what no readings file may.
    /// </summary>
    /// <param name="model">The unit's own sheet (<see cref="OwnSheet"/>).</param>
    public static Parsed<UnitReadings> Of(BenchUnit unit, UnitModel model, Shop shop)
    {
        var (sheet, signs, inHand) = (model.Sheet, unit.Signs, MeterInHand.Of(unit.Bench, shop));
        var told = sheet
            .Observations.Where(o => signs.GetValueOrDefault(o.Id) != Answer.Unsure)
            .OrderBy(o => o.Id, StringComparer.Ordinal)
            .Select(o => new Symptom(o, signs[o.Id] == Answer.Yes));
        var readings = new UnitReadings(sheet.Id, unit.Bench.SupplyVolts ?? sheet.SupplyVolts, null, inHand, [], [.. told])
        {
            Doubts = unit.Doubts.Checks,
        };
        var taken = unit.CurrentReadings.Select(r => (r.Entry.Number, Reading: Taken(r.Fact, model, shop, inHand)));
        var waived = unit.CurrentWaivers.Select(w => (w.Entry.Number, Reading: Waived(w.Fact, sheet, readings)));
        readings = readings with
        {
            Readings = [.. taken.Concat(waived).OrderBy(r => r.Number).Select(r => r.Reading).OfType<TakenReading>()],
        };
        var problems = ReadingsCheck.Run(sheet, readings);
        return new(problems.Count == 0 ? readings : null, problems);
    }

    /// <summary>Null where the unit's sheet has no such reading.</summary>
    private static TakenReading? Taken(ReadingEntered fact, UnitModel model, Shop shop, Meter inHand)
    {
        if (model.Sheet.FindReading(fact.ReadingId) is not { } spec)
            return null;
        var shown = fact.Shown;
        // A journal that came in from elsewhere may hold what this tool refuses to enter.
        if (shown.Kind == ShownKind.OverRange && !ReadingEntry.IsResistance(spec.Quantity))
            shown = Shown.NotTaken("the meter's range was too low");
        return new(
            spec,
            OutcomeOf(shown.Kind),
            shown.Kind == ShownKind.Value ? shown.Value : 0,
            shown.Kind == ShownKind.Jumps ? [.. shown.Between.Select(b => b ?? double.PositiveInfinity)] : [],
            shown.Why,
            "",
            BenchConditions.StateOf(model, spec, fact.Bench, shop)
        )
        {
            // A reading is judged with the meter it was taken with: a better one taken up later makes it no better.
            OwnError = MeterInHand.ErrorFor(spec.Quantity, fact.Bench, shop) is var own && own != inHand.For(spec.Quantity) ? own : null,
        };
    }

    private static TakenReading? Waived(ReadingWaived fact, TypeSheet sheet, UnitReadings readings) =>
        sheet.FindReading(fact.ReadingId) is { } spec
            ? new(spec, Outcome.NotTaken, 0, [], fact.Why, fact.WaivedBy, readings.StateOf(sheet, spec)) { Instead = fact.Instead }
            : null;

    private static Outcome OutcomeOf(ShownKind kind) =>
        kind switch
        {
            ShownKind.Value => Outcome.Value,
            ShownKind.OverRange => Outcome.OverRange,
            ShownKind.Jumps => Outcome.Jumps,
            ShownKind.NotTaken => Outcome.NotTaken,
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
}
