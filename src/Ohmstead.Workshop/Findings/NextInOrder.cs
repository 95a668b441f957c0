using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Findings;

/// <summary>What to read next: a doubted check again, before anything else, then what the diagnosis ranks.</summary>
public static class NextInOrder
{
    /// <summary>
    /// In order; a check to be read again is worth the best of what waits for it. What is locked goes by the last value of each reading: one
    /// that was read again and fits locks nothing any more.
    /// </summary>
    /// <param name="readings">With what the diagnosis doubts of them.</param>
    public static ImmutableArray<NextReading> Of(TypeSheet sheet, UnitReadings readings, DiagnosisResult result)
    {
        var taken = readings.Readings.Where(r => r.IsTaken).Select(r => r.Spec).ToList();
        var ranked = result
            .Next.Where(n => !taken.Contains(n.Spec) || IsDoubted(readings, n.Spec))
            .Select(n => n with { BlockedBy = Gates.Missing(sheet, readings, n.Spec) })
            .ToList();
        var again = sheet
            .Readings.Where(r => r.Limits is not null && IsDoubted(readings, r))
            .Select(r => new NextReading(
                r,
                ranked.Where(n => n.BlockedBy.Contains(r.Id)).Select(n => n.Bits).DefaultIfEmpty(0).Max(),
                r.Minutes + Gates.OpeningMinutes(sheet, [r.Access], taken.Select(t => t.Access)),
                Gates.Missing(sheet, readings, r)
            ))
            .ToList();
        return [.. again.Concat(ranked.Where(n => !again.Exists(a => a.Spec.Id == n.Spec.Id))).OrderBy(n => n.BlockedBy.Length > 0)];
    }

    /// <summary>True for a reading that is to be read again: a check that would pass, or another whose value is doubted.</summary>
    public static bool IsDoubted(UnitReadings readings, ReadingSpec spec) =>
        spec.Limits is null ? readings.Doubts.Readings.Contains(spec.Id) : Gates.EndOf(readings, spec) == CheckEnd.Doubted;
}
