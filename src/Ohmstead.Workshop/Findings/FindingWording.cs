using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>Puts the faults of a diagnosis into words, those that are equal by all that was read as one.</summary>
internal sealed class FindingWording
{
    /// <summary>A reading that makes a fault less than twice as likely, or half, is not heard [nat].</summary>
    private const double WorthHearing = 0.7;

    /// <summary>Faults of one kind whose chances differ by less than this share are equal.</summary>
    private const double EqualWithin = 0.1;

    /// <summary>Chances below this are noise: nothing is called equal by them.</summary>
    private const double LeastEqual = 0.005;

    private readonly UnitModel model;
    private readonly List<TakenReading> taken;
    private readonly DiagnosisResult result;
    private readonly ImmutableDictionary<(string Element, string Mode), FindingJudged> judged;
    private readonly Dictionary<string, WeightOfEvidence> weights;
    private readonly Dictionary<string, Finding> byName = new(StringComparer.Ordinal);

    public FindingWording(
        UnitModel model,
        List<TakenReading> taken,
        DiagnosisResult result,
        ImmutableDictionary<(string Element, string Mode), FindingJudged> judged
    )
    {
        (this.model, this.taken, this.result, this.judged) = (model, taken, result, judged);
        weights = result.Weights.ToDictionary(s => s.Mode.Name, StringComparer.Ordinal);
        var faults = ImmutableArray.CreateBuilder<Finding>();
        foreach (var fault in result.Faults)
        {
            if (byName.ContainsKey(fault.Mode.Name))
                continue;
            ImmutableArray<FaultProbability> equals = [fault, .. EqualsOf(fault)];
            var finding = Tell(equals);
            faults.Add(finding);
            foreach (var member in equals)
                byName[member.Mode.Name] = finding;
        }
        // What several parts share is more than each has.
        Faults = [.. faults.OrderByDescending(f => f.Probability).ThenBy(f => f.Mode.Number)];
    }

    /// <summary>All faults, most probable first.</summary>
    public ImmutableArray<Finding> Faults { get; }

    /// <summary>The finding that a fault is in.</summary>
    public Finding Holding(FaultMode mode) => byName[mode.Name];

    private IEnumerable<FaultProbability> EqualsOf(FaultProbability fault)
    {
        if (fault.Probability < LeastEqual || IsJudged(fault.Mode))
            return [];
        var group = result.Alike.FirstOrDefault(g => g.Any(m => m.Name == fault.Mode.Name));
        if (group.IsDefault)
            return [];
        var row = WhatToDo.For(model.Sheet, fault.Mode);
        return result.Faults.Where(f =>
            f != fault
            && f.Mode.IsShared == fault.Mode.IsShared
            && !IsJudged(f.Mode)
            && !byName.ContainsKey(f.Mode.Name)
            && group.Any(m => m.Name == f.Mode.Name)
            && WhatToDo.For(model.Sheet, f.Mode) == row
            && Math.Abs((f.Probability / fault.Probability) - 1) < EqualWithin
        );
    }

    private bool IsJudged(FaultMode mode) => judged.ContainsKey((mode.Element, mode.Mode));

    private Finding Tell(ImmutableArray<FaultProbability> equals)
    {
        var fault = equals[0];
        var said = weights.TryGetValue(fault.Mode.Name, out var s) ? s.Readings : [];
        var all = said.Where(r => Math.Abs(r.Nats) >= WorthHearing)
            .Select(r => new EvidenceLine(taken[r.Place].Spec, ReadingWords.Measured(taken[r.Place]), r.Nats))
            .ToList();
        var probability = equals.Length == 1 ? fault.Probability : AnyOf(equals);
        var remedy = WhatToDo.For(model.Sheet, fault.Mode);
        return new(
            fault.Mode,
            equals.Length == 1
                ? PartNames.Headline(model.Sheet, fault.Mode)
                : $"{remedy.Headline}, one of {(equals.Length == PartRole.Peers(model.Sheet, fault.Mode) ? "the " : "")}{InWords(equals.Length)}",
            probability,
            ValueText.SureOf(probability),
            Finding.SizeOf(model.Sheet, fault),
            judged.TryGetValue((fault.Mode.Element, fault.Mode.Mode), out var fact) ? fact.Judgement : Judgement.Open,
            [.. all.Where(w => w.Nats > 0)],
            [.. all.Where(w => w.Nats < 0)]
        )
        {
            Remedy = remedy,
            Members = [.. equals.Select(e => e.Mode)],
        };
    }

    /// <summary>The chance that at least one of them is there, by the sets that were weighed.</summary>
    private double AnyOf(ImmutableArray<FaultProbability> equals)
    {
        var names = equals.Select(e => e.Mode.Name).ToHashSet(StringComparer.Ordinal);
        var all = result.Hypotheses.Sum(h => h.Probability);
        var with = result.Hypotheses.Where(h => h.Faults.Any(f => names.Contains(f.Name))).Sum(h => h.Probability);
        return all > 0 ? Math.Max(with / all, equals.Max(e => e.Probability)) : equals.Max(e => e.Probability);
    }

    private static string InWords(int count) =>
        count switch
        {
            2 => "two",
            3 => "three",
            4 => "four",
            5 => "five",
            6 => "six",
            7 => "seven",
            8 => "eight",
            _ => count.ToString(System.Globalization.CultureInfo.InvariantCulture),
        };
}
