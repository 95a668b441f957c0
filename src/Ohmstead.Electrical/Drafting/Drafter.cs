using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Drafting;

/// <summary>From an outline, and the readings of units that may be faulty, to a sheet. Method: docs/methods/outline.md.</summary>
public static class Drafter
{
    /// <summary>A fault this probable is taken as there, one this improbable as not there; between, what it moves is believed the less.</summary>
    private const double There = 0.5,
        NotThere = 0.05;

    /// <summary>The fit moves little after a few rounds: a turn or a size that is a hundredth off is far within what stays in doubt.</summary>
    private const int MostRounds = 4;

    private const double SmallStep = 0.05;

    /// <summary>A reading this near to what taps by themselves can give is reached [deviations].</summary>
    private const double WithinReach = 3;

    /// <summary>Sets of faults that are told.</summary>
    private const int MostSets = 5;

    private const double LeastSet = 0.02;

    /// <summary>
    /// Faults and numbers together: each unit is diagnosed on the wide sheet; what stands once its probable faults are in place gives the
    /// numbers. Cost: a diagnosis for each kind and unit, and some rounds of a fit for the best kind.
    /// </summary>
    /// <param name="kinds">The kinds that the outline may stand for, with the readings; those that cannot have a reading left out.</param>
    public static Draft Run(ImmutableArray<KindReadings> kinds, DiagnosisOptions options)
    {
        var unitCount = kinds[0].Units.Length;
        var models = kinds.Select(k => new UnitModel(k.Sheet)).ToArray();
        var weights = KindWeights.Of(kinds, options);
        var (found, best) = (weights.Found, weights.Order[0]);
        var taken = kinds[best].Units.SelectMany(u => u.Readings.Where(r => r.IsTaken).Select(r => r.Spec)).Distinct().ToList();
        var candidates = weights.Of(kinds);
        var discriminating = KindDiscrimination.Of([.. weights.Order.Select(n => (kinds[n], models[n], weights.Probabilities[n]))], taken);
        var kind = kinds[best].Kind;
        if (unitCount == 0)
            return new(kind, kind.Sheet, kind.Values, [], candidates, discriminating, Wanted.Of(models[best], taken));
        var units = kinds[best].Units.Select((u, n) => Faulted(u, found[best][n])).ToImmutableArray();
        var medians = Fit.Medians(models[best], units, keepSpreads: true, MostRounds, SmallStep);
        var back = TakenBack(models[best], units, medians);
        if (!units.SequenceEqual(back))
            medians = Fit.Medians(models[best], units = back, keepSpreads: true, MostRounds, SmallStep);
        var (sheet, values) = MeasuredSheet.Of(kind, medians, kinds[best].Units);
        return new(
            kind,
            sheet,
            values,
            [.. found[best].Select((f, n) => Told(f, units[n]))],
            candidates,
            discriminating,
            Wanted.Of(new UnitModel(sheet), taken)
        );
    }

    /// <summary>
    /// A reading that a diagnosis left out, and that a tap by itself reaches, is no slip.
    /// </summary>
    private static ImmutableArray<FaultedUnit> TakenBack(UnitModel model, ImmutableArray<FaultedUnit> units, KindMedians medians) =>
        [
            .. units.Select(u =>
            {
                if (u.SetAside.IsEmpty)
                    return u;
                var rows = new UnitRows(model, u with { SetAside = [] }, medians.Shapes);
                var reached = rows.Deviations(medians)
                    .GroupBy(d => d.Id, StringComparer.Ordinal)
                    .Where(g => g.All(d => Math.Abs(d.Deviation) < WithinReach))
                    .Select(g => g.Key);
                var left = u.SetAside.Except(reached);
                return left.Count == u.SetAside.Count ? u : u with { SetAside = left };
            }),
        ];

    /// <summary>A unit with its probable faults in place.</summary>
    private static FaultedUnit Faulted(UnitReadings readings, DiagnosisResult found)
    {
        // The best set, unless it holds what is improbable over all sets.
        var best = found.Hypotheses.IsEmpty ? [] : found.Hypotheses[0].Faults;
        bool IsIn(FaultProbability f) => f.Probability >= There || best.Contains(f.Mode);
        return new FaultedUnit(readings)
        {
            Faults =
            [
                .. found
                    .Faults.Where(IsIn)
                    .GroupBy(f => f.Mode.Element, StringComparer.Ordinal)
                    .Select(g => FaultOf(g.MaxBy(f => f.Probability)!)),
            ],
            Doubtful = [.. found.Faults.Where(f => !IsIn(f) && f.Probability >= NotThere).Select(f => (FaultOf(f), f.Probability))],
            SetAside = [.. found.Unexplained],
        };
    }

    private static Fault FaultOf(FaultProbability f) => new(f.Mode, f.Size ?? f.Mode.MiddleSize);

    private static DraftedUnit Told(DiagnosisResult found, FaultedUnit unit)
    {
        var sizes = found.Faults.ToDictionary(f => f.Mode.Number, FaultOf);
        return new(
            [
                .. found
                    .Hypotheses.Where((h, n) => n == 0 || h.Probability >= LeastSet)
                    .Take(MostSets)
                    .Select(h => (h.Faults.Select(m => sizes[m.Number]).ToImmutableArray(), h.Probability)),
            ],
            [.. found.Readings.Where(r => unit.SetAside.Contains(r.Spec.Id))]
        );
    }
}
