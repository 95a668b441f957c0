using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Plans;

/// <summary>What a repair really took, by its log: from the first step off or the first part changed on, pauses left out.</summary>
/// <param name="ApartMinutes">Taking apart [min].</param>
/// <param name="WorkMinutes">On parts [min].</param>
/// <param name="BackMinutes">Putting together [min].</param>
/// <param name="OtherMinutes">Checks, readings and all else [min].</param>
/// <param name="Pauses">Stretches of more than 20 minutes in which nothing was entered.</param>
/// <param name="Parts">Price of what was fitted.</param>
/// <param name="Worth">Minutes at the shop's rate, and the parts.</param>
/// <param name="Billed">What the owner was charged; null while nothing was.</param>
/// <param name="Estimate">The last estimate; null for none.</param>
public sealed record WhatItTook(
    double ApartMinutes,
    double WorkMinutes,
    double BackMinutes,
    double OtherMinutes,
    int Pauses,
    decimal Parts,
    decimal Worth,
    decimal? Billed,
    EstimateMade? Estimate
)
{
    /// <summary>All of it [min].</summary>
    public double Minutes => ApartMinutes + WorkMinutes + BackMinutes + OtherMinutes;

    /// <summary>What the parts of the estimate cost; null for none.</summary>
    public decimal? EstimatedParts => Estimate?.Lines.Sum(l => l.Parts);

    /// <summary>How the time compares with the estimate; empty without one.</summary>
    public string Compared =>
        Estimate is not { } e ? ""
        : Minutes > e.HighMinutes ? "longer than nine of ten such jobs"
        : Minutes > e.LowMinutes ? "within the estimate"
        : "shorter than half of such jobs";

    /// <summary>What it took; null while no work was done.</summary>
    /// <param name="plan">The plan, for the prices of what was fitted.</param>
    public static WhatItTook? Of(BenchUnit unit, UnitPlan plan, Shop shop)
    {
        var logged = LoggedMinutes.Of(unit).SkipWhile(l => l.Fact is not (TakenOff or PartChanged)).ToList();
        if (logged.Count == 0)
            return null;
        double Sum(Func<Fact?, bool> of) => logged.Where(l => of(l.Fact)).Sum(l => l.Minutes ?? 0);
        var (apart, work, back) = (Sum(f => f is TakenOff), Sum(f => f is PartChanged), Sum(f => f is PutBack));
        var all = Sum(_ => true);
        var parts = plan.Done.SelectMany(l => l.Parts).Sum(p => p.Price);
        return new(
            apart,
            work,
            back,
            all - apart - work - back,
            logged.Count(l => l.Minutes is null),
            parts,
            decimal.Round(((decimal)all * (decimal)shop.RatePerHour / 60) + parts, 2),
            unit.All<Billed>().LastOrDefault().Fact?.Sum,
            unit.All<EstimateMade>().LastOrDefault().Fact
        );
    }
}
