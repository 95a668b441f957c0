using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Plans;

/// <summary>Now or later: which parts that wear to replace while the unit is open anyway (<see cref="RenewalChoice"/>).</summary>
/// <param name="Parts">Those within reach, the nearest first.</param>
/// <param name="Cost">What the best set is expected to cost, the rest left [money].</param>
/// <param name="AllLater">What leaving every one of them is expected to cost [money].</param>
/// <param name="Outside">What it leaves out.</param>
public sealed record WhileOpen(ImmutableArray<WhileOpenPart> Parts, double Cost, double AllLater, ImmutableArray<string> Outside)
{
    private const int MostParts = 8;

    /// <summary>Works it out; null where no part that wears is in reach.</summary>
    /// <param name="plan">The plan: what it takes off is off by then.</param>
    /// <param name="own">The sheet with this unit's changes.</param>
    public static WhileOpen? Of(BenchUnit unit, UnitPlan plan, TypeSheet type, TypeSheet own, Shop shop, MinuteBook book)
    {
        var open = Open(unit, plan, type);
        if (open.IsEmpty)
            return null;
        var off = open.ToHashSet(StringComparer.Ordinal);
        var wearing = Wearing(plan, own, shop, unit)
            .OrderBy(w => TakeApartPlanner.Plan(type.TakeApart, [w.Step], shop.RatePerHour, off).ExpectedCost)
            .Take(MostParts)
            .ToImmutableArray();
        if (wearing.IsEmpty)
            return null;
        var answer = new RenewalChoice(
            type.TakeApart,
            open,
            (decimal)shop.RatePerHour,
            (decimal)shop.ComeBackCost,
            [
                .. wearing.Select(w => new RenewablePart(
                    w.Step,
                    (decimal)w.Part.Price,
                    Minutes(w.About, own, book),
                    w.Part.FailPercent,
                    Test(w.Part)
                )),
            ]
        ).Answer();
        return new(
            [
                .. wearing.Zip(
                    answer.Parts,
                    (w, r) => new WhileOpenPart(w.Part, w.About, WorkToDo.Title(own, w.About), r, answer.Together.Now.Contains(r.Step))
                ),
            ],
            answer.Together.ExpectedCost,
            answer.Together.AllLater,
            answer.Outside
        );
    }

    /// <summary>What is off, and what the plan takes off, in an order that can be done.</summary>
    private static ImmutableArray<string> Open(BenchUnit unit, UnitPlan plan, TypeSheet type)
    {
        const string off = "off ";
        var steps = ApartState
            .Of(unit, type)
            .Off.Select(o => o.Step.Id)
            .Concat(plan.Lines.Where(l => l.Kind == PlanLineKind.TakeApart).SelectMany(l => l.Steps).Select(s => s.Id[off.Length..]));
        return [.. steps.Where(id => type.TakeApart.Any(s => s.Id == id)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Parts that wear, each at its step, but for those that the plan works on and those that are new.</summary>
    private static IEnumerable<(string Step, ShopPart Part, string About)> Wearing(UnitPlan plan, TypeSheet own, Shop shop, BenchUnit unit)
    {
        var known = plan
            .Lines.Concat(plan.Done)
            .Select(l => l.About)
            .Concat(WorkToDo.Decisions(unit).Keys)
            .ToHashSet(StringComparer.Ordinal);
        foreach (var step in own.TakeApart)
            if (
                shop.Parts.FirstOrDefault(p => p.Id == step.Part) is { } part
                && PartsAt(step.Id, own, shop) is { IsEmpty: false } parts
                && !parts.Any(about => known.Any(k => k == about || PartsOfItem.IsOf(k, about, own)))
            )
                yield return (step.Id, part, parts[0]);
    }

    /// <summary>Parts of the circuit at a step; the part of the look-over that it is named after, where the circuit has none of its name.</summary>
    private static ImmutableArray<string> PartsAt(string step, TypeSheet own, Shop shop)
    {
        ImmutableArray<string> parts = [.. ReachFor.PartsOf(step, own)];
        return parts.IsEmpty ? [.. shop.LookOver.Where(i => step == i.Id || step == $"{i.Id}-out").Select(i => i.Id)] : parts;
    }

    private static double Minutes(string about, TypeSheet own, MinuteBook book)
    {
        var key = WorkKey.Of(own, about, WorkSort.Replace);
        return new PlanStep(about, key, WorkToDo.ReplaceMinutes(own, about), book[key], 100).Law.MedianMinutes;
    }

    private static PartTest? Test(ShopPart part) =>
        part.Test is { } t ? new(t.Minutes, t.DetectsPercent, t.FalsePercent, t.NeedsPart) : null;
}

/// <summary>A part that could be replaced while the unit is open.</summary>
/// <param name="Part">As the shop knows it.</param>
/// <param name="About">The part of the circuit.</param>
/// <param name="Title">In plain words.</param>
/// <param name="Costs">Now, later, and where it breaks even [money].</param>
/// <param name="IsInSet">True where it belongs to the set that pays together.</param>
public sealed record WhileOpenPart(ShopPart Part, string About, string Title, RenewalOfPart Costs, bool IsInSet)
{
    /// <summary>What to do: "Replace now", "Test first", "Leave".</summary>
    public string Act =>
        IsInSet ? "Replace now"
        : Costs.Best == "test" ? "Test first"
        : "Leave";

    /// <summary>The decision to replace it now.</summary>
    public PartDecided Now => new(About, "", DecidedAct.Replace, "", decimal.Round((decimal)Part.Price, 2), null, "while it is open", []);
}
