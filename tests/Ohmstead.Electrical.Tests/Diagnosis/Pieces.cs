using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>A diagnosis of a small unit taken apart: what each of its steps has in hand, to be asked by itself.</summary>
internal sealed class Pieces
{
    public Pieces(
        BenchUnit unit,
        TakenReading[] taken,
        double wrongChance = 1e-3,
        DiagnosisOptions? options = null,
        Meter? meter = null,
        Symptom[]? symptoms = null
    )
    {
        Unit = unit;
        Options = (options ?? new DiagnosisOptions { RankNext = false, IsBenchAsNoted = true }) with { Threads = 1 };
        Readings = WireBench.Unit(unit, taken) with { Meter = meter ?? Meter.Usual, Symptoms = [.. symptoms ?? []] };
        Library = new ReadingLibrary(unit.Model);
        Evidence = new Evidence(Library, Readings, wrongChance);
        Workers = new Workers(Evidence.Set, 1);
        Rows = Library.Rows(Evidence.Set, Workers, () => false);
        Odds = Library.Catalogue.Odds(null);
        Classes = ClassBuilder.Build(Evidence, Rows, Odds, Workers, out var still);
        (Still, Sound) = (still, [.. Rows.Select(r => r.Sound)]);
        Spreads = new SpreadModel(Evidence, Rows, Workers);
        Setting = new SearchSetting(Evidence, Classes, Rows, Workers, Options, new Guard(Options));
    }

    public BenchUnit Unit { get; }
    public DiagnosisOptions Options { get; }
    public UnitReadings Readings { get; }
    public ReadingLibrary Library { get; }
    public Evidence Evidence { get; }
    public Workers Workers { get; }
    public ReadingRow[] Rows { get; }
    public double[] Odds { get; }
    public FaultClass[] Classes { get; }

    /// <summary>The modes that move no reading taken.</summary>
    public List<FaultMode> Still { get; }

    /// <summary>The readings of the sound unit on the meter's scale.</summary>
    public double[] Sound { get; }

    public SpreadModel Spreads { get; }
    public SearchSetting Setting { get; }

    public FaultClass Class(string mode) => Classes.Single(c => c.Modes.Any(m => m.Name == mode));

    /// <summary>Faults, each at a share of its range.</summary>
    public Members Set(params (string Mode, double Share)[] faults) =>
        faults.Aggregate(Members.None, (set, f) => set.With(Class(f.Mode), f.Share));

    /// <summary>The readings with some faults on the meter's scale.</summary>
    public double[] Predict(Members set) => Workers.One(w => w.Predict(set, Sound));

    /// <summary>A judge by the spread of the sound unit.</summary>
    public Judge Judge() => Judge(Spreads.Of(Members.None, Sound));

    public Judge Judge(Spread spread) => new(Evidence, spread, new Worker(Evidence.Set));

    /// <summary>A set with the sizes that fit best from where it starts.</summary>
    public FittedHypothesis Fitted(Members start)
    {
        var predicted = Predict(start);
        var spread = Spreads.Of(start, predicted);
        var fit = SizeFit.From(start, predicted, Judge(spread));
        return new(fit.Members, spread, null)
        {
            Predicted = fit.Predicted,
            LeftOut = fit.LeftOut,
            LogEvidence = fit.LogEvidence,
            Deviations = fit.Deviations,
            Directions = fit.Directions,
        };
    }

    /// <summary>The search on the bench as noted, to its end.</summary>
    public Search Searched()
    {
        var search = new Search(Setting);
        search.Run();
        return search;
    }

    public Marginals Marginals() => new([Searched()], Classes);
}
