using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>Takes the twelve readings that are proposed, one after another. One that is proposed again is taken well the second time.</summary>
internal static class TwelveReadings
{
    private const int Most = 12;

    /// <summary>The unit with the readings that were taken, the diagnosis of them, and how often the mains were proposed too early.</summary>
    public static DiagnosedUnit Take(UnitModel model, DrawnUnit unit, DiagnosisOptions options)
    {
        var library = new ReadingLibrary(model);
        var noted = unit.Readings.Readings.ToDictionary(r => r.Spec.Id, StringComparer.Ordinal);
        var clean = unit.Slips.ToDictionary(s => s.Id, s => s.Clean, StringComparer.Ordinal);
        var so = unit.Readings with { Readings = [] };
        var early = 0;
        while (true)
        {
            var result = Diagnoser.Run(library, so, options);
            early += DoubtedCheck.Count(model.Sheet, so, result);
            var next = result.Next.FirstOrDefault(n => n.BlockedBy.IsEmpty)?.Spec.Id;
            if (so.Readings.Length == Most || next is null)
                return new DiagnosedUnit(
                    unit with
                    {
                        Readings = so,
                        Slips = [.. unit.Slips.Where(s => so.Readings.Any(r => r.Spec.Id == s.Id))],
                    },
                    result,
                    early
                );
            var isAgain = so.Readings.Any(r => r.Spec.Id == next);
            so = so with { Readings = so.Readings.Add(isAgain ? clean.GetValueOrDefault(next, noted[next]) : noted[next]) };
        }
    }
}
