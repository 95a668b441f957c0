using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>The units of a type.</summary>
internal static class TypeUnits
{
    /// <summary>All of them, by their tags.</summary>
    public static async Task<IReadOnlyList<BenchUnit>> OfAsync(Bench bench, string id)
    {
        var units = new List<BenchUnit>();
        foreach (var card in (await bench.Store.CardsAsync(withHandedBack: true, CancellationToken.None)).Where(c => c.SheetId == id))
            if (await bench.ReadAsync(card.Id) is { } unit)
                units.Add(unit);
        return [.. units.OrderBy(u => u.Card.Tag, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>Those that were found sound, as they travel with the type.</summary>
    public static async Task<ImmutableArray<SoundUnit>> SoundAsync(Bench bench, string id) =>
        await bench.SheetAsync(id) is { } sheet
            ? SoundUnit.Of(await OfAsync(bench, id), new UnitModel(sheet), await bench.ShopAsync())
            : [];
}
