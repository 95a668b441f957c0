using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>A reading as it is offered at the bench.</summary>
/// <param name="State">The unit's state as it really is (<see cref="BenchConditions"/>).</param>
/// <param name="Shut">The gates that are shut before it, to be taken first ones first; empty when it may be taken.</param>
/// <param name="Cautions">Hazards, in words; empty when there is none beyond the usual.</param>
/// <param name="Waived">What it rests on that was never taken, only waived: the reading and who waived it.</param>
/// <param name="Access">"case closed", or the step of taking apart that gives access.</param>
/// <param name="Last">The last entry of it that speaks of the unit as it is now.</param>
public sealed record ReadingOffer(
    ReadingSpec Spec,
    ReadingState State,
    ImmutableArray<ShutGate> Shut,
    ImmutableArray<string> Cautions,
    ImmutableArray<string> Waived,
    string Access,
    (Entry Entry, ReadingEntered Fact)? Last
)
{
    /// <summary>True when its gates are open.</summary>
    public bool IsOpen => Shut.IsEmpty && !WaitsForCheck && Endangering.IsEmpty;

    /// <summary>True when nothing was entered for it yet, nor said in writing that the shop cannot take it.</summary>
    public bool IsToDo => Last is null && !IsWaived;

    /// <summary>Why it is locked, what to do first first.</summary>
    public ImmutableArray<LockReason> Locks => LockReason.Of(this);

    /// <summary>True when a wire was moved and the check before mains does not stand.</summary>
    public bool WaitsForCheck { get; init; }

    /// <summary>What the look-over found, or nobody looked at, that keeps the mains off it; empty for a reading below 30 V.</summary>
    public ImmutableArray<Endangering> Endangering { get; init; } = [];

    /// <summary>True when its source is above 30 V.</summary>
    public bool IsMains => Spec.State.Source is { IsMains: true };

    /// <summary>True when it was measured, well or badly, since the circuit was last changed.</summary>
    public bool IsMeasured { get; init; }

    /// <summary>Why its last value is doubted; empty when it is not (<c>UnitDoubts.Why</c>).</summary>
    public string Doubted { get; init; } = "";

    /// <summary>True when the shop has no instrument for it and said so in writing.</summary>
    public bool IsWaived { get; init; }

    /// <summary>All readings of the unit's sheet as they are offered now, in sheet order.</summary>
    public static ImmutableArray<ReadingOffer> All(BenchUnit unit, UnitModel model, UnitReadings readings, Shop shop)
    {
        var last = unit
            .CurrentReadings.GroupBy(r => r.Fact.ReadingId, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);
        var isChecked = WiringCheck.IsOpen(unit, model.Sheet);
        var endangering = LookOver.Endangering.Open(unit, model.Sheet, shop);
        return
        [
            .. model.Sheet.Readings.Select(spec =>
                Of(spec, unit, model, readings, shop) with
                {
                    Endangering = spec.State.Source is { IsMains: true } ? endangering : [],
                    WaitsForCheck = !isChecked && spec.State.Source is { IsMains: true },
                    Last = last.TryGetValue(spec.Id, out var found) ? found : null,
                    Doubted = IsReadSince(unit, spec) ? "" : unit.Doubts.Why(model.Sheet, spec, Gates.EndOf(readings, spec)),
                    IsMeasured = readings.Readings.Any(r => r.Spec.Id == spec.Id && r.IsTaken),
                    IsWaived =
                        readings.Readings.Any(r => r.Spec.Id == spec.Id && r.WaivedBy.Length > 0)
                        && !readings.Readings.Any(r => r.Spec.Id == spec.Id && r.IsTaken),
                }
            ),
        ];
    }

    private static ReadingOffer Of(ReadingSpec spec, BenchUnit unit, UnitModel model, UnitReadings readings, Shop shop)
    {
        var sheet = model.Sheet;
        var shut = Gates.Missing(sheet, readings, spec).Select(id => GateOf(unit, sheet, sheet.FindReading(id)!, readings));
        var access = !spec.IsOpenCase ? "case closed" : $"case open: {PartNames.Step(sheet, spec.Access)} off";
        var state = BenchConditions.StateOf(model, spec, unit.Bench, shop);
        return new(spec, state, [.. shut], ReadingCautions.Of(model, spec, state), [.. WaivedBefore(spec, sheet, readings)], access, null);
    }

    /// <summary>The last that was read of each pair of terminals, where it was read in several states.</summary>
    public static IEnumerable<ReadingOffer> LastOfPairs(IEnumerable<ReadingOffer> offers) =>
        offers
            .Where(o => o.Spec.From.Length > 0 && o.Last is { Fact.Shown.Kind: not ShownKind.NotTaken })
            .GroupBy(o => (o.Spec.From, o.Spec.To))
            .Select(g => g.MaxBy(o => o.Last!.Value.Entry.Number)!);

    /// <summary>Every gate of a sheet that has not passed and is not waived, whether or not a reading waits for it.</summary>
    public static IEnumerable<ShutGate> ShutIn(BenchUnit unit, TypeSheet sheet, UnitReadings readings) =>
        sheet.Readings.Where(r => r.IsGate && !Gates.Stands(readings, r)).Select(r => GateOf(unit, sheet, r, readings));

    private static ShutGate GateOf(BenchUnit unit, TypeSheet sheet, ReadingSpec gate, UnitReadings readings)
    {
        var end = Gates.EndOf(readings, gate);
        if (readings.Readings.LastOrDefault(r => r.Spec.Id == gate.Id && r.IsTaken) is { } taken)
            return new(gate, $"{Measured(taken)}: {(end == CheckEnd.Doubted ? Doubt(unit, sheet, gate) : Why(gate, taken, end))}", end);
        var could = readings.Readings.LastOrDefault(r => r.Spec.Id == gate.Id);
        return new(gate, could is { Why.Length: > 0 } ? $"not taken: {could.Why}" : "not taken yet", end);
    }

    private static string Why(ReadingSpec gate, TakenReading taken, CheckEnd end) =>
        end == CheckEnd.TooClose ? $"too close to {LimitWords.WithSource(gate)}. Read it again, or use a better meter"
        : taken.Outcome == Outcome.Jumps ? "it jumps, so it failed. A measured failure cannot be waived"
        : $"failed {LimitWords.WithSource(gate)}. A measured failure cannot be waived";

    private static string Doubt(BenchUnit unit, TypeSheet sheet, ReadingSpec gate) =>
        IsReadSince(unit, gate)
            ? $"read again, and not judged yet. {(unit.Doubts.Trouble.Length > 0 ? unit.Doubts.Trouble.TrimEnd('.') : "Wait a moment for the findings")}"
            : $"{unit.Doubts.Why(sheet, gate, CheckEnd.Doubted)}. {unit.Doubts.Do(gate)}";

    /// <summary>True when it was read again after the diagnosis that doubts it: the next one says what of it holds.</summary>
    private static bool IsReadSince(BenchUnit unit, ReadingSpec spec) =>
        unit.CurrentReadings.LastOrDefault(r => r.Fact.ReadingId == spec.Id).Entry is { } last && last.Number > unit.Doubts.Number;

    private static string Measured(TakenReading r) =>
        r.Outcome switch
        {
            Outcome.OverRange => "OL",
            Outcome.Jumps => string.Join(" ↔ ", r.JumpValues.Select(v => ValueText.Of(v, r.Spec.Quantity))),
            _ => ValueText.Read(r.Value, r.Spec.Quantity),
        };

    private static IEnumerable<string> WaivedBefore(ReadingSpec spec, TypeSheet sheet, UnitReadings readings)
    {
        var needs = sheet.NeedsOf(spec);
        return sheet
            .Readings.Where(r => needs.Contains(r.Id) && !readings.Readings.Any(t => t.Spec.Id == r.Id && t.IsTaken))
            .Select(r => (r.Title, Waiver: readings.Readings.LastOrDefault(t => t.Spec.Id == r.Id && t.WaivedBy.Length > 0)))
            .Where(w => w.Waiver is not null)
            .Select(w => $"{w.Title}: waived by {w.Waiver!.WaivedBy}");
    }
}

/// <summary>A check that keeps another reading locked, and why.</summary>
/// <param name="Why">In words.</param>
/// <param name="End">Not taken, too close, doubted, or failed.</param>
public sealed record ShutGate(ReadingSpec Gate, string Why, CheckEnd End)
{
    /// <summary>False for one that was measured.</summary>
    public bool CanBeWaived => End == CheckEnd.NotTaken;
}
