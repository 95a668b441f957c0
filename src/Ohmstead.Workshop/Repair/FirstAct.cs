using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Repair;

/// <summary>The one act that the findings of a unit offer first.</summary>
public enum FirstAct
{
    /// <summary>What is off on the bench or in the type sheet is settled.</summary>
    Doubt,

    /// <summary>A reading that is probably noted wrongly, or does not fit the rest, is read again.</summary>
    Slip,

    /// <summary>What shows whether the last repair worked is read.</summary>
    Repair,

    /// <summary>The part of the first finding is got to.</summary>
    GetTo,

    /// <summary>The reading that tells apart what could be either is taken.</summary>
    Settle,

    /// <summary>The best next reading is taken.</summary>
    Next,
}

/// <summary>Which act comes first.</summary>
public static class FirstActs
{
    /// <summary>By what a diagnosis made of the unit, and what was done since.</summary>
    /// <param name="canSettleDoubt">There is something to be done about its first doubt.</param>
    /// <param name="slips">Of those, the ones that still hold (<see cref="Diagnosed.SlipsOf"/>).</param>
    /// <param name="after">What to read after the last repair; null for nothing.</param>
    public static FirstAct Of(Diagnosed diagnosed, bool canSettleDoubt, IEnumerable<SlipWords> slips, AfterRepair? after)
    {
        var view = diagnosed.View;
        var cards = view.CardsNow;
        return canSettleDoubt && !view.Doubts.IsEmpty ? FirstAct.Doubt
            : !view.Unexplained.IsEmpty || slips.Any() ? FirstAct.Slip
            : after?.Next is not null ? FirstAct.Repair
            : cards is [{ Findings: [{ Judgement: Judgement.Confirmed }] }, ..] ? FirstAct.GetTo
            : cards.Any(c => c.CanBeSettled) ? FirstAct.Settle
            : !diagnosed.Next.IsEmpty ? FirstAct.Next
            : FirstAct.GetTo;
    }
}
