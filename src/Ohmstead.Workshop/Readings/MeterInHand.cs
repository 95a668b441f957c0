using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Readings;

/// <summary>The shop's meters as the prediction knows them.</summary>
public static class MeterInHand
{
    /// <summary>The error of a meter of the shop, for the prediction.</summary>
    public static MeterError ErrorOf(ShopMeter meter, Quantity quantity)
    {
        var error = meter.Errors[ReadingReader.NameOf(quantity)];
        return new MeterError(error.Percent, error.Floor, error.Shared, error.LeadOhms)
        {
            IsAveraging = quantity == Quantity.AcVolts && !meter.IsTrueRms,
        };
    }

    /// <summary>
    /// The meter in hand at a bench: for each quantity it, or the first of the shop that reads it; a usual one where none does.
    /// </summary>
    public static Meter Of(BenchState bench, Shop shop) =>
        new(Meter.Usual.Errors.ToImmutableDictionary(e => e.Key, e => ErrorFor(e.Key, bench, shop)));

    /// <summary>The error with which a quantity is read at a bench.</summary>
    public static MeterError ErrorFor(Quantity quantity, BenchState bench, Shop shop) =>
        For(quantity, bench, shop) is { } meter ? ErrorOf(meter, quantity) : Meter.Usual.For(quantity);

    /// <summary>The meter that a quantity is read with when this one is in hand: itself, or the shop's first that reads it.</summary>
    public static ShopMeter? For(Quantity quantity, BenchState bench, Shop shop) =>
        Find(shop, bench.MeterId, ReadingReader.NameOf(quantity));

    /// <summary>The meter that lies in the hand, whatever is read: the one that was taken up, or the shop's first; empty for none.</summary>
    public static string IdAt(BenchState bench, Shop shop) =>
        (shop.Meters.FirstOrDefault(m => m.Id == bench.MeterId) ?? shop.Meters.FirstOrDefault())?.Id ?? "";

    private static ShopMeter? Find(Shop shop, string id, string quantity)
    {
        // A meter without any error cannot be: its figures were never filled in.
        var all = shop.Meters.Where(m => m.Errors.TryGetValue(quantity, out var e) && e.Percent + e.Floor > 0).ToList();
        return all.FirstOrDefault(m => m.Id == id) ?? all.FirstOrDefault();
    }
}
