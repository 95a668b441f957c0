using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>What was done on a unit, with the minutes of its log and the price of what was fitted.</summary>
internal static class DoneWork
{
    /// <summary>Steps that follow each other are one line; each changed part is one.</summary>
    public static ImmutableArray<PlanLine> Of(BenchUnit unit, TypeSheet own, Shop shop)
    {
        var lines = ImmutableArray.CreateBuilder<PlanLine>();
        foreach (var (entry, fact, minutes) in LoggedMinutes.Of(unit))
        {
            if (fact is TakenOff off)
                AddStep(lines, "Taken off", PartNames.Step(own, off.Step), minutes);
            else if (fact is PutBack back)
                AddStep(lines, "Put back", PartNames.Step(own, back.Step), minutes);
            else if (fact is PartChanged part)
                lines.Add(
                    Line($"{WorkToDo.Title(own, part.Element)}: {Words(part.Change)}", minutes) with
                    {
                        About = part.Element,
                        Parts = Fitted(unit, own, shop, part, entry.Number),
                    }
                );
        }
        return lines.ToImmutable();
    }

    private static void AddStep(ImmutableArray<PlanLine>.Builder lines, string words, string name, double? minutes)
    {
        if (lines.Count == 0 || lines[^1].Words != words)
            lines.Add(Line(words, null));
        var last = lines[^1];
        lines[^1] = last with
        {
            Names = last.Names.Add(name),
            TookMinutes = minutes is null ? last.TookMinutes : (last.TookMinutes ?? 0) + minutes,
        };
    }

    /// <summary>What was fitted: as decided before it, else as the remedy of what was found has it, else the shop's price of the part.</summary>
    private static ImmutableArray<PlanPart> Fitted(BenchUnit unit, TypeSheet own, Shop shop, PartChanged part, int number)
    {
        if (part.Change is not (PartChange.Renewed or PartChange.Replaced or PartChange.Added))
            return [];
        var decided = unit.All<PartDecided>().LastOrDefault(d => d.Fact.About == part.Element && d.Entry.Number < number).Fact;
        if (decided is { Act: DecidedAct.Replace })
            return decided.Price > 0 ? [new(decided.Part.Length > 0 ? decided.Part : "new part", decided.Price, 100)] : [];
        var found = unit.All<FindingJudged>()
            .LastOrDefault(f => f.Fact.Element == part.Element && f.Fact.Judgement == Judgement.Confirmed && f.Entry.Number < number)
            .Fact;
        if (found is not null && WorkToDo.ModeOf(own, found.Element, found.Mode) is { } mode)
            return [.. WhatToDo.For(own, mode).Parts.Select(p => new PlanPart(p.Name, (decimal)p.Price, 100))];
        return WornPart.Of(own, shop, part.Element) is { } known ? [new(known.Name, (decimal)known.Price, 100)] : [];
    }

    private static PlanLine Line(string words, double? minutes) => new(PlanLineKind.Done, words, "", [], []) { TookMinutes = minutes };

    private static string Words(PartChange change) =>
        change switch
        {
            PartChange.Serviced => "cleaned or tightened",
            PartChange.Renewed => "replaced, same part",
            PartChange.Replaced => "replaced, different part",
            PartChange.Removed => "removed",
            PartChange.Added => "added",
            PartChange.Moved => "stays where it is",
            _ => "resoldered",
        };
}
