using System.Collections.Immutable;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Phones;

/// <summary>The unit as a phone sees it.</summary>
/// <param name="Model">Its own circuit; null where its type is not known, or its changes or readings make no sense: the laptop says what is wrong.</param>
/// <param name="All">All its readings as they are offered now.</param>
public sealed record PhoneUnit(
    BenchUnit Unit,
    TypeSheet? Sheet,
    Workshop.Shops.Shop Shop,
    UnitModel? Model,
    ImmutableArray<ReadingOffer> All
)
{
    /// <summary>Readings whose gates are open, those not taken yet first.</summary>
    public ImmutableArray<ReadingOffer> Offers { get; } = [.. All.Where(o => o.IsOpen).OrderBy(o => o.Last is not null)];

    /// <summary>Reads it; null when it is not there.</summary>
    public static async Task<PhoneUnit?> ReadAsync(Bench bench, Guid unitId)
    {
        if (await bench.ReadAsync(unitId) is not { } unit)
            return null;
        var (sheet, shop) = (await bench.SheetOfAsync(unit), await bench.ShopAsync());
        return
            sheet is not null
            && OwnSheet.OnBench(unit, sheet, shop) is { IsSound: true, Value: { } own }
            && new UnitModel(own) is var model
            && BenchReadings.Of(unit, model, shop) is { IsSound: true, Value: { } readings }
            ? new(unit, sheet, shop, model, ReadingOffer.All(unit, model, readings, shop))
            : new(unit, sheet, shop, null, []);
    }
}
