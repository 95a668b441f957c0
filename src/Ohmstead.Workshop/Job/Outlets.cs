using System.Collections.Immutable;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Job;

/// <summary>What the posts of a unit carry for hours, from its sheet.</summary>
internal static class Outlets
{
    /// <summary>Below this a pair of posts gives nothing to speak of [V].</summary>
    private const double LeastVolts = 2;

    /// <summary>The rating printed on the type; the usable watts are the stricter of the sheet's and the shop's share of the printed.</summary>
    public static Rating RatingOf(TypeSheet sheet, Shop shop)
    {
        var (watts, source) = ShopLimits.UsableWatts(sheet.InputWatts, sheet.UsableWatts, shop);
        return new(sheet.InputWatts, watts, source);
    }

    /// <summary>
    /// Each pair of posts that the sheet reads on the mains, at the reading's setting with the fewest selectors moved and the
    /// highest voltage, with what it carries for hours and what holds it there (docs/methods/carrying.md).
    /// </summary>
    public static ImmutableArray<Outlet> Of(UnitModel model, Rating rating)
    {
        if (rating.UsableWatts <= 0)
            return [];
        var (solver, sheet) = (new ReadingSolver(), model.Sheet);
        var pairs = sheet
            .Readings.Where(r =>
                r.Quantity is Quantity.AcVolts or Quantity.DcVolts
                && !r.IsOpenCase
                && BenchConditions.IsOnMains(sheet, r)
                && r.State.Source is { HasLamp: false, SeriesOhms: 0 } s
                && !IsPair(r, s.From, s.To)
                && r.State.Lifted.Length == 0
            )
            .GroupBy(r => string.CompareOrdinal(r.From, r.To) < 0 ? (r.From, r.To) : (r.To, r.From));
        var outlets = pairs.Select(p => Best(model, solver, p, rating.UsableWatts)).OfType<Outlet>().ToImmutableArray();
        var unit = outlets.IsEmpty ? 0 : LayoutBudget.UnitAmps(rating, outlets.Select(o => o.Limit));
        return [.. outlets.Select(o => o with { UnitAmps = unit })];
    }

    private static bool IsPair(ReadingSpec r, string a, string b) => (r.From == a && r.To == b) || (r.From == b && r.To == a);

    private static Outlet? Best(UnitModel model, ReadingSolver solver, IEnumerable<ReadingSpec> readings, double watts)
    {
        double Idle(ReadingSpec spec) =>
            Math.Abs(solver.Solve(new FaultedCircuits(model, spec, spec.State with { Loads = [] }).Usual, model.Nominal).Value ?? 0);
        int Moved(ReadingSpec r) => model.Sheet.Controls.Count(c => !c.IsThrottle && r.State.Controls.ContainsKey(c.Id));
        var settings = readings.Select(r => (Spec: r, Idle: Idle(r))).Where(r => r.Idle > LeastVolts).ToList();
        if (settings.Count == 0)
            return null;
        var spec = settings.OrderBy(r => Moved(r.Spec)).ThenByDescending(r => r.Idle).First().Spec;
        return OutletLimits.Of(model, spec, watts) is { } limit
            ? new Outlet(
                $"{Sentences.Bare(PartNames.Terminal(model.Sheet, spec.From))} – {Sentences.Bare(PartNames.Terminal(model.Sheet, spec.To))}",
                Setting(model.Sheet, spec),
                limit,
                Holder(model.Sheet, limit),
                spec
            )
            : null;
    }

    /// <summary>What holds the amps, as it is said: a part of the pair's own path is "its" part.</summary>
    private static string Holder(TypeSheet sheet, OutletLimit limit) =>
        limit.By switch
        {
            HeldBy.Breaker => "its breaker",
            HeldBy.Winding => "its winding",
            HeldBy.Switch => "its switch",
            HeldBy.Slider => sheet.Sliders.First(s => s.Id == limit.Part).BridgesTurns > 0 ? "its roller" : "its shoe",
            _ => "the core",
        };

    private static string Setting(TypeSheet sheet, ReadingSpec spec) =>
        ReadingWords.Conditions(sheet, spec, spec.State with { Source = null, Loads = [] });
}
