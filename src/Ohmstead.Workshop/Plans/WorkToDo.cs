using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookOver;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>
/// Which parts a plan works on: what was decided; where nothing was, what the findings make probable and what the look-over asks for.
/// </summary>
public static class WorkToDo
{
    /// <summary>A less likely fault is no line of the plan [probability].</summary>
    public const double WorthPlanning = 0.2;

    /// <summary>The standing decisions: the last of each part, unless the part was changed since or nothing is decided any more.</summary>
    public static ImmutableDictionary<string, PartDecided> Decisions(BenchUnit unit)
    {
        var changed = unit.All<PartChanged>()
            .GroupBy(p => p.Fact.Element, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Max(p => p.Entry.Number), StringComparer.Ordinal);
        return unit.All<PartDecided>()
            .GroupBy(d => d.Fact.About, StringComparer.Ordinal)
            .Select(g => g.Last())
            .Where(d => d.Fact.Act != DecidedAct.Open && d.Entry.Number > changed.GetValueOrDefault(d.Fact.About))
            .ToImmutableDictionary(d => d.Fact.About, d => d.Fact, StringComparer.Ordinal);
    }

    /// <summary>All of it, the surest first.</summary>
    /// <param name="own">The sheet with this unit's changes.</param>
    /// <param name="view">What the findings say; null while they are not worked out.</param>
    internal static ImmutableArray<PlannedWork> Of(BenchUnit unit, TypeSheet own, FindingsView? view, Shop shop)
    {
        var decided = Decisions(unit);
        var works = decided.Values.Where(d => d.Act > DecidedAct.Watch).Select(d => Decided(d, own, shop)).ToList();
        var found = (view?.CardsNow ?? [])
            .SelectMany(c => c.Findings)
            .Where(f => f.Judgement == Judgement.Confirmed || f.Probability >= WorthPlanning)
            .Where(f => !f.Members.Any(m => decided.ContainsKey(m.Element)))
            .GroupBy(f => f.Mode.Element, StringComparer.Ordinal);
        works.AddRange(found.Select(g => Found([.. g], own)));
        works.AddRange(Unfound(unit, own, [.. works.Select(w => w.About), .. decided.Keys]));
        works.AddRange(
            LookOverState
                .Of(unit, own, shop)
                .ToReplace.Where(i => !decided.ContainsKey(i.Id) && !works.Any(w => PartsOfItem.IsOf(w.About, i.Id, own)))
                .Select(i => OfItem(i.Id, i.Title, "look-over", own))
        );
        return [.. works.OrderByDescending(w => w.Percent).ThenBy(w => w.Words, StringComparer.Ordinal)];
    }

    /// <summary>The fault of a part that is worth planning, the most probable; null for none.</summary>
    public static FaultProbability? Suspected(DiagnosisResult diagnosis, string element) =>
        diagnosis.Faults.Where(f => f.Mode.Element == element && f.Probability >= WorthPlanning).MaxBy(f => f.Probability);

    /// <summary>What one part is called on a plan.</summary>
    public static string Title(TypeSheet own, string about) =>
        Shop.Usual.LookOver.FirstOrDefault(i => i.Id == about)?.Title ?? PartNames.Title(own, about);

    /// <summary>The fault of a part that has this mode; null where the sheet has none.</summary>
    public static FaultMode? ModeOf(TypeSheet own, string about, string mode) =>
        mode.Length > 0 ? new FaultCatalogue(new UnitModel(own)).Find($"{about}:{mode}") : null;

    /// <summary>What replacing a part usually takes: by the first of its faults that asks for it. Common practice, no source [min].</summary>
    internal static double ReplaceMinutes(TypeSheet own, string about)
    {
        var remedy = new FaultCatalogue(new UnitModel(own))
            .Modes.Where(m => m.Element == about)
            .Select(m => WhatToDo.For(own, m))
            .FirstOrDefault(r => WorkKey.SortOf(r.Act) == WorkSort.Replace);
        return remedy is null ? Middle(about) : Middle(remedy, WorkSort.Replace);
    }

    private static PlannedWork Decided(PartDecided d, TypeSheet own, Shop shop)
    {
        var sort = WorkKey.SortOf(d.Act, own, d.About);
        var remedy = ModeOf(own, d.About, d.Mode) is { } mode ? WhatToDo.For(own, mode) : null;
        var usual = remedy is not null ? Middle(remedy, sort) : Middle(d.About);
        var part = d.Part.Length > 0 ? d.Part : PartName(own, shop, d.About, remedy);
        return new(
            d.About,
            d.Mode,
            $"{Title(own, d.About)}: {ActWords(d.Act, sort)}{(d.Part.Length > 0 && d.Act == DecidedAct.Replace ? $", {d.Part}" : "")}",
            d.Why.Length > 0 ? $"decided: {d.Why}" : "decided",
            sort,
            d.Minutes ?? usual,
            d.Price > 0 ? [new(part, d.Price, 100)] : [],
            100,
            remedy?.StopWhen ?? ""
        );
    }

    /// <summary>What a new one of the same sort is called.</summary>
    private static string PartName(TypeSheet own, Shop shop, string about, Remedy? remedy) =>
        WornPart.Of(own, shop, about) is { } known
            ? Sentences.Small(known.Name)
            : remedy?.Parts.Select(p => p.Name).FirstOrDefault()
                ?? WorkOfItem.Of(about).Parts.Select(p => p.Name).FirstOrDefault()
                ?? "new part";

    private static PlannedWork Found(ImmutableArray<Finding> findings, TypeSheet own)
    {
        var first = findings.MaxBy(f => f.Probability)!;
        var isFound = findings.Any(f => f.Judgement == Journal.Judgement.Confirmed);
        var percent = isFound ? 100 : Math.Min(100, 100 * findings.Sum(f => f.Probability));
        var sort = WorkKey.SortOf(first.Remedy.Act);
        return new(
            first.Mode.Element,
            first.Mode.Mode,
            $"{Title(own, first.Mode.Element)}: {Sentences.Small(first.Remedy.Act)}",
            isFound ? "you found it" : $"{first.Sure}, {ValueText.Percent(percent / 100)}",
            sort,
            Middle(first.Remedy, sort),
            Parts(first.Remedy, percent),
            percent,
            first.Remedy.StopWhen
        );
    }

    /// <summary>What was found by hand while no findings are worked out.</summary>
    private static IEnumerable<PlannedWork> Unfound(BenchUnit unit, TypeSheet own, ImmutableArray<string> known) =>
        unit
            .Unrepaired.Where(f => !known.Contains(f.Element))
            .Select(f => ModeOf(own, f.Element, f.Mode))
            .OfType<FaultMode>()
            .DistinctBy(m => m.Element)
            .Select(m =>
            {
                var remedy = WhatToDo.For(own, m);
                var sort = WorkKey.SortOf(remedy.Act);
                return new PlannedWork(
                    m.Element,
                    m.Mode,
                    $"{Title(own, m.Element)}: {Sentences.Small(remedy.Act)}",
                    "you found it",
                    sort,
                    Middle(remedy, sort),
                    Parts(remedy, 100),
                    100,
                    remedy.StopWhen
                );
            });

    private static PlannedWork OfItem(string item, string title, string under, TypeSheet own)
    {
        var (from, to, parts) = WorkOfItem.Of(item);
        return new(
            item,
            "",
            $"{title}: replace",
            under,
            WorkSort.Replace,
            WorkOfItem.Middle(from, to),
            [.. parts.Select(p => new PlanPart(p.Name, p.Price, 100))],
            100,
            ""
        );
    }

    private static ImmutableArray<PlanPart> Parts(Remedy remedy, double percent) =>
        [.. remedy.Parts.Select(p => new PlanPart(p.Name, (decimal)p.Price, percent))];

    /// <summary>Cleaning takes the lower end of "clean 10; replace 20–30", replacing what lies above it.</summary>
    private static double Middle(Remedy remedy, WorkSort sort) =>
        sort == WorkSort.Replace || WorkKey.SortOf(remedy.Act) != WorkSort.Replace
            ? WorkOfItem.Middle(remedy.Minutes.From, remedy.Minutes.To)
            : Math.Max(1, remedy.Minutes.From);

    private static double Middle(string item)
    {
        var (from, to, _) = WorkOfItem.Of(item);
        return WorkOfItem.Middle(from, to);
    }

    private static string ActWords(DecidedAct act, WorkSort sort) =>
        act switch
        {
            DecidedAct.Clean => "clean",
            DecidedAct.Tighten => sort == WorkSort.Resolder ? "resolder" : "tighten",
            _ => "replace",
        };
}
