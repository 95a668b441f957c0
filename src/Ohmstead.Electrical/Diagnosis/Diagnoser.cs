using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Doubts;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Ranking;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>From readings and observations to the probabilities of faults.</summary>
public static class Diagnoser
{
    /// <summary>
    /// Marginal probabilities over sets of faults of any size, from any subset of readings. Spread of the sound parameters and
    /// the meter's error both count; sizes are fitted and integrated over. Model and method: docs/methods/diagnosis.md. Cost:
    /// some ten thousand solutions of all readings at the default options.
    /// </summary>
    /// <param name="model">The unit.</param>
    /// <param name="readings">What was read and told.</param>
    /// <param name="options">How widely to search.</param>
    public static DiagnosisResult Run(UnitModel model, UnitReadings readings, DiagnosisOptions options) =>
        Run(new ReadingLibrary(model), readings, options);

    /// <summary>As above; the library keeps what was worked out for the next time the same unit is diagnosed.</summary>
    public static DiagnosisResult Run(ReadingLibrary library, UnitReadings readings, DiagnosisOptions options)
    {
        var guard = new Guard(options);
        var result = Answer(library, readings, options, guard);
        return result with { Effort = result.Effort with { Stop = guard.Or(result.Effort.Stop) } };
    }

    private static DiagnosisResult Answer(ReadingLibrary library, UnitReadings readings, DiagnosisOptions options, Guard guard)
    {
        var catalogue = library.Catalogue;
        var odds = catalogue.Odds(readings.ExpectedFaults);
        var evidence = new Evidence(library, readings, options.WrongReadingChance);
        var workers = new Workers(evidence.Set, options.Threads);
        var rows = library.Rows(evidence.Set, workers, () => guard.IsOver);
        var classes = ClassBuilder.Build(evidence, rows, odds, workers, out var still);
        var searches = new BenchSearches(
            new(evidence, classes, rows, workers, options, guard)
            {
                Watch = options.Early is { } early ? search => early(SoFar.Of(search, classes)) : null,
            }
        );
        var marginals = new Marginals(searches.All, classes);
        var best = marginals.On[0];
        var chances = catalogue.Chances(odds);
        var faults = FaultTable.Of(catalogue, classes, still, marginals, chances);
        var soundProbability = NothingWrong.Probability(catalogue, odds, classes, marginals, still);
        var slipsByPlace = new SlipFinder(evidence, marginals, workers).Find();
        ImmutableArray<ProbableSlip> slips =
        [
            .. slipsByPlace.Values.OrderByDescending(s => s.Probability).ThenBy(s => s.Id, StringComparer.Ordinal),
        ];
        var explained = new Explanation(best.Evidence, marginals.Sets[0], best.Spreads, rows, workers, slipsByPlace);
        var doubts = new DoubtFinder(library, readings, searches, marginals, workers).Find();
        var result = new DiagnosisResult(
            soundProbability,
            faults,
            WholeSets.Of(marginals, catalogue, soundProbability),
            new AlikeGroups(best.Evidence, classes, marginals, workers).Of([.. rows.Select(r => r.Sound)], guard.IsOver),
            UnjudgedRows.Among(explained.Readings, library, readings, marginals.Sets[0].Members.Faults()),
            [.. explained.Unexplained.Concat(slips.Select(s => s.Id)).Distinct(StringComparer.Ordinal)],
            explained.IsExplained,
            [],
            new SearchEffort(searches.SetsTried, searches.Expanded, workers.Solved, searches.Stop)
        )
        {
            LogEvidence = marginals.LogTotal - NothingWrong.LogChance(catalogue, odds, still),
            Weights = ForAndAgainst.Of(marginals, workers),
            Slips = slips,
            Doubts = doubts,
        };
        if (!options.RankNext || guard.IsOver)
            return result;
        var doubted = readings with { Doubts = Gates.DoubtsOf(readings, result) };
        return result with { Next = new NextReadings(library, doubted, marginals, evidence, still, odds, options.Threads, guard).Rank() };
    }
}
