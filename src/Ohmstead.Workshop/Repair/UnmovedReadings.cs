using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Repair;

/// <summary>
/// The readings that a repair cannot have moved: those taken before it still speak of the unit. A reading is moved when its
/// value differs by more than a tenth of the meter's limit over all that the part was, may have been and is: sound before,
/// with each of its faults at its least, middling and greatest size, and after. Solder on the mains side, or beside it, moves
/// every check that has limits, whatever it reads: a blob or a whisker is in no model.
/// </summary>
public static class UnmovedReadings
{
    /// <summary>Of the meter's limit of error.</summary>
    private const double Share = 0.1;

    /// <summary>The facts about to be entered, each change of a part with the readings in it that still count after it.</summary>
    /// <param name="unit">The unit before them.</param>
    /// <param name="sheet">The type's sheet.</param>
    public static Fact[] In(IEnumerable<Fact> facts, BenchUnit unit, TypeSheet sheet, Shop shop)
    {
        var meter = MeterInHand.Of(unit.Bench, shop);
        var named = new List<Fact>();
        foreach (var fact in facts)
        {
            var next = fact is PartChanged change ? In(change, unit, sheet, meter) : fact;
            named.Add(next);
            unit = unit with { Standing = unit.Standing.Add(unit.Last with { Number = unit.LastNumber + named.Count, Fact = next }) };
        }
        return [.. named];
    }

    /// <summary>The change with the readings in it that still count after it.</summary>
    /// <param name="unit">The unit before it.</param>
    /// <param name="sheet">The type's sheet.</param>
    private static PartChanged In(PartChanged change, BenchUnit unit, TypeSheet sheet, Meter meter)
    {
        var after = unit with { Standing = unit.Standing.Add(unit.Last with { Fact = change }) };
        var (old, own) = (OwnSheet.Of(unit, sheet), OwnSheet.Of(after, sheet));
        if (!old.IsSound || !own.IsSound)
            return change;
        var asked = unit
            .CurrentReadings.Select(r => r.Fact.ReadingId)
            .Concat(unit.CurrentWaivers.Select(w => w.Fact.ReadingId))
            .Concat(unit.All<SweepTaken>().Where(s => unit.IsOfNow(s.Entry, s.Fact.ReadingId)).Select(s => s.Fact.ReadingId))
            .Distinct(StringComparer.Ordinal)
            .Select(own.Value!.FindReading)
            .OfType<ReadingSpec>();
        return change with { Keeps = [.. Of(old.Value!, own.Value!, change, asked, meter).Select(r => r.Id)] };
    }

    /// <summary>Those of some readings that the change cannot have moved, in their order.</summary>
    public static ImmutableArray<ReadingSpec> Of(
        TypeSheet before,
        TypeSheet after,
        PartChanged change,
        IEnumerable<ReadingSpec> readings,
        Meter meter
    )
    {
        bool IsAtMains(TypeSheet sheet) => sheet.Elements.Any(e => sheet.PartsOf(change.Element).Contains(e.Id) && LiveSide.IsAt(sheet, e));
        var shutsAll = WiringCheck.MovesWire(change, after) && (IsAtMains(before) || IsAtMains(after));
        var (old, own) = (new UnitModel(before), new UnitModel(after));
        Fault?[] OfOld(UnitModel model) =>
            [
                null,
                .. new FaultCatalogue(model)
                    .Modes.Where(m => m.Parts.Any(model.Sheet.PartsOf(change.Element).Contains))
                    .SelectMany(
                        m => m.HasSize ? new[] { m.Min, m.MiddleSize, m.Max } : [m.MiddleSize],
                        (m, size) => (Fault?)new Fault(m, size)
                    ),
            ];
        var (faultsBefore, faultsAfter) = (OfOld(old), OfOld(own));
        bool IsUnmoved(ReadingSpec spec)
        {
            if (shutsAll && spec.Limits is not null)
                return false;
            double? At(UnitModel model, Fault? fault) =>
                FaultEffect.ValueWith(model, spec, spec.State, fault, meter) is { } v ? FaultEffect.OnScale(v, spec.Quantity, meter) : null;
            // What cannot be solved may have moved: it is read again.
            bool IsNear(double? value, double now) => value is { } v && Math.Abs(v - now) <= Share;
            return At(own, null) is { } now
                && faultsBefore.All(f => IsNear(At(old, f), now))
                && faultsAfter.All(f => IsNear(At(own, f), now));
        }
        return [.. readings.AsParallel().AsOrdered().Where(r => before.FindReading(r.Id) is not null && IsUnmoved(r))];
    }
}
