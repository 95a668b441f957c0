using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
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
    private const int MostSets = 16;
    private const int SetsWithMore = 4;
    private const double LeastWeight = 1e-4;

    /// <summary>Readings behind a gate that are looked at together.</summary>
    private const int MostBehind = 6;

    private readonly ReadingLibrary library;
    private readonly UnitReadings readings;
    private readonly Evidence evidence;
    private readonly ReadingSpec[] untaken;
    private readonly ReadingSet set;
    private readonly ReadingRow[] rows;
    private readonly Crew crew;
    private readonly List<(Hypothesis Set, double Weight, double[] Predicted)> bases = [];
    private readonly List<(int Base, FaultMode More, double Weight)> scenarios = [];

    public NextReadings(
        ReadingLibrary library,
        UnitReadings readings,
        Marginals marginals,
        Evidence evidence,
        List<FaultMode> still,
        double[] odds,
        DiagnosisOptions options
    )
    {
        (this.library, this.readings, this.evidence) = (library, readings, evidence);
        var sheet = library.Model.Sheet;
        var done = readings
            .Readings.Where(r => r.IsTaken || r.Why.Length > 0 || r.WaivedBy.Length > 0)
            .Select(r => r.Spec.Id)
            .Where(id => !IsDoubted(id))
            .ToHashSet(StringComparer.Ordinal);
        untaken = [.. sheet.Readings.Where(r => !done.Contains(r.Id) && Judging.CanJudge(library.Model, r, readings.StateOf(sheet, r)))];
        set = new ReadingSet(library.Model, library.Catalogue, untaken.Select(r => (r, readings.StateOf(sheet, r))), readings.Meter);
        crew = new Crew(set, options.Threads);
        rows = library.Rows(set, crew, options.IsOver);
        AddScenarios(marginals, still, odds);
    }

    /// <summary>The ranking: what can be taken now, best first; open-case mains after that; the blocked last.</summary>
    public ImmutableArray<NextReading> Rank()
    {
        var sheet = library.Model.Sheet;
        var parts = new List<Component>[untaken.Length];
        var bits = new double[untaken.Length];
        crew.Each(untaken.Length, (r, _) => bits[r] = Information.Bits(parts[r] = Components(r), set.OverRangeOnScale(r)));
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

    private static bool IsOpenMains(ReadingSpec r) => r.IsOpenCase && r.State.Source is { Volts: > SheetChecks.LowVolts };

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
            var joint = Joint();
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

    private JointInformation Joint() =>
        new(
            [.. bases.Select(b => b.Weight), .. scenarios.Select(s => s.Weight < LeastWeight / 10 ? 0 : s.Weight)],
            [.. Enumerable.Range(0, bases.Count), .. scenarios.Select(s => s.Base)]
        );

    private void AddScenarios(Marginals marginals, List<FaultMode> still, double[] odds)
    {
        for (var n = 0; n < Math.Min(MostSets, marginals.Sets.Length); n++)
        {
            if (marginals.Weights[n] < LeastWeight)
                break;
            var h = marginals.Sets[n];
            var at = bases.Count;
            bases.Add((h, marginals.Weights[n], []));
            if (n >= SetsWithMore)
                continue;
            var held = h.Classes.SelectMany(c => c.Elements).ToHashSet();
            foreach (var m in still)
                if (!held.Contains(library.Catalogue.ElementOf[m.Number]))
                    scenarios.Add((at, m, marginals.Weights[n] * odds[m.Number]));
            foreach (var c in marginals.Classes)
                for (var k = 0; k < c.Modes.Length; k++)
                    if (!held.Contains(library.Catalogue.ElementOf[c.Modes[k].Number]))
                        scenarios.Add((at, c.Modes[k], marginals.Weights[n] * marginals.Joining[n][c.Number] * c.Odds[k] / c.Odds.Sum()));
            // A class of several modes stands for whichever of them it is: they are scenarios of their own.
            for (var k = 0; k < h.Classes.Length; k++)
                foreach (var other in h.Classes[k].Modes.Skip(1))
                    AddTwin(h, k, other, marginals.Weights[n]);
        }
        for (var n = 0; n < bases.Count; n++)
        {
            var (h, weight, _) = bases[n];
            var faults = h.Faults();
            bases[n] = (
                h,
                weight,
                crew.One(w =>
                {
                    using var unit = w.Predictor.Assume(faults);
                    return Enumerable.Range(0, set.Count).Select(r => unit.Scaled(r) ?? rows[r].Sound).ToArray();
                })
            );
        }
    }

    private void AddTwin(Hypothesis h, int k, FaultMode other, double weight)
    {
        var c = h.Classes[k];
        var share = h.SharesOfModes(k)[c.Modes.IndexOf(other)];
        if (share * weight < LeastWeight)
            return;
        var size = c.SizeAt(h.Shares[k]);
        var twin = new FaultClass(c.Number, [other], [.. library.Catalogue.Modes.Select(_ => 1.0)], library.Catalogue.ElementOf);
        var at = twin.HasSize ? Math.Clamp(Math.Log(size / twin.Min) / Math.Log(twin.Max / twin.Min), 0, 1) : 0;
        var classes = (FaultClass[])h.Classes.Clone();
        var shares = (double[])h.Shares.Clone();
        (classes[k], shares[k]) = (twin, at);
        bases.Add(
            (
                new Hypothesis(classes, shares)
                {
                    Spread = h.Spread,
                    Parent = h.Parent,
                    Deviations = h.Deviations,
                    Predicted = h.Predicted,
                },
                weight * share,
                []
            )
        );
    }

    /// <summary>The distribution of a reading in each scenario, as weighted normal parts.</summary>
    private List<Component> Components(int r)
    {
        var parts = new List<Component>();
        var conditional = bases.Select(b => Conditional(b.Set, r)).ToArray();
        for (var b = 0; b < bases.Count; b++)
        {
            var (_, weight, predicted) = bases[b];
            parts.Add(new Component(b, weight, predicted[r] + conditional[b].Shift, conditional[b].Variance));
        }
        var quiet = new double[bases.Count];
        for (var s = 0; s < scenarios.Count; s++)
        {
            var (b, more, weight) = scenarios[s];
            if (weight < LeastWeight / 10)
                continue;
            if (rows[r].Curves[more.Number] is not { } curve)
            {
                quiet[b] += weight;
                continue;
            }
            for (var k = 0; k < curve.Length; k++)
            {
                var width = (curve[Math.Min(k + 1, curve.Length - 1)] - curve[Math.Max(k - 1, 0)]) / 4;
                parts.Add(
                    new Component(bases.Count + s, weight / curve.Length, parts[b].Mean + curve[k], parts[b].Variance + (width * width))
                );
            }
        }
        for (var b = 0; b < bases.Count; b++)
            parts[b] = parts[b] with { Weight = parts[b].Weight + quiet[b] };
        return parts;
    }

    /// <summary>Shift of the mean and variance of an untaken reading, given the readings taken and a set of faults.</summary>
    private (double Shift, double Variance) Conditional(Hypothesis h, int r)
    {
        var row = rows[r].Slopes;
        var variance = Vectors.Dot(row, row) + (1.0 / 3);
        if (h.NearestSpread is not { } spread || evidence.Numeric.Length == 0)
            return (rows[r].Shift, variance);
        var (n, count) = (evidence.Numeric.Length, row.Length);
        var cross = new double[n];
        var z = new double[n];
        for (var k = 0; k < n; k++)
        {
            var taken = evidence.Numeric[k];
            cross[k] = Vectors.Dot(row, spread.Slopes.AsSpan(taken * count, count));
            z[k] = evidence.Measured(taken) - h.Predicted[taken] - spread.Shift[taken];
            if (Math.Abs(z[k]) > 6 * Math.Sqrt(spread.Gaussian.Covariance[(k * n) + k]))
                cross[k] = 0;
        }
        var (shift, gained) = (rows[r].Shift, 0.0);
        for (var k = 0; k < n; k++)
        {
            if (cross[k] == 0)
                continue;
            var precision = spread.Gaussian.Precision.AsSpan(k * n, n);
            shift += cross[k] * Vectors.Dot(precision, z);
            gained += cross[k] * Vectors.Dot(precision, cross);
        }
        return (shift, Math.Max(variance - gained, 1.0 / 3));
    }
}
