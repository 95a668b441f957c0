using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What a search that goes on would say now. It is shown while it searches, and is no finding: nothing is kept or opened by it.</summary>
/// <param name="Likely">Most likely first; empty when nothing points to a fault so far.</param>
public sealed record SoFar(ImmutableArray<LikelySoFar> Likely)
{
    private const int Most = 3;

    /// <summary>Puts it into words. What was ruled out by hand and what no reading speaks of is left out, as among the findings.</summary>
    /// <param name="sheet">The unit's own sheet.</param>
    public static SoFar Of(BenchUnit unit, TypeSheet sheet, EarlyAnswer answer)
    {
        var judged = JudgedSheet.Judgements(unit);
        bool IsRuledOut(EarlyFinding f) =>
            f.Modes.All(m => judged.TryGetValue((m.Element, m.Mode), out var fact) && fact.Judgement == Judgement.Dismissed);
        return new([
            .. answer
                .Findings.Where(f =>
                    f.Probability >= FindingsView.WorthNaming && Finding.IsRaised(f.Probability, f.Modes) && !IsRuledOut(f)
                )
                .Take(Most)
                .Select(f => new LikelySoFar(NameOf(sheet, f), ValueText.Percent(f.Probability))),
        ]);
    }

    private static string NameOf(TypeSheet sheet, EarlyFinding finding) =>
        finding.Modes switch
        {
            [var one] => PartNames.Headline(sheet, one),
            [var one, var other] => $"{PartNames.Headline(sheet, one)}; or {PartNames.Fault(sheet, other)}",
            [var one, .. var more] => $"{PartNames.Headline(sheet, one)}, or {ValueText.Plain(more.Length)} more",
            [] => "",
        };
}

/// <summary>A fault, or several that nothing read so far tells apart.</summary>
public sealed record LikelySoFar(string Name, string Percent);
