using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Ranking;

/// <summary>
/// Ranks the readings not yet taken by expected information per minute. The scenarios are the probable sets of faults, alone
/// and with one more fault; a reading's information is the mutual information between scenario and reading (key
/// cover-thomas), its spread and the meter's error included, given the readings taken.
/// </summary>
internal sealed class NextReadings
{
    /// <summary>Readings behind a gate that are looked at together.</summary>
    private const int MostBehind = 6;

    private readonly ReadingLibrary library;
    private readonly UnitReadings readings;
    private readonly ReadingSpec[] untaken;
    private readonly ReadingSet set;
    private readonly Workers workers;
    private readonly Scenarios scenarios;

    public NextReadings(
        ReadingLibrary library,
        UnitReadings readings,
        Marginals marginals,
        Evidence evidence,
        List<FaultMode> still,
        double[] odds,
        int threads,
        Guard guard
    )
    {
        (this.library, this.readings) = (library, readings);
        var sheet = library.Model.Sheet;
        var done = readings
            .Readings.Where(r => r.IsTaken || r.Why.Length > 0 || r.WaivedBy.Length > 0)
            .Select(r => r.Spec.Id)
            .Where(id => !IsDoubted(id))
            .ToHashSet(StringComparer.Ordinal);
        untaken = [.. sheet.Readings.Where(r => !done.Contains(r.Id) && Judging.IsEvidence(library.Model, r, readings.StateOf(sheet, r)))];
        set = new ReadingSet(library.Model, library.Catalogue, untaken.Select(r => (r, readings.StateOf(sheet, r))), readings.Meter);
        workers = new Workers(set, threads);
        var rows = library.Rows(set, workers, () => guard.IsOver);
        scenarios = new Scenarios(evidence, marginals, still, odds, set, rows, workers);
    }

    /// <summary>The ranking: what can be taken now, best first; open-case mains after that; the blocked last.</summary>
    public ImmutableArray<NextReading> Rank()
    {
        var sheet = library.Model.Sheet;
        var parts = new List<Component>[untaken.Length];
        var bits = new double[untaken.Length];
        workers.Each(untaken.Length, (r, _) => bits[r] = Information.Bits(parts[r] = scenarios.Of(r), set.OverRangeOnScale(r)));
        var minutes = Enumerable.Range(0, untaken.Length).Select(r => MinutesOf([r])).ToArray();
        var missing = untaken.Select(r => Gates.Missing(sheet, readings, r)).ToArray();
        AddWhatIsUnlocked(bits, minutes, missing, parts);
        return
        [
            .. Enumerable
                .Range(0, untaken.Length)
                .OrderBy(r =>
                    missing[r].Length > 0 ? 2
                    : IsDoubted(untaken[r].Id) ? -1
                    : IsOpenMains(untaken[r]) ? 1
                    : 0
                )
                .ThenByDescending(r => bits[r] / minutes[r])
                .ThenBy(r => r)
                .Select(r => new NextReading(untaken[r], bits[r], minutes[r], missing[r])),
        ];
    }

    /// <summary>A check that opens nothing until it is read again: that comes first.</summary>
    private bool IsDoubted(string id) =>
        library.Model.Sheet.FindReading(id) is { Limits: not null } spec && Gates.EndOf(readings, spec) == CheckEnd.Doubted;

    /// <summary>Minutes of readings taken together from here: what has to be opened for them is opened once.</summary>
    private double MinutesOf(IReadOnlyCollection<int> together) =>
        Math.Max(
            together.Sum(r => untaken[r].Minutes)
                + Gates.OpeningMinutes(
                    library.Model.Sheet,
                    together.Select(r => untaken[r].Access),
                    readings.Readings.Where(r => r.IsTaken).Select(r => r.Spec.Access)
                ),
            0.1
        );

    private static bool IsOpenMains(ReadingSpec r) => r.IsOpenCase && r.State.Source is { IsMains: true };

    /// <summary>
    /// A reading that others need is worth what it opens: if the missing needs and the best readings behind them together
    /// give more bits per minute than it gives alone, it is credited with that rate.
    /// </summary>
    private void AddWhatIsUnlocked(double[] bits, double[] minutes, ImmutableArray<string>[] missing, List<Component>[] parts)
    {
        var place = untaken.Select((r, n) => (r.Id, n)).ToDictionary(p => p.Id, p => p.n, StringComparer.Ordinal);
        var credit = new double[bits.Length];
        foreach (
            var group in Enumerable
                .Range(0, untaken.Length)
                .Where(r => missing[r].Length > 0)
                .GroupBy(r => string.Join(',', missing[r]), StringComparer.Ordinal)
        )
        {
            var needs = missing[group.First()].Where(place.ContainsKey).Select(id => place[id]).ToArray();
            if (needs.Length < missing[group.First()].Length)
                continue;
            var plan = needs.ToList();
            var joint = scenarios.Joint();
            foreach (var n in needs)
                joint.With(parts[n], set.OverRangeOnScale(n));
            foreach (var r in group.OrderByDescending(r => bits[r] / minutes[r]).Take(MostBehind))
            {
                plan.Add(r);
                var rate = joint.With(parts[r], set.OverRangeOnScale(r)) / MinutesOf(plan);
                foreach (var n in needs)
                    credit[n] = Math.Max(credit[n], rate * minutes[n]);
            }
        }
        for (var r = 0; r < bits.Length; r++)
            bits[r] = Math.Max(bits[r], credit[r]);
    }
}
