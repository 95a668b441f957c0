using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Repair;

/// <summary>What to measure again after the last repair, and nothing else.</summary>
/// <param name="Parts">What was repaired: elements or sliders, first to last.</param>
/// <param name="WorkedWhen">What must be so, in words; one for each sort of repair.</param>
/// <param name="Readings">In the order of taking, and whether each was taken since.</param>
/// <param name="WaitsForWiringCheck">True when a wire was moved and no mains reading opens before the wiring check.</param>
public sealed record AfterRepair(
    ImmutableArray<string> Parts,
    ImmutableArray<string> WorkedWhen,
    ImmutableArray<(ReadingSpec Spec, bool IsTaken)> Readings,
    bool WaitsForWiringCheck
)
{
    /// <summary>The next to take; null when all are.</summary>
    public ReadingSpec? Next => Readings.FirstOrDefault(r => !r.IsTaken).Spec;

    /// <summary>
    /// Of the last change, or the last few with no reading between them: the readings that show whether it worked, and the cold
    /// checks that it shut. Null where nothing was changed, or all was read again.
    /// </summary>
    /// <param name="model">The unit's own sheet.</param>
    public static AfterRepair? Of(BenchUnit unit, UnitModel model, UnitReadings readings)
    {
        var changes = LastRun(unit);
        if (changes.IsEmpty)
            return null;
        var modes = changes.Select(c => ModeOf(unit, model, c)).OfType<FaultMode>().ToList();
        var shut = model.Sheet.Readings.Where(r =>
            r is { Limits: not null, State.Source: null } && changes.Any(c => !c.Fact.Keeps.Contains(r.Id))
        );
        var again = modes.SelectMany(m => RepairProof.For(model, m, readings.Meter)).ToList();
        var all = shut.Concat(again).Distinct().ToList();
        var needs = again.SelectMany(r => Gates.Missing(model.Sheet, readings, r)).ToHashSet(StringComparer.Ordinal);
        all.AddRange(model.Sheet.Readings.Where(r => needs.Contains(r.Id) && !all.Contains(r)));
        var first = changes[0].Entry.Number;
        var since = unit
            .CurrentReadings.Where(r => r.Entry.Number > first && r.Fact.Shown.Kind != ShownKind.NotTaken)
            .Select(r => r.Fact.ReadingId)
            .ToHashSet(StringComparer.Ordinal);
        ImmutableArray<(ReadingSpec Spec, bool)> list = [.. InOrder(all, model.Sheet).Select(r => (r, since.Contains(r.Id)))];
        return list.All(r => r.Item2)
            ? null
            : new(
                [.. changes.Select(c => c.Fact.Element).Distinct(StringComparer.Ordinal)],
                [.. modes.Select(m => WhatToDo.For(model.Sheet, m).WorkedWhen).Distinct(StringComparer.Ordinal)],
                list,
                !WiringCheck.IsOpen(unit, model.Sheet)
            );
    }

    private static ImmutableArray<(Entry Entry, PartChanged Fact)> LastRun(BenchUnit unit)
    {
        var changes = unit.All<PartChanged>().ToList();
        if (changes.Count == 0)
            return [];
        var before = unit.All<ReadingEntered>()
            .Select(r => r.Entry.Number)
            .Where(n => n < changes[^1].Entry.Number)
            .DefaultIfEmpty(0)
            .Last();
        return [.. changes.Where(c => c.Entry.Number > before && c.Fact.Change != PartChange.Removed)];
    }

    /// <summary>The fault that the repair was for: the last one found on the part, else the commonest of its kind.</summary>
    private static FaultMode? ModeOf(BenchUnit unit, UnitModel model, (Entry Entry, PartChanged Fact) change)
    {
        var found = unit.All<FindingJudged>()
            .LastOrDefault(f =>
                f.Fact.Element == change.Fact.Element && f.Entry.Number < change.Entry.Number && f.Fact.Judgement == Judgement.Confirmed
            )
            .Fact?.Mode;
        var modes = new FaultCatalogue(model).Modes.Where(m => m.Element == change.Fact.Element).ToList();
        return modes.Find(m => m.Mode == found) ?? modes.MaxBy(m => m.Percent);
    }

    /// <summary>While the case is open, what needs it open; then cold, low voltage, mains; each after what it needs.</summary>
    private static IEnumerable<ReadingSpec> InOrder(List<ReadingSpec> readings, TypeSheet sheet)
    {
        var left = readings.OrderBy(Place).ThenBy(r => sheet.Readings.IndexOf(r)).ToList();
        while (left.Count > 0)
        {
            var next = left.Find(r => !left.Any(l => r.Needs.Contains(l.Id))) ?? left[0];
            yield return next;
            left.Remove(next);
        }
    }

    private static int Place(ReadingSpec r) =>
        r.State.Source switch
        {
            null or { IsDirect: true } when r.IsOpenCase => 0,
            null => 1,
            { IsMains: false } => 2,
            { HasLamp: true } => 3,
            _ => 4,
        };
}
