using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Answers;

/// <summary>
/// How likely readings are on a sheet, faults summed over, on the bench as noted: what a diagnosis finds, a set of faults at a
/// time, and nothing explained. So several sheets can be searched side by side, and one be left that has fallen hopelessly behind.
/// </summary>
internal sealed class EvidenceSearch
{
    private readonly FaultCatalogue catalogue;
    private readonly double[] odds;
    private readonly FaultClass[] classes;
    private readonly List<FaultMode> still;
    private readonly Search search;

    /// <summary>Works out what each fault alone does to the readings.</summary>
    /// <param name="waves">What was solved on a sheet that differs in nothing but spreads.</param>
    public EvidenceSearch(UnitModel model, UnitReadings readings, DiagnosisOptions options, SolvedWaves waves)
    {
        var library = new ReadingLibrary(model);
        catalogue = library.Catalogue;
        odds = catalogue.Odds(readings.ExpectedFaults);
        var evidence = new Evidence(library, readings, options.WrongReadingChance);
        var workers = new Workers(evidence.Set, options.Threads, waves);
        var guard = new Guard(options);
        var rows = library.Rows(evidence.Set, workers, () => guard.IsOver);
        classes = ClassBuilder.Build(evidence, rows, odds, workers, out still);
        search = new Search(new(evidence, classes, rows, workers, options, guard));
    }

    /// <summary>True once nothing is left that is worth it.</summary>
    public bool IsDone { get; private set; }

    /// <summary>Goes on until so many sets of faults were expanded, or to its end.</summary>
    public void StepTo(int sets)
    {
        while (!IsDone && search.Expanded < sets)
            if (search.Step() is not null)
            {
                search.Settle();
                IsDone = true;
            }
    }

    /// <summary>ln of how likely the readings are [nat], by the sets looked at so far.</summary>
    public double LogEvidence => new Marginals([search], classes).LogTotal - NothingWrong.LogChance(catalogue, odds, still);

    /// <summary>The best set of faults with its sizes.</summary>
    public ImmutableArray<AssumedFault> Best()
    {
        var marginals = new Marginals([search], classes);
        var sound = NothingWrong.Probability(catalogue, odds, classes, marginals, still);
        if (WholeSets.Of(marginals, catalogue, sound) is not [var best, ..])
            return [];
        var faults = FaultTable.Of(catalogue, classes, still, marginals, catalogue.Chances(odds));
        return [.. best.Faults.Select(m => new AssumedFault(m, faults.First(f => f.Mode.Number == m.Number).Size ?? m.MiddleSize))];
    }
}
