using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Proving;

/// <summary>
/// The wiring check as one run: the cold checks that its readings wait for, and those that mains will wait for where none counts
/// from before the wire was moved; then its readings, one after another.
/// </summary>
public sealed record WiringRun(ImmutableArray<WiringStep> Steps)
{
    /// <summary>The unit as it is read for the check: what was read before a wire was last moved was of another wiring.</summary>
    public static BenchUnit Since(BenchUnit unit, TypeSheet sheet)
    {
        var wiring = WiringCheck.LastWiring(unit, sheet);
        return unit with { Standing = [.. unit.Standing.Where(e => e.Number > wiring || e.Fact is not (ReadingEntered or ReadingWaived))] };
    }

    /// <summary>The run, with what was read in it so far.</summary>
    /// <param name="model">The unit's own sheet.</param>
    /// <param name="take">The list of the check.</param>
    public static WiringRun Of(BenchUnit unit, UnitModel model, Shop shop, ImmutableArray<RewireReading> take)
    {
        var since = Since(unit, model.Sheet);
        var readings = BenchReadings.Of(since, model, shop);
        if (!readings.IsSound)
            return new([]);
        var offers = ReadingOffer.All(since, model, readings.Value!, shop).ToDictionary(o => o.Spec.Id, StringComparer.Ordinal);
        var order = new List<string>();
        void Add(string id)
        {
            if (order.Contains(id) || !offers.TryGetValue(id, out var offer))
                return;
            foreach (var need in offer.Spec.Needs)
                Add(need);
            order.Add(id);
        }
        var wiring = WiringCheck.LastWiring(unit, model.Sheet);
        var before = unit
            .CurrentReadings.Where(r => r.Entry.Number <= wiring)
            .Select(r => r.Fact.ReadingId)
            .Concat(unit.CurrentWaivers.Where(w => w.Entry.Number <= wiring).Select(w => w.Fact.ReadingId))
            .ToHashSet(StringComparer.Ordinal);
        foreach (var check in model.Sheet.Readings.Where(r => r is { IsGate: true, State.Source: null } && !before.Contains(r.Id)))
            Add(check.Id);
        foreach (var t in take.OrderBy(t => t.Spec.State.Source is not null))
            Add(t.Spec.Id);
        var shows = take.ToDictionary(t => t.Spec.Id, t => t.Discriminates.Length, StringComparer.Ordinal);
        return new([.. order.Select(id => new WiringStep(offers[id], shows.GetValueOrDefault(id)))]);
    }

    /// <summary>Place of the first reading that is still to be taken; the number of steps when all are.</summary>
    public int Next => Steps.TakeWhile(s => s.IsDone).Count();

    /// <summary>True when every reading was taken.</summary>
    public bool IsThrough => Next == Steps.Length;

    /// <summary>Minutes of what is still to be taken [min].</summary>
    public double MinutesLeft => Steps.Where(s => !s.IsDone).Sum(s => s.Offer.Spec.Minutes);

    /// <summary>The last readings that were taken, last first.</summary>
    public IEnumerable<WiringStep> Last(int count) =>
        Steps.Where(s => s.Offer.Last is not null).OrderByDescending(s => s.Offer.Last!.Value.Entry.Number).Take(count);
}

/// <summary>A reading of the wiring check.</summary>
/// <param name="Shows">How many mistakes it shows; 0 for a cold check that others wait for.</param>
public sealed record WiringStep(ReadingOffer Offer, int Shows)
{
    /// <summary>True when it was taken since a wire was last moved, or waived where that can be; a doubted check is to be read again.</summary>
    public bool IsDone =>
        Offer.IsWaived
        || (
            Offer.Last?.Fact.Shown.Kind is ShownKind.Value or ShownKind.OverRange
            && !(Offer.Spec.Limits is not null && Offer.Doubted.Length > 0)
        );
}
