using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Doubts;

/// <summary>What is probably wrong with the bench or the sheet: the benches that were searched, by their probability, with their figures.</summary>
internal sealed class DoubtFinder(
    ReadingLibrary library,
    UnitReadings readings,
    BenchSearches searches,
    Marginals marginals,
    Workers workers
)
{
    /// <summary>From here on a doubt is said.</summary>
    private const double LeastProbability = 0.5;

    /// <summary>A parameter that lies so far off is named [the sheet's deviations].</summary>
    private const double FarDeviations = 1.5;

    /// <summary>So many are named at most.</summary>
    private const int MostNamed = 8;

    /// <summary>The doubts, most probable first; on one bench there is one.</summary>
    public ImmutableArray<Doubt> Find()
    {
        var all = searches
            .All.Skip(1)
            .Select(s => (Search: s, Probability: marginals.Of(s)))
            .OrderByDescending(s => s.Probability)
            .ToArray();
        if (all.Length == 0)
            return [];
        // The figures of another type hold those of another batch: what speaks for the one speaks for the other.
        var (search, probability) = all[0];
        if (IsOfTheUnit(search))
            probability = all.Where(s => IsOfTheUnit(s.Search)).Sum(s => s.Probability);
        if (probability < LeastProbability)
            return [];
        var doubt = Figure(search, probability);
        // Leads and heat are only ever more: less of either is no doubt that anyone can act on.
        return doubt is { About: DoubtAbout.Leads or DoubtAbout.Internal, Value: <= 0 } ? [] : [doubt];
    }

    private static bool IsOfTheUnit(Search s) => s.Evidence.Bench.About is DoubtAbout.Unit or DoubtAbout.Kind;

    private Doubt Figure(Search search, double probability)
    {
        var (evidence, about) = (search.Evidence, search.Evidence.Bench.About!.Value);
        var set = marginals.Sets[Array.IndexOf(marginals.On, search)];
        var spread = set.Spread;
        return workers.One(worker =>
        {
            using var judged = new Judge(evidence, spread, worker).At(set.Predicted);
            var means = judged.Parameters().Means;
            return about switch
            {
                DoubtAbout.Line => AtNotedLine(Shared(evidence, judged, probability, by => 1 + (by * BenchTable.LineDeviation))),
                DoubtAbout.Leads => Shared(evidence, judged, probability, by => by * BenchTable.LeadDeviation),
                DoubtAbout.Meter => new(
                    about,
                    probability,
                    MeterErrors.Factor(evidence, set, spread, worker),
                    [.. Ids(evidence, MeterErrors.Readings(evidence, set, spread, worker))],
                    []
                ),
                DoubtAbout.Internal => new(about, probability, ExtraWatts(means), Watts(evidence), []),
                DoubtAbout.Kind => new(about, probability, Nats(search), Farthest(evidence, set, spread), Names(means)),
                _ => new(about, probability, means.Max(Math.Abs), Farthest(evidence, set, spread), Names(means)),
            };
        });
    }

    /// <summary>The line as these readings noted it: another may be entered by now for those that follow.</summary>
    private Doubt AtNotedLine(Doubt share) => share with { Value = share.Value * readings.NotedLine(library.Model.Sheet, share.Readings) };

    private static Doubt Shared(Evidence evidence, Judgement judged, double probability, Func<double, double> figure)
    {
        var shared = evidence.Bench.Shared[0];
        return new(
            evidence.Bench.About!.Value,
            probability,
            figure(judged.Common(shared)),
            [.. Ids(evidence, Enumerable.Range(0, shared.Length).Where(r => shared[r] != 0).OrderByDescending(r => Math.Abs(shared[r])))],
            []
        );
    }

    private double Nats(Search search) => search.LogTotal - searches.All[0].LogTotal;

    private ImmutableArray<string> Names(double[] means) =>
        [
            .. Enumerable
                .Range(0, means.Length)
                .Where(p => Math.Abs(means[p]) >= FarDeviations)
                .OrderByDescending(p => Math.Abs(means[p]))
                .Take(MostNamed)
                .Select(p =>
                    library.Model.Parameters[p].Path[(library.Model.Parameters[p].Path.IndexOf('.', StringComparison.Ordinal) + 1)..]
                ),
        ];

    /// <summary>The readings that lie farthest from what the sound figures let them be, the farthest first.</summary>
    private static ImmutableArray<string> Farthest(Evidence evidence, Hypothesis set, Spread spread) =>
        [
            .. Ids(
                evidence,
                evidence
                    .Numeric.ToArray()
                    .Select(r => (Reading: r, Off: Math.Abs(evidence.Measured(r) - set.Predicted[r] - spread.Shift[r])))
                    .Where(r => r.Off > 1)
                    .OrderByDescending(r => r.Off)
                    .Select(r => r.Reading)
                    .Take(MostNamed)
            ),
        ];

    private static ImmutableArray<string> Watts(Evidence evidence) =>
        [
            .. Ids(
                evidence,
                evidence
                    .Numeric.ToArray()
                    .Where(r => evidence.Taken[r].Spec.Quantity is Quantity.Watts or Quantity.AcAmps && evidence.IsOnMains(r))
            ),
        ];

    private static IEnumerable<string> Ids(Evidence evidence, IEnumerable<int> places) =>
        places.Select(r => evidence.Taken[r].Spec.Id).Distinct(StringComparer.Ordinal);

    /// <summary>What the cores take more than nominal ones, the unit on its line without a load [W]; 0 where nothing on it can be solved.</summary>
    private double ExtraWatts(double[] means)
    {
        var model = library.Model;
        if (
            model.Sheet.Readings.FirstOrDefault(r =>
                r.State is { Source: { IsDirect: false, HasLamp: false, SeriesOhms: 0, IsMains: true }, Loads: [] }
            )
            is not { } spec
        )
            return 0;
        var set = new ReadingSet(
            model,
            library.Catalogue,
            [(spec with { Quantity = Quantity.Watts, From = "", To = "" }, readings.StateOf(model.Sheet, spec))],
            readings.Meter
        );
        var predictor = new Predictor(set);
        double[] factors =
        [
            .. model.Parameters.Select(
                (p, n) => p.Kind is ParameterKind.LossOhms or ParameterKind.Excitation ? Math.Exp(means[n] * p.Sigma) : 1
            ),
        ];
        using var heated = predictor.Assume([], factors);
        using var nominal = predictor.Assume();
        return heated.Value(0) - nominal.Value(0) ?? 0;
    }
}
