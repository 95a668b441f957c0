using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>Where the parts of a plan come from: the drawer, an order, a donor.</summary>
public static class PlanParts
{
    /// <summary>The plan with, for each part of the lines that are left, what the drawer says of it. Two lines that want the same part want two.</summary>
    /// <param name="own">The sheet with this unit's changes.</param>
    /// <param name="now">For the verdict on a batch.</param>
    public static UnitPlan With(UnitPlan plan, Drawer drawer, Guid unit, TypeSheet own, Shop shop, DateTimeOffset now)
    {
        if (drawer.Bins.IsEmpty)
            return plan;
        var wanted = new Dictionary<Guid, int>();
        AtHand Ask(string part)
        {
            var hand = drawer.For(part, 1, unit, wanted);
            if (hand.Bin is { } bin)
                wanted[bin.Id] = hand.Wanted;
            return hand;
        }
        PlanPart Find(PlanPart part, ShopPart? known)
        {
            var hand = Ask(known is not null && PartNoun.IsOne(known.Name, part.Name) ? known.Id : part.Name);
            if (hand.Bin is null)
                hand = Ask(part.Name);
            return part with { Hand = hand, Caution = Caution(drawer, hand, now) };
        }
        PlanLine Look(PlanLine line)
        {
            var known = WornPart.Of(own, shop, line.About);
            return line with { Parts = [.. line.Parts.Select(p => Find(p, known))] };
        }
        return plan with { Lines = [.. plan.Lines.Select(l => l.Kind == PlanLineKind.Work && !l.Parts.IsEmpty ? Look(l) : l)] };
    }

    /// <summary>What the drawer says of the part that an element would be replaced with; null where it has no bins.</summary>
    /// <param name="name">What is to be fitted, in words; empty for the same part.</param>
    public static AtHand? Of(PartOptions options, string name, Drawer drawer, Guid unit, TypeSheet own, Shop shop)
    {
        if (drawer.Bins.IsEmpty)
            return null;
        var usual = options.Remedy?.Parts.Select(p => p.Name).FirstOrDefault() ?? options.About;
        if (name.Length > 0)
            return drawer.For(name, 1, unit);
        return WornPart.Of(own, shop, options.About) is { } known && drawer.For(known.Id, 1, unit) is { Bin: not null } hand
            ? hand
            : drawer.For(usual, 1, unit);
    }

    /// <summary>A part that is needed less often stays in the drawer until it is known: others may want it.</summary>
    private const double LikelyPercent = 50;

    /// <summary>
    /// What the plan probably needs, lies in the drawer and does not lie beside the unit yet: one press takes it out. Nothing of a suspect
    /// batch.
    /// </summary>
    /// <param name="plan">With what the drawer says (<see cref="With"/>).</param>
    public static ImmutableArray<BinCount> ToTakeOut(UnitPlan plan) =>
        [
            .. plan
                .Lines.SelectMany(l => l.Parts)
                .Where(p => p.Caution.Length == 0 && p.Percent >= LikelyPercent)
                .Select(p => p.Hand)
                .OfType<AtHand>()
                .Where(h => h is { IsThere: true, Bin: not null })
                .GroupBy(h => h.Bin!.Id)
                .Select(g => new BinCount(g.Key, g.Count() - g.First().Aside))
                .Where(c => c.Count > 0),
        ];

    /// <summary>Where pieces lie beside another unit it is not known which batch is left in the bin: then any of them counts.</summary>
    private static string Caution(Drawer drawer, AtHand hand, DateTimeOffset now) =>
        hand is { IsThere: true, Bin: { } bin, Batch: { } first }
        && (bin.SetAside > hand.Aside ? bin.Batches.Where(b => b.Left > 0) : [first]).Any(b =>
            BatchCall.Of(drawer, bin, b, now) is { Answer.Verdict: "suspect" }
        )
            ? "Suspect batch. Do not fit it."
            : "";
}
