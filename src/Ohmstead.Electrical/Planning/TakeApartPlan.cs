using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>The way to what is to be reached.</summary>
/// <param name="Steps">In an order that can be done; steps already done are left out.</param>
/// <param name="MinutesOut">Minutes to take apart.</param>
/// <param name="MinutesIn">Minutes to put back together.</param>
/// <param name="BreakPercent">Chance that at least one thing breaks [%].</param>
/// <param name="ExpectedCost">Minutes at the rate, and what is expected to break, in money.</param>
/// <param name="LowerBound">No way costs less; equal to <paramref name="ExpectedCost"/> when the way is proved the cheapest.</param>
/// <param name="OnTheWay">Every further step that could be done now, cheapest first.</param>
public sealed record TakeApartPlan(
    ImmutableArray<TakeApartStep> Steps,
    double MinutesOut,
    double MinutesIn,
    double BreakPercent,
    double ExpectedCost,
    double LowerBound,
    ImmutableArray<StepOnTheWay> OnTheWay
)
{
    /// <summary>True when no other way costs less.</summary>
    public bool IsProved => LowerBound >= ExpectedCost;
}

/// <summary>A step within reach once a plan has been followed.</summary>
/// <param name="ExtraMinutes">Minutes out and in that it adds.</param>
/// <param name="ExtraCost">Money that it adds.</param>
public sealed record StepOnTheWay(TakeApartStep Step, double ExtraMinutes, double ExtraCost);

/// <summary>Renewing a part while it is in reach, against opening the unit again when it fails.</summary>
/// <param name="Now">Cost of doing it now, in money.</param>
/// <param name="OnFailure">Cost when it fails later: the part, the whole way to it, and the trip.</param>
/// <param name="FailPercent">Chance that it fails later [%].</param>
public readonly record struct NowOrLater(double Now, double OnFailure, double FailPercent)
{
    /// <summary>Expected cost of leaving it.</summary>
    public double Later => OnFailure * FailPercent / 100;

    /// <summary>Above this chance of failing it is cheaper to do it now [%].</summary>
    public double BreakEvenPercent => 100 * Now / OnFailure;

    /// <param name="part">Price of the part.</param>
    /// <param name="minutesNow">Minutes that it adds while the unit is open.</param>
    /// <param name="minutesLater">Minutes of the whole way to it and back.</param>
    /// <param name="trip">What coming back costs besides, in money.</param>
    /// <param name="failPercent">Chance that it fails later [%].</param>
    /// <param name="moneyPerHour">The bench's rate.</param>
    public static NowOrLater Of(
        double part,
        double minutesNow,
        double minutesLater,
        double trip,
        double failPercent,
        double moneyPerHour
    ) => new(part + (minutesNow * moneyPerHour / 60), part + (minutesLater * moneyPerHour / 60) + trip, failPercent);
}
