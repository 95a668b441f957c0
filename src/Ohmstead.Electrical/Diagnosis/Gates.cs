using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Which readings must stand before another may be taken.</summary>
public static class Gates
{
    /// <summary>
    /// The readings that <paramref name="spec"/> needs, directly or through others, and that do not stand; those to take
    /// first come first. A need stands when the last value with the error of the meter it was taken with lies inside the limits, or when it was
    /// waived in writing because it could not be taken; a measured failure is never waived.
    /// </summary>
    public static ImmutableArray<string> Missing(TypeSheet sheet, UnitReadings readings, ReadingSpec spec)
    {
        var missing = new List<string>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        void Visit(ReadingSpec r)
        {
            foreach (var id in r.Needs)
            {
                if (!seen.Add(id) || sheet.FindReading(id) is not { } need)
                    continue;
                Visit(need);
                if (!Stands(readings, need))
                    missing.Add(id);
            }
        }
        Visit(spec);
        return [.. missing];
    }

    /// <summary>True when the need for this reading is met.</summary>
    public static bool Stands(UnitReadings readings, ReadingSpec spec) => EndOf(readings, spec) is CheckEnd.Passed or CheckEnd.Waived;

    /// <summary>
    /// What became of a check: by its last value, with the meter that was taken; a measured one is never waived, and one that would pass
    /// is doubted where the last diagnosis takes it for a slip, or where leads that were not taken off would make it fail.
    /// </summary>
    public static CheckEnd EndOf(UnitReadings readings, ReadingSpec spec)
    {
        if (readings.Readings.LastOrDefault(r => r.Spec.Id == spec.Id && r.IsTaken) is not { } measured)
            return readings.Readings.Any(r => r.Spec.Id == spec.Id && r.WaivedBy.Length > 0) ? CheckEnd.Waived : CheckEnd.NotTaken;
        if (measured.Outcome == Outcome.Jumps)
            return CheckEnd.Failed;
        var (value, error) = (measured.Outcome == Outcome.OverRange ? double.PositiveInfinity : measured.Value, readings.ErrorOf(measured));
        var end = CheckJudge.EndOf(spec, value, error);
        if (end != CheckEnd.Passed)
            return end;
        var leads = spec.Quantity == Quantity.Ohms ? readings.Doubts.LeadOhms : 0;
        return readings.Doubts.Readings.Contains(spec.Id) || CheckJudge.EndOf(spec, value - leads, error) != CheckEnd.Passed
            ? CheckEnd.Doubted
            : CheckEnd.Passed;
    }

    /// <summary>
    /// What a diagnosis doubts of the readings it was made from: those whose last value it takes for a slip or leaves out. A reading taken
    /// several times is doubted where that very value is.
    /// </summary>
    /// <param name="readings">Those that the diagnosis was made from.</param>
    public static CheckDoubts DoubtsOf(UnitReadings readings, DiagnosisResult result)
    {
        var values = readings
            .Readings.Where(r => r.IsTaken)
            .Zip(result.Readings)
            .ToLookup(r => r.First.Spec.Id, r => r.Second.IsDoubted, StringComparer.Ordinal);
        var doubted = result
            .Slips.Select(s => s.Id)
            .Concat(result.Unexplained)
            .Where(id => !values[id].Contains(true) || values[id].Last());
        var leads = result.Doubts.Where(d => d.About == DoubtAbout.Leads).Select(d => d.Value).DefaultIfEmpty(0).Max();
        return new(doubted.ToImmutableHashSet(StringComparer.Ordinal), leads);
    }

    /// <summary>
    /// Minutes of opening that readings with these accesses pay: their steps and a cheap way to them, beyond what was
    /// opened already. Of several ways to a step the one is taken whose steps add up to the fewest minutes, those that two of them share
    /// counted twice; the planner finds the cheapest. Cost: linear in the steps.
    /// </summary>
    public static double OpeningMinutes(TypeSheet sheet, IEnumerable<string> accesses, IEnumerable<string> opened)
    {
        var steps = sheet.TakeApart.ToDictionary(s => s.Id, StringComparer.Ordinal);
        var done = new HashSet<string>(StringComparer.Ordinal);
        var added = new Dictionary<string, double>(StringComparer.Ordinal);
        var begun = new HashSet<string>(StringComparer.Ordinal);
        double AddedUp(string id)
        {
            if (done.Contains(id))
                return 0;
            if (begun.Contains(id))
                return double.PositiveInfinity;
            if (added.TryGetValue(id, out var known))
                return known;
            // Two steps may each be a way to the other: no way leads through itself.
            added[id] = double.PositiveInfinity;
            var ways = steps[id].AfterAny;
            return added[id] = steps[id].MinutesOut + steps[id].After.Sum(AddedUp) + (ways.Length == 0 ? 0 : ways.Min(g => g.Sum(AddedUp)));
        }
        void Reach(string id)
        {
            if (done.Contains(id) || !begun.Add(id))
                return;
            foreach (var before in steps[id].After)
                Reach(before);
            if (steps[id].AfterAny is { IsEmpty: false } ways && !ways.Any(g => g.All(done.Contains)))
                foreach (var before in ways.MinBy(g => g.Sum(AddedUp)))
                    Reach(before);
            done.Add(id);
        }
        void ReachAll(IEnumerable<string> all)
        {
            foreach (var access in all.Where(a => a != ReadingSpec.Closed))
            {
                added.Clear();
                Reach(access);
            }
        }
        ReachAll(opened);
        var before = done.Sum(s => steps[s].MinutesOut);
        ReachAll(accesses);
        return done.Sum(s => steps[s].MinutesOut) - before;
    }
}
