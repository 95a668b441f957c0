using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>What has to be reached, from what was found; and what is worth doing on the way.</summary>
public static class ReachFor
{
    private const int MostAtHand = 6;

    /// <summary>The steps that confirmed and not yet repaired faults, and parts to renew, ask for.</summary>
    public static ImmutableArray<string> Proposed(BenchUnit unit, TypeSheet sheet)
    {
        var wanted = unit.All<FindingJudged>()
            .GroupBy(f => (f.Fact.Element, f.Fact.Mode))
            .Select(g => g.Last())
            .Where(f => f.Fact.Judgement == Judgement.Confirmed)
            .Where(f => !unit.All<PartChanged>().Any(p => p.Fact.Element == f.Fact.Element && p.Entry.Number > f.Entry.Number))
            .Select(f => f.Fact.Element);
        var worn = unit.All<ConditionNoted>()
            .GroupBy(c => c.Fact.Item)
            .Select(g => g.Last().Fact)
            .Where(c => c.Decision == Decision.Renew)
            .Select(c => c.Item);
        return [.. wanted.Concat(worn).Select(e => StepFor(e, sheet)).OfType<string>().Distinct(StringComparer.Ordinal)];
    }

    /// <summary>
    /// The step at which a part can be worked on: the one named after it, or the one that lifts it. A joint, a wire or a switch
    /// that no step names can be worked on where the nearest part that one does name comes within reach: at the last step before
    /// that part comes off.
    /// </summary>
    public static string? StepFor(string element, TypeSheet sheet) =>
        sheet.FindShared(element) is { } shared
            ? StepFor(shared.Elements[0], sheet)
            : Named(element, sheet)?.Id ?? (Nearest(element, sheet) is { } near ? Before(near, sheet) : null);

    private static TakeApartStep? Named(string element, TypeSheet sheet) =>
        sheet.TakeApart.FirstOrDefault(s => s.Id == $"{element}-out" || s.Id == element)
        ?? sheet.TakeApart.FirstOrDefault(s => s.Lifts.Contains(element));

    /// <summary>By the terminals that parts share, from part to part, until one has a step of its own.</summary>
    private static TakeApartStep? Nearest(string element, TypeSheet sheet)
    {
        var start = sheet.Elements.FirstOrDefault(e => e.Id == element || (e is Winding w && w.Sliders.Any(s => s.Id == element)));
        var (seen, next) = (new HashSet<Element>(), new Queue<Element>());
        if (start is not null)
            next.Enqueue(start);
        while (next.TryDequeue(out var at))
        {
            if (!seen.Add(at))
                continue;
            if (at != start && Named(at.Id, sheet) is { } step)
                return step;
            var ends = Ends(at).ToHashSet(StringComparer.Ordinal);
            foreach (var e in sheet.Elements.Where(e => e.Kind != ElementKind.Insulation && ends.Overlaps(Ends(e))))
                next.Enqueue(e);
        }
        return null;
    }

    private static IEnumerable<string> Ends(Element e) => e.OtherTerminals.Prepend(e.To).Prepend(e.From);

    private static string Before(TakeApartStep step, TypeSheet sheet) =>
        step.After.MaxBy(id => Gates.OpeningMinutes(sheet, [id], [])) ?? step.Id;

    /// <summary>The parts that can be worked on at a step: those it lifts, or the one it is named after.</summary>
    public static IEnumerable<string> PartsOf(string step, TypeSheet own)
    {
        if (own.TakeApart.FirstOrDefault(s => s.Id == step) is { Lifts.IsEmpty: false } lifting)
            return lifting.Lifts;
        var named = step.EndsWith("-out", StringComparison.Ordinal) ? step[..^4] : step;
        var ids = own.Elements.Select(e => e.Id).Concat(own.Elements.OfType<Winding>().SelectMany(w => w.Sliders).Select(s => s.Id));
        return ids.Where(id => id == named);
    }

    /// <summary>
    /// Now against later for each part with a known chance of failing that the way brings nearer: best first.
    /// </summary>
    /// <param name="reach">What is to be reached anyhow.</param>
    /// <param name="plan">The way there.</param>
    public static ImmutableArray<WorthIt> OnTheWay(
        ApartState state,
        IReadOnlyCollection<string> reach,
        TakeApartPlan plan,
        TypeSheet sheet,
        Shop shop
    )
    {
        var worth = new List<WorthIt>();
        foreach (var step in sheet.TakeApart.Where(s => !plan.Steps.Contains(s) && !state.IsOff(s.Id)))
        {
            if (shop.Parts.FirstOrDefault(p => p.Id == step.Part) is not { } part)
                continue;
            var extra = Minutes(state.Plan([.. reach, step.Id], shop.RatePerHour)) - Minutes(plan);
            var alone = Minutes(TakeApartPlanner.Plan(sheet.TakeApart, [step.Id], shop.RatePerHour));
            if (extra < alone)
                worth.Add(
                    new(step, part, extra, NowOrLater.Of(part.Price, extra, alone, shop.ComeBackCost, part.FailPercent, shop.RatePerHour))
                );
        }
        return [.. worth.OrderBy(w => w.Choice.Now - w.Choice.Later)];
    }

    /// <summary>What to have at hand for a way: the steps on which something breaks that costs money, the dearest on average first.</summary>
    public static ImmutableArray<TakeApartStep> AtHand(TakeApartPlan plan) =>
        [
            .. plan
                .Steps.Where(s => s is { Price: > 0, BreakPercent: > 0 })
                .OrderByDescending(s => s.BreakPercent * s.Price)
                .Take(MostAtHand),
        ];

    private static double Minutes(TakeApartPlan plan) => plan.MinutesOut + plan.MinutesIn;
}

/// <summary>A part that the way brings nearer, and whether to renew it now.</summary>
/// <param name="ExtraMinutes">Minutes out and in that reaching it adds.</param>
public sealed record WorthIt(TakeApartStep Step, ShopPart Part, double ExtraMinutes, NowOrLater Choice)
{
    /// <summary>True where replacing it now costs less than it does later on average.</summary>
    public bool PaysNow => Choice.Later > Choice.Now;
}
