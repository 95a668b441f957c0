using Ohmstead.Electrical.Reckoning.Probability;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// An item of the drawer and how it is used: so many a year, known (Poisson), or learned from what was used (the rate is a gamma
/// variable, the count negative binomial). An order comes after the lead days, or now and then late.
/// </summary>
/// <param name="PerYear">Used a year; with history its mean.</param>
/// <param name="SeenYears">Years behind that mean; null where it is known.</param>
/// <param name="LateShare">Share of orders that come late.</param>
/// <param name="ServicePercent">How surely the drawer lasts; below 100.</param>
internal sealed record StockItem(
    string Id,
    double PerYear,
    double? SeenYears,
    double LeadDays,
    double LateDays,
    double LateShare,
    double ServicePercent,
    double OnHand,
    double OnOrder
)
{
    /// <summary>Days in a year.</summary>
    public const double DaysInYear = 365.25;

    /// <summary>The usual chance of lasting [%]. Common practice, no source; editable.</summary>
    public const double UsualService = 95;

    /// <summary>Ten years: longer nobody waits.</summary>
    internal static NumberRange Days { get; } = new(0, 3652.5);

    private static NumberRange Used { get; } = new(0, 1e6);

    internal static StockItem Read(QuestionFields fields, string id)
    {
        var (perYear, seenYears) = Use(fields);
        var late = fields.Part("late");
        return new(
            id,
            perYear,
            seenYears,
            fields.Number("leadDays", Days),
            late?.Number("days", Days) ?? 0,
            (late?.Number("percent", NumberRange.Percent) ?? 0) / 100,
            fields.Number("servicePercent", new NumberRange(0, 100, WithoutHigh: true), UsualService),
            fields.Number("onHand", Stock.Count),
            fields.Number("onOrder", Stock.Count, 0)
        );
    }

    private static (double PerYear, double? SeenYears) Use(QuestionFields fields)
    {
        var known = fields.Optional("perYear", Used);
        var (history, prior) = (fields.Part("history"), fields.Part("prior"));
        if (known is null && !fields.Has("history"))
            fields.Report("perYear", "is missing, and history too", "a number, or { \"used\", \"years\" } in history, is required");
        var used = (history?.Number("used", Used) ?? 0) + (prior?.Number("used", Used, PriorUsed) ?? PriorUsed);
        var years = (history?.Number("years", Years) ?? 0) + (prior?.Number("years", Years, 0) ?? 0);
        if (history is { } h && years < LeastYears)
            h.Report("years", "is 0, and no prior has years", "years above 0 are needed in one of them");
        return known is { } perYear ? (perYear, null)
            : years >= LeastYears ? (used / years, years)
            : (1, null);
    }

    /// <summary>Uses that are taken to have been seen before any were. Common practice, no source; editable.</summary>
    private const double PriorUsed = 0.5;

    /// <summary>Half a minute: less is no time at all.</summary>
    private const double LeastYears = 1e-6;

    private static NumberRange Years { get; } = new(0, 1000);

    /// <summary>Until an order comes, on average.</summary>
    public double MeanLeadDays => ((1 - LateShare) * LeadDays) + (LateShare * LateDays);

    /// <summary>Chance that more than this is used before an order of today comes.</summary>
    public double ChanceAbove(double count) => ChanceAbove(count, 0);

    /// <summary>The least count that lasts with the chance asked for, until an order comes and so many days more.</summary>
    public double LeastServed(double moreDays)
    {
        var most = (100 - ServicePercent) / 100;
        double high = 1;
        while (ChanceAbove(high, moreDays) > most)
            high *= 2;
        double low = -1;
        // The low one is too few, the high one enough.
        while (high - low > 1)
        {
            var middle = Math.Floor((low + high) / 2);
            if (ChanceAbove(middle, moreDays) <= most)
                high = middle;
            else
                low = middle;
        }
        return high;
    }

    private double ChanceAbove(double count, double moreDays) =>
        ((1 - LateShare) * Above(count, LeadDays + moreDays)) + (LateShare * Above(count, LateDays + moreDays));

    private double Above(double count, double days)
    {
        var years = days / DaysInYear;
        return SeenYears is { } seen
            ? CountLaws.GammaPoissonAbove(count, PerYear * seen, seen, years)
            : CountLaws.PoissonAbove(count, PerYear * years);
    }
}
