using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>What a plan comes to: what was done already is known, the rest is drawn (<see cref="Quote"/>).</summary>
/// <param name="Low">Half of such jobs come to less [money].</param>
/// <param name="High">Nine of ten come to less [money].</param>
/// <param name="LowMinutes">Half take less [min].</param>
/// <param name="HighMinutes">Nine of ten take less [min].</param>
/// <param name="Parts">Of the parts, each by its chance [money].</param>
/// <param name="AskAbove">The line above which the shop asks first [money].</param>
/// <param name="AskPercent">How many of 100 such jobs come above it.</param>
/// <param name="StoppedPercent">How many of 100 end at a stop point.</param>
/// <param name="Outside">What the figures leave out.</param>
public sealed record PlanPrice(
    double Low,
    double High,
    double LowMinutes,
    double HighMinutes,
    double Parts,
    decimal AskAbove,
    double AskPercent,
    double StoppedPercent,
    ImmutableArray<string> Outside
)
{
    /// <summary>The question that the command line answers the same; null where nothing is left to do.</summary>
    public Quote? Question { get; private init; }

    /// <summary>Half take less for what is left to do [min].</summary>
    public double LeftMinutes { get; private init; }

    private const int Draws = 200_000;
    private const double Correlation = 0.4;

    /// <summary>The line goes up to a round sum.</summary>
    private const decimal RoundTo = 5;

    /// <summary>What the work alone comes to, half of such jobs less and nine of ten less [money].</summary>
    public (double Low, double High) WorkAt(Shop shop) => (LowMinutes * shop.RatePerHour / 60, HighMinutes * shop.RatePerHour / 60);

    /// <summary>The line that owner or estimate named; null for none yet.</summary>
    public static decimal? Named(BenchUnit unit)
    {
        var (given, made) = (unit.All<GoAheadGiven>().LastOrDefault(), unit.All<EstimateMade>().LastOrDefault());
        return given.Fact is { Limit: { } limit } && given.Entry.Number > (made.Entry?.Number ?? 0) ? limit : made.Fact?.AskAbove;
    }

    /// <summary>Works it out.</summary>
    /// <param name="named">The line above which the shop asks, where it was named; else nine of ten, rounded up.</param>
    public static PlanPrice Of(UnitPlan plan, Shop shop, decimal? named)
    {
        var rate = (decimal)shop.RatePerHour;
        var minutes = plan.Done.Sum(l => l.TookMinutes ?? 0);
        var parts = plan.Done.SelectMany(l => l.Parts).Sum(p => p.Price);
        var spent = (minutes * (double)rate / 60) + (double)parts;
        if (plan.Lines.IsEmpty)
        {
            var line = named ?? Up(spent);
            return new(spent, spent, minutes, minutes, (double)parts, line, (decimal)spent > line ? 100 : 0, 0, []);
        }
        decimal? Left(decimal? line) => line is { } at ? Math.Max(0, at - (decimal)spent) : null;
        var quote = Asked(plan, rate, (decimal)spent) with { ApproveAbove = Left(named) };
        var answer = quote.Answer();
        var (low, high) = (spent + (answer.Finished.Bill.P50 ?? 0), spent + (answer.Finished.Bill.P90 ?? 0));
        var ask = named ?? Up(high);
        // Where nobody named a line it is known only now: the same draws are asked how many lie above it.
        if (named is null)
            answer = (quote = quote with { ApproveAbove = Left(ask) }).Answer();
        return new(
            low,
            high,
            minutes + (answer.Finished.Minutes.P50 ?? 0),
            minutes + (answer.Finished.Minutes.P90 ?? 0),
            (double)parts + quote.Parts.Sum(p => (double)p.Price * p.Percent / 100),
            ask,
            (decimal)spent > ask ? 100 : answer.AboveLinePercent ?? 0,
            100 - answer.FinishedPercent,
            answer.Outside
        )
        {
            Question = quote,
            LeftMinutes = answer.Finished.Minutes.P50 ?? 0,
        };
    }

    private static decimal Up(double sum) => Math.Ceiling((decimal)sum / RoundTo) * RoundTo;

    /// <summary>Of what is left: a stopped job is billed its fee alone, and what was spent already goes into that.</summary>
    private static Quote Asked(UnitPlan plan, decimal rate, decimal spent) =>
        new(
            [.. plan.Lines.SelectMany(l => l.Steps).Select(s => s.Quoted)],
            Correlation,
            [
                .. plan.Lines.SelectMany(l =>
                    l.Parts.Select((p, n) => new QuotedPart($"{l.Steps[0].Id} {ValueText.Plain(n + 1)}", p.Price, p.Percent))
                ),
            ],
            rate,
            [
                .. plan
                    .Lines.Where(l => l.Stop is not null)
                    .Select(l => new QuotedStop(l.Steps[^1].Id, l.Stop!.Percent, Math.Max(0, l.Stop.Fee - spent))),
            ],
            null,
            null,
            Draws,
            1
        );
}
