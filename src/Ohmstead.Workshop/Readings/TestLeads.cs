using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Readings;

/// <summary>What the test leads of a meter read when they touch: asked once of each meter, before its first low-ohm reading.</summary>
public static class TestLeads
{
    /// <summary>Up to this leads of a few tenths of an ohm count for something [Ω].</summary>
    private const double MostLowOhms = 20;

    /// <summary>More than this is a broken lead or a range set wrong [Ω]. Common practice, no source.</summary>
    private const double MostLeadOhms = 5;

    /// <summary>The meter to be asked before a reading; null when its leads are known, skipped, or count for nothing.</summary>
    public static ShopMeter? ToAsk(Expectation expected, BenchState bench, Shop shop) =>
        expected.Quantity == Quantity.Ohms
        && expected.High <= MostLowOhms
        && MeterInHand.For(Quantity.Ohms, bench, shop) is { AreLeadsKnown: false } meter
            ? meter
            : null;

    /// <summary>Reads what was typed; or says what is wrong with it.</summary>
    public static (double Ohms, string Problem) Read(string text)
    {
        var typed = ShownText.Read(text, Quantity.Ohms);
        return typed.Shown switch
        {
            null => (0, typed.Problem),
            { Kind: ShownKind.Value, Value: >= 0 and <= MostLeadOhms } shown => (shown.Value, ""),
            _ => (0, "Good test leads read 0 to 5 Ω. Check the plugs and the range."),
        };
    }

    /// <summary>The shop with the leads of a meter known.</summary>
    /// <param name="ohms">What they read; null when the person skipped it, which leaves what the shop has.</param>
    public static Shop Known(Shop shop, string meterId, double? ohms)
    {
        var name = MeterInHand.NameOf(Quantity.Ohms);
        ShopMeter Asked(ShopMeter meter)
        {
            var known = meter with { AreLeadsKnown = true };
            return ohms is { } v && meter.Errors.TryGetValue(name, out var error)
                ? known with { Errors = meter.Errors.SetItem(name, error with { LeadOhms = v }) }
                : known;
        }
        return shop with { Meters = [.. shop.Meters.Select(m => m.Id == meterId ? Asked(m) : m)] };
    }
}
