using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Findings;

/// <summary>What to read next: a doubted check again, before anything else, then what the diagnosis ranks.</summary>
public static class NextInOrder
{
    /// <summary>In order; a check to be read again is worth the best of what waits for it.</summary>
    /// <param name="readings">With what the diagnosis doubts of them.</param>
    public static ImmutableArray<NextReading> Of(TypeSheet sheet, UnitReadings readings, DiagnosisResult result)
    {
        var opened = readings.Readings.Where(r => r.IsTaken).Select(r => r.Spec.Access).ToList();
        var again = sheet
            .Readings.Where(r => IsDoubted(readings, r))
            .Select(r => new NextReading(
                r,
                result.Next.Where(n => n.BlockedBy.Contains(r.Id)).Select(n => n.Bits).DefaultIfEmpty(0).Max(),
                r.Minutes + Gates.OpeningMinutes(sheet, [r.Access], opened),
                Gates.Missing(sheet, readings, r)
            ))
            .ToList();
        var ranked = result.Next.Where(n => !again.Exists(a => a.Spec.Id == n.Spec.Id));
        return [.. again.Where(a => a.BlockedBy.IsEmpty), .. ranked, .. again.Where(a => !a.BlockedBy.IsEmpty)];
    }

    /// <summary>True for a check that would pass and that is to be read again.</summary>
    public static bool IsDoubted(UnitReadings readings, ReadingSpec spec) =>
        spec.Limits is not null && Gates.EndOf(readings, spec) == CheckEnd.Doubted;
}
