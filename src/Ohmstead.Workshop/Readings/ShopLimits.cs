using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>The limits of a shop, bound to a type sheet: of sheet and shop the stricter counts, and keeps its source.</summary>
public static class ShopLimits
{
    /// <summary>The least insulation between the mains side and everything else.</summary>
    private const string Insulation = "insulation";

    /// <summary>What a dry unit usually has.</summary>
    private const string UsualInsulation = "insulation-usual";

    /// <summary>The share of the printed watts.</summary>
    private const string Usable = "usable";

    /// <summary>
    /// The sheet as this bench works by it: every insulation reading from the mains side to anything else has the shop's least, and
    /// the shop's figure of a dry unit.
    /// </summary>
    public static TypeSheet Bind(TypeSheet sheet, Shop shop)
    {
        var (least, usual) = InsulationOf(shop);
        if (least is null && usual is null)
            return sheet;
        var own = new Limits(least ?? double.NegativeInfinity, double.PositiveInfinity)
        {
            MinSource = LimitSource.Shop,
            UsualMin = usual ?? double.NegativeInfinity,
        };
        return sheet with { Readings = [.. Bound(sheet).Select(b => b.IsBound ? WithLimits(b.Reading, own) : b.Reading)] };
    }

    /// <summary>What a limit of the shop does on this sheet, in words for a table.</summary>
    public static string UseOf(TypeSheet? sheet, ShopLimit limit)
    {
        if (sheet is null)
            return "";
        var across = Bound(sheet).Where(b => b.IsBound).Select(b => b.Reading).ToList();
        return limit.Id switch
        {
            Insulation when across.Count > 0 => across.TrueForAll(r => r.Limits?.Min > limit.Value)
                ? "the type sheet is stricter"
                : $"used in {across.Count.ToString(CultureInfo.InvariantCulture)}",
            UsualInsulation when across.Count > 0 => $"used in {across.Count.ToString(CultureInfo.InvariantCulture)}",
            Usable => "used for the watts",
            _ => "not measured here",
        };
    }

    /// <summary>
    /// The watts that can be used for hours, the stricter of sheet and shop, and who says so; 0 when neither does.
    /// </summary>
    /// <param name="printedWatts">What is printed on the unit [W]; 0 when not known.</param>
    /// <param name="sheetWatts">What the type sheet gives [W]; 0 when it gives none.</param>
    public static (double Watts, string Source) UsableWatts(double printedWatts, double sheetWatts, Shop shop)
    {
        var limit = shop.Limits.FirstOrDefault(l => l.Id == Usable);
        var ofShop = limit is null ? 0 : printedWatts * limit.Value / 100;
        return sheetWatts > 0 && !(ofShop > 0 && ofShop < sheetWatts) ? (sheetWatts, "type sheet")
            : ofShop > 0 ? (ofShop, $"the shop's limit; {limit!.Source}")
            : (0, "");
    }

    /// <summary>What of a shop's limits a bound sheet depends on [Ω]; null where the shop has none.</summary>
    internal static (double? Least, double? Usual) InsulationOf(Shop shop) => (ValueOf(shop, Insulation), ValueOf(shop, UsualInsulation));

    private static double? ValueOf(Shop shop, string id) => shop.Limits.FirstOrDefault(l => l.Id == id)?.Value;

    private static ReadingSpec WithLimits(ReadingSpec spec, Limits own) =>
        spec with
        {
            Limits = spec.Limits is { } limits ? limits.With(own) : own,
        };

    /// <summary>Each reading, and whether it reads insulation from the mains side to anything else.</summary>
    private static IEnumerable<(ReadingSpec Reading, bool IsBound)> Bound(TypeSheet sheet)
    {
        // Without a type no mains reading is there to say where the plug is.
        var mains = UntypedIds.IsOne(sheet) ? LiveSide.Of(sheet) : MainsSide.Of(sheet);
        return sheet.Readings.Select(r => (r, r.Quantity == Quantity.InsulationOhms && mains.Contains(r.From) != mains.Contains(r.To)));
    }
}
