using System.Collections.Immutable;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Phones;

/// <summary>The unit as a phone sees it.</summary>
/// <param name="Offers">Readings whose gates are open, those not taken yet first.</param>
public sealed record PhoneUnit(BenchUnit Unit, TypeSheet? Sheet, ImmutableArray<ReadingOffer> Offers)
{
    /// <summary>Reads it; null when it is not there.</summary>
    public static async Task<PhoneUnit?> ReadAsync(Bench bench, Guid unitId)
    {
        if (await bench.ReadAsync(unitId) is not { } unit)
            return null;
        var sheet = await bench.SheetOfAsync(unit);
        return new PhoneUnit(unit, sheet, sheet is null ? [] : Offered(unit, sheet, await bench.ShopAsync()));
    }

    // Where the unit's changes or readings make no sense, nothing is offered: the laptop says what is wrong.
    private static ImmutableArray<ReadingOffer> Offered(BenchUnit unit, TypeSheet sheet, Workshop.Shops.Shop shop)
    {
        if (OwnSheet.OnBench(unit, sheet, shop) is not { IsSound: true, Value: { } own })
            return [];
        var model = new UnitModel(own);
        return BenchReadings.Of(unit, model, shop) is { IsSound: true, Value: { } readings }
            ? [.. ReadingOffer.All(unit, model, readings, shop).Where(o => o.IsOpen).OrderBy(o => o.Last is not null)]
            : [];
    }
}
