using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>Readings that took no part (<see cref="Judging"/>), put back among the others with what the best set expects.</summary>
internal static class UnjudgedRows
{
    /// <param name="judged">The rows of the readings that took part, in the order they were taken.</param>
    /// <returns>A row for every reading taken, in order.</returns>
    public static ImmutableArray<ExplainedReading> Among(
        ImmutableArray<ExplainedReading> judged,
        ReadingLibrary library,
        UnitReadings readings,
        Fault[] best
    )
    {
        var taken = readings.Readings.Where(r => r.IsTaken).ToArray();
        if (taken.Length == judged.Length)
            return judged;
        var set = new ReadingSet(library.Model, library.Catalogue, taken.Select(t => (t.Spec, t.State, readings.ErrorOf(t))));
        using var unit = new Predictor(set).Assume(best);
        var rows = ImmutableArray.CreateBuilder<ExplainedReading>(taken.Length);
        var next = 0;
        for (var n = 0; n < taken.Length; n++)
        {
            if (Judging.IsEvidence(library.Model, taken[n].Spec, taken[n].State))
            {
                rows.Add(judged[next++]);
                continue;
            }
            var expected = unit.Value(n);
            if (expected > Solution.OverRange(taken[n].Spec.Quantity))
                expected = double.PositiveInfinity;
            double? measured = taken[n].Outcome == Outcome.Value ? taken[n].Value : null;
            rows.Add(new ExplainedReading(taken[n].Spec, measured, taken[n].Outcome == Outcome.OverRange, expected, null));
        }
        return rows.MoveToImmutable();
    }
}
