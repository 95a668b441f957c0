using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Readings;

/// <summary>
/// What the test leads of a meter read when they touch, and its own error: asked once of each meter, before its first low-ohm reading.
/// </summary>
public static class TestLeads
{
    /// <summary>Up to this leads of a few tenths of an ohm count for something [Ω].</summary>
    private const double MostLowOhms = 20;

    /// <summary>More than this is a broken lead or a range set wrong [Ω]. Common practice, no source.</summary>
    private const double MostLeadOhms = 5;

    /// <summary>More than this is no meter [%]. Common practice, no source.</summary>
    private const double MostPercent = 50;

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

    /// <summary>Reads what was typed of a meter; what was left empty is as the shop has it. Or says what is wrong.</summary>
    /// <param name="percent">Of its manual: ± so many percent of what it shows.</param>
    /// <param name="fixedPart">And so many ohms.</param>
    public static (MeterAnswer? Answer, string Problem) Read(ShopMeter meter, string leads, string percent, string fixedPart)
    {
        var known = meter.Errors[ReadingReader.NameOf(Quantity.Ohms)];
        var (lead, wrongLead) = leads.Trim().Length == 0 ? (known.LeadOhms, "") : Read(leads);
        var (share, wrongShare) = percent.Trim().Length == 0 ? (known.Percent, "") : ShopEdit.Number(percent, 0, MostPercent);
        var (ohms, wrongOhms) = fixedPart.Trim().Length == 0 ? (known.Floor, "") : ShopEdit.Number(fixedPart, 0, MostLeadOhms);
        var problem = new[]
        {
            wrongLead,
            wrongShare.Length > 0 ? $"Percent: {wrongShare}" : "",
            wrongOhms.Length > 0 ? $"Fixed part: {wrongOhms}" : "",
            share + ohms > 0 ? "" : ShopEdit.NoError,
        }.FirstOrDefault(p => p.Length > 0, "");
        return problem.Length > 0 ? (null, problem) : (new MeterAnswer(lead, share, ohms), "");
    }

    /// <summary>The shop with a meter known.</summary>
    /// <param name="answer">Null when the person skipped it, which leaves what the shop has: a usual hand meter.</param>
    public static Shop Known(Shop shop, string meterId, MeterAnswer? answer)
    {
        var name = ReadingReader.NameOf(Quantity.Ohms);
        ShopMeter Asked(ShopMeter meter)
        {
            var known = meter with { AreLeadsKnown = true };
            return answer is { } a && meter.Errors.TryGetValue(name, out var error)
                ? known with
                {
                    Errors = meter.Errors.SetItem(name, error with { LeadOhms = a.LeadOhms, Percent = a.Percent, Floor = a.FixedOhms }),
                }
                : known;
        }
        return shop with { Meters = [.. shop.Meters.Select(m => m.Id == meterId ? Asked(m) : m)] };
    }
}

/// <summary>What a person said of a meter: its test leads, touched together, and its error in ohms, ± (percent + fixed part).</summary>
/// <param name="LeadOhms">What the leads read by themselves [Ω].</param>
/// <param name="Percent">Of what it shows [%].</param>
/// <param name="FixedOhms">Fixed part [Ω].</param>
public sealed record MeterAnswer(double LeadOhms, double Percent, double FixedOhms);
