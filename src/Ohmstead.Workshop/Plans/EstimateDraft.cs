using System.Globalization;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Plans;

/// <summary>An estimate, the owner's go-ahead and the bill, from what was typed.</summary>
public static class EstimateDraft
{
    private const double MostMoney = 1e6;
    private const int MostWords = 400;

    /// <summary>How a day stands in its field.</summary>
    public static string Show(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>How long an estimate of today holds, unless somebody types another day.</summary>
    public static string UsuallyUntil(DateOnly today, Shop shop) => Show(today.AddDays(shop.EstimateDays));

    /// <summary>The estimate as the plan stands now.</summary>
    /// <param name="askAbove">As typed; empty for the price's own line.</param>
    /// <param name="holdsUntil">As typed, year-month-day.</param>
    /// <param name="today">It cannot hold until an earlier day.</param>
    public static TypedFact Make(UnitPlan plan, PlanPrice price, string askAbove, string holdsUntil, DateOnly today)
    {
        var ask = price.AskAbove;
        if (askAbove.Trim().Length > 0)
        {
            var (value, problem) = ShopEdit.Number(askAbove, 0, MostMoney);
            if (problem.Length > 0)
                return new(null, $"Ask above: {problem}");
            ask = decimal.Round((decimal)value, 2);
        }
        if (Day(holdsUntil) is not { } until || until < today)
            return new(null, "Holds until: a day from today on, such as " + Show(today.AddDays(30)) + ".");
        return new(
            new EstimateMade(
                [
                    .. plan
                        .Done.Concat(plan.Lines)
                        .Select(l => new EstimateLine(
                            l.Words,
                            l.IsDone ? l.TookMinutes ?? 0 : l.Minutes,
                            l.Parts.Sum(p => p.Price),
                            l.IsDone ? 100 : l.Steps.Max(s => s.Percent),
                            l.Kind == PlanLineKind.Looks
                        )),
                ],
                Whole(price.Low),
                Whole(price.High),
                price.LowMinutes,
                price.HighMinutes,
                ask,
                [.. plan.Lines.Where(l => l.Stop is not null).Select(l => new EstimateStop(l.Stop!.Words, l.Stop.Fee)).Distinct()],
                until
            ),
            ""
        );
    }

    /// <summary>The owner's word.</summary>
    /// <param name="date">As typed, year-month-day.</param>
    /// <param name="limit">As typed; empty for none.</param>
    public static TypedFact GoAhead(string date, string how, string limit, string words)
    {
        if (Day(date) is not { } day)
            return new(null, "Date: year, month and day, such as 2026-11-27.");
        decimal? most = null;
        if (limit.Trim().Length > 0)
        {
            var (value, problem) = ShopEdit.Number(limit, 0, MostMoney);
            if (problem.Length > 0)
                return new(null, $"Up to: {problem}");
            most = decimal.Round((decimal)value, 2);
        }
        return new(new GoAheadGiven(day, how, most, Cut(words)), "");
    }

    /// <summary>What was charged.</summary>
    public static TypedFact Bill(string sum, string words)
    {
        var (value, problem) = ShopEdit.Number(sum, 0, MostMoney);
        return problem.Length > 0 ? new(null, $"Bill: {problem}") : new(new Billed(decimal.Round((decimal)value, 2), Cut(words)), "");
    }

    /// <summary>The bill of a repair that ended at a stop point.</summary>
    public static Billed Ended(PlanStop stop) => new(stop.Fee, $"{Billed.Ended}{stop.Words}");

    private static DateOnly? Day(string text) =>
        DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private static decimal Whole(double sum) => Math.Round((decimal)sum, MidpointRounding.AwayFromZero);

    private static string Cut(string words) => words.Trim() is { Length: > MostWords } all ? all[..MostWords] : words.Trim();
}
