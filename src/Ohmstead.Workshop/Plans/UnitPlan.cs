using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>What is to be done on a unit, in the order of taking apart, from what was decided and what was found.</summary>
/// <param name="Done">What was done, in its order.</param>
/// <param name="Lines">What is left.</param>
/// <param name="Left">What stays as it is, by decision, with the reason.</param>
public sealed record UnitPlan(ImmutableArray<PlanLine> Done, ImmutableArray<PlanLine> Lines, ImmutableArray<string> Left)
{
    /// <summary>Wiring check and first power take so long. Common practice, no source [min].</summary>
    private const double CheckMinutes = 20;

    /// <summary>Nothing takes less than this: a law of minutes needs some [min].</summary>
    private const double LeastMinutes = 0.25;

    /// <summary>The steps that the work left asks for.</summary>
    public ImmutableArray<string> Reach { get; private init; } = [];

    /// <summary>What is next.</summary>
    public PlanLine? Next => Lines.FirstOrDefault();

    /// <summary>The plan of a unit.</summary>
    /// <param name="type">Its type sheet.</param>
    /// <param name="own">The sheet with this unit's changes.</param>
    /// <param name="view">What the findings say; null while they are not worked out.</param>
    /// <param name="book">What the shop's own units took.</param>
    public static UnitPlan Of(BenchUnit unit, TypeSheet type, TypeSheet own, FindingsView? view, Shop shop, MinuteBook book)
    {
        var works = WorkToDo.Of(unit, own, view, shop);
        var state = ApartState.Of(unit, type);
        var access = works.Select(w => ReachFor.StepFor(w.About, type)).ToImmutableArray();
        ImmutableArray<string> reach = [.. access.OfType<string>().Where(s => !state.IsOff(s)).Distinct(StringComparer.Ordinal)];
        var way = reach.IsEmpty ? [] : state.Plan(reach, shop.RatePerHour).Steps;
        var needed = Needed(works, access, way, state, shop);
        var maker = new LineMaker(type, own, shop, book, unit.Card.SheetId);
        ImmutableArray<(string? Step, PlanLine Line)> placed =
        [
            .. Settling(view, type, state, way),
            .. works.Zip(access, (work, step) => (IsAhead(step, way) ? step : null, maker.Work(work))),
        ];
        ImmutableArray<(TakeApartStep Step, double Percent)> steps = [.. way.Select(s => (s, needed[s.Id]))];
        var lines = ImmutableArray.CreateBuilder<PlanLine>();
        lines.AddRange(InOrder(steps, placed, maker));
        lines.AddRange(LooksPlan.Lines(unit, book));
        if (maker.PutTogether([.. steps, .. state.Off.Select(o => (o.Step, 100.0))]) is { } back)
            lines.Add(back);
        if (works.Length > 0 || !state.Off.IsEmpty || !WiringCheck.IsOpen(unit, type))
            lines.Add(maker.Check());
        return new(DoneWork.Of(unit, own, shop), WithInsulation(lines.ToImmutable(), unit, type, shop), LeftAlone(unit, own))
        {
            Reach = reach,
        };
    }

    /// <summary>Steps that follow each other are one line; what is done at a step comes at once behind it.</summary>
    private static IEnumerable<PlanLine> InOrder(
        ImmutableArray<(TakeApartStep Step, double Percent)> steps,
        ImmutableArray<(string? Step, PlanLine Line)> placed,
        LineMaker maker
    )
    {
        foreach (var (_, line) in placed.Where(p => p.Step is null))
            yield return line;
        var group = ImmutableArray<(TakeApartStep Step, double Percent)>.Empty;
        foreach (var step in steps)
        {
            group = group.Add(step);
            var here = placed.Where(p => p.Step == step.Step.Id).ToList();
            if (here.Count == 0)
                continue;
            yield return maker.TakeApart(group);
            group = [];
            foreach (var (_, line) in here)
                yield return line;
        }
        if (!group.IsEmpty)
            yield return maker.TakeApart(group);
    }

    /// <summary>How sure it is that a step has to come off: one of the works behind it is needed.</summary>
    private static Dictionary<string, double> Needed(
        ImmutableArray<PlannedWork> works,
        ImmutableArray<string?> access,
        ImmutableArray<TakeApartStep> way,
        ApartState state,
        Shop shop
    )
    {
        var spared = way.ToDictionary(s => s.Id, _ => 1.0, StringComparer.Ordinal);
        for (var n = 0; n < works.Length; n++)
            if (access[n] is { } step && IsAhead(step, way))
                foreach (var before in state.Plan([step], shop.RatePerHour).Steps)
                    if (spared.TryGetValue(before.Id, out var share))
                        spared[before.Id] = share * (1 - (works[n].Percent / 100));
        // A step of the common way that no work needs by itself comes off all the same.
        return spared.ToDictionary(s => s.Key, s => s.Value >= 1 ? 100 : 100 * (1 - s.Value), StringComparer.Ordinal);
    }

    private static bool IsAhead(string? step, ImmutableArray<TakeApartStep> way) => step is not null && way.Any(s => s.Id == step);

    /// <summary>The readings that settle what could be either, each at the step that gives access to it.</summary>
    private static List<(string? Step, PlanLine Line)> Settling(
        FindingsView? view,
        TypeSheet type,
        ApartState state,
        ImmutableArray<TakeApartStep> way
    ) =>
        [
            .. (view?.CardsNow ?? [])
                .Where(c => c.Findings.Length > 1 && c.Findings[0].Probability >= WorkToDo.WorthPlanning)
                .Select(c => (Card: c, Reading: c.SettlingReadings.FirstOrDefault(r => r.IsOpen)))
                .Where(c => c.Reading is not null)
                .DistinctBy(c => c.Reading!.Spec.Id)
                .Where(c => !c.Reading!.Spec.IsOpenCase || state.IsOff(c.Reading.Spec.Access) || IsAhead(c.Reading.Spec.Access, way))
                .Select(c =>
                    (
                        IsAhead(c.Reading!.Spec.Access, way) ? c.Reading.Spec.Access : null,
                        new PlanLine(
                            PlanLineKind.Reading,
                            PartNames.Reading(type, c.Reading.Spec.Id),
                            $"settles {Sentences.Small(c.Card.Findings[0].Name)} or {Sentences.Small(c.Card.Findings[1].Name)}",
                            [
                                new(
                                    $"read {c.Reading.Spec.Id}",
                                    $"read {c.Reading.Spec.Id}",
                                    Math.Max(LeastMinutes, c.Reading.Spec.Minutes),
                                    [],
                                    100
                                ),
                            ],
                            []
                        )
                        {
                            About = c.Reading.Spec.Id,
                        }
                    )
                ),
        ];

    /// <summary>While insulation has not passed, the job may end once the unit is open, or at its first line.</summary>
    private static ImmutableArray<PlanLine> WithInsulation(ImmutableArray<PlanLine> lines, BenchUnit unit, TypeSheet type, Shop shop)
    {
        if (lines.IsEmpty || StillShut.Of(unit, type, shop).FirstOrDefault(g => g.Gate.Quantity == Quantity.InsulationOhms) is not { } gate)
            return lines;
        var least = shop.Limits.FirstOrDefault(l => l.Id == "insulation")?.Value ?? gate.Gate.Limits?.Min ?? 0;
        var at = Math.Max(0, lines.ToList().FindIndex(l => l.Kind == PlanLineKind.TakeApart));
        var stop = new PlanStop($"insulation stays under {ValueText.Of(least, Quantity.InsulationOhms)}", shop.StopPercent, shop.StopFee);
        return lines.SetItem(at, lines[at] with { Stop = stop });
    }

    private static ImmutableArray<string> LeftAlone(BenchUnit unit, TypeSheet own) =>
        [
            .. WorkToDo
                .Decisions(unit)
                .Values.Where(d => d.Act is DecidedAct.Leave or DecidedAct.Watch)
                .OrderBy(d => d.About, StringComparer.Ordinal)
                .Select(d =>
                    $"{WorkToDo.Title(own, d.About)}: {(d.Act == DecidedAct.Leave ? "leave" : "watch")}{(d.Why.Length > 0 ? $", {d.Why}" : "")}"
                ),
        ];

    /// <summary>Makes lines with the minutes of the shop.</summary>
    private sealed class LineMaker(TypeSheet type, TypeSheet own, Shop shop, MinuteBook book, string sheetId)
    {
        public PlanLine TakeApart(ImmutableArray<(TakeApartStep Step, double Percent)> steps) =>
            Group(PlanLineKind.TakeApart, "Take apart", steps, s => ($"off {s.Id}", WorkKey.Off(sheetId, s.Id), s.MinutesOut));

        public PlanLine? PutTogether(ImmutableArray<(TakeApartStep Step, double Percent)> steps) =>
            steps.IsEmpty
                ? null
                : Group(PlanLineKind.PutTogether, "Put together", steps, s => ($"back {s.Id}", WorkKey.Back(sheetId, s.Id), s.MinutesIn));

        public PlanLine Check() =>
            new(
                PlanLineKind.Check,
                "Wiring check, then first power",
                "",
                [new("check", WorkKey.Check, CheckMinutes, book[WorkKey.Check], 100)],
                []
            );

        public PlanLine Work(PlannedWork work)
        {
            var key = WorkKey.Of(own, work.About, work.Sort);
            return new(
                PlanLineKind.Work,
                work.Words,
                work.Under,
                [new($"work {work.About}", key, work.UsualMinutes, book[key], work.Percent)],
                work.Parts
            )
            {
                About = work.About,
                Mode = work.Mode,
                Stop =
                    work.StopWhen.Length > 0
                        ? new(Sentences.Small(work.StopWhen).TrimEnd('.'), shop.StopPercent * work.Percent / 100, shop.StopFee)
                        : null,
            };
        }

        private PlanLine Group(
            PlanLineKind kind,
            string words,
            ImmutableArray<(TakeApartStep Step, double Percent)> steps,
            Func<TakeApartStep, (string Id, string Key, double Minutes)> of
        ) =>
            new(
                kind,
                words,
                "",
                [
                    .. steps.Select(s =>
                    {
                        var (id, key, minutes) = of(s.Step);
                        return new PlanStep(id, key, Math.Max(LeastMinutes, minutes), book[key], s.Percent);
                    }),
                ],
                []
            )
            {
                Names = [.. steps.Select(s => PartNames.Step(type, s.Step.Id))],
            };
    }
}
