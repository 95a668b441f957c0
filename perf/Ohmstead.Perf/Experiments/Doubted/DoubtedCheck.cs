using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments.Benches;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>Whether a diagnosis proposes the mains while it doubts a check that the mains need.</summary>
internal static class DoubtedCheck
{
    /// <summary>Readings with the mains that are proposed as free although a check before them is doubted.</summary>
    public static int Count(TypeSheet sheet, UnitReadings readings, DiagnosisResult result) =>
        result.Next.Count(n =>
            n.BlockedBy.IsEmpty && Bench.IsMains(n.Spec.State) && Needs(sheet, n.Spec).Any(id => IsDoubted(sheet, readings, result, id))
        );

    /// <summary>
    /// Noted or taken wrongly by the diagnosis' own word, or met only by the leads in it. A check that was taken twice has been read again.
    /// </summary>
    private static bool IsDoubted(TypeSheet sheet, UnitReadings readings, DiagnosisResult result, string id)
    {
        if (sheet.FindReading(id) is not { Limits: { } limits } spec || readings.Readings.Count(r => r.Spec.Id == id) != 1)
            return false;
        if (result.Slips.Any(s => s.Id == id) || result.Unexplained.Contains(id))
            return true;
        var leads = result.Doubts.Where(d => d.About == DoubtAbout.Leads).Sum(d => d.Value);
        var taken = readings.Readings.First(r => r.Spec.Id == id);
        return spec.Quantity == Quantity.Ohms && taken.Outcome == Outcome.Value && taken.Value - leads < limits.Min;
    }

    private static HashSet<string> Needs(TypeSheet sheet, ReadingSpec spec)
    {
        var all = new HashSet<string>(StringComparer.Ordinal);
        void Add(ReadingSpec r)
        {
            foreach (var id in r.Needs)
                if (all.Add(id) && sheet.FindReading(id) is { } need)
                    Add(need);
        }
        Add(spec);
        return all;
    }
}
