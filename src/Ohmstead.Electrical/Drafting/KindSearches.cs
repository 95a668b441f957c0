using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Answers;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Drafting;

/// <summary>
/// The evidence of several kinds, searched side by side. A kind that has fallen hopelessly behind is left where it is: what its evidence
/// could still gain makes no millionth of a probability. What sets of faults gain on drawn units: docs/methods/outline.md.
/// </summary>
internal sealed class KindSearches
{
    /// <summary>After so many sets of faults, a kind that is so far behind the best is left [nat].</summary>
    private static readonly (int Sets, double Behind)[] Looks = [(1, 110), (2, 45), (3, 24), (6, 20)];

    /// <summary>The same for strangers, of which the better alone counts: it is left when it can no longer be that one.</summary>
    private static readonly (int Sets, double Behind)[] StrangeLooks = [(4, 15)];

    private readonly UnitReadings[] readings;
    private readonly DiagnosisOptions options;
    private readonly Action<double>? told;
    private readonly SolvedWaves[] waves;
    private readonly EvidenceSearch[] searches;
    private int stages;

    /// <param name="models">By kind: its sheet, taps aligned.</param>
    /// <param name="readings">By kind: the readings as it has them.</param>
    public KindSearches(UnitModel[] models, UnitReadings[] readings, DiagnosisOptions options)
    {
        (this.readings, this.options, told) = (readings, options with { Progress = null }, options.Progress);
        options = this.options;
        waves = [.. models.Select(_ => new SolvedWaves())];
        searches = new EvidenceSearch[models.Length];
        Each([.. Enumerable.Range(0, models.Length)], k => searches[k] = new EvidenceSearch(models[k], readings[k], options, waves[k]));
        Run(searches, Looks);
        LogEvidence = [.. searches.Select(s => s.LogEvidence)];
    }

    /// <summary>By kind, ln of how likely the readings are [nat]; of a kind that was left, by what was looked at.</summary>
    public ImmutableArray<double> LogEvidence { get; }

    /// <summary>True for a kind that was left before its end.</summary>
    public bool IsLeft(int kind) => !searches[kind].IsDone;

    /// <summary>The best set of faults under a kind, with its sizes.</summary>
    public ImmutableArray<AssumedFault> Best(int kind) => searches[kind].Best();

    /// <summary>The evidence of the better of some strangers.</summary>
    /// <param name="strangers">Each with the kind that it is next to: its sheet with other spreads.</param>
    public double BestOf(IReadOnlyList<(int Kind, UnitModel Model)> strangers)
    {
        var next = new EvidenceSearch[strangers.Count];
        Each(
            [.. Enumerable.Range(0, next.Length)],
            n => next[n] = new EvidenceSearch(strangers[n].Model, readings[strangers[n].Kind], options, waves[strangers[n].Kind])
        );
        Run(next, StrangeLooks);
        return next.Max(s => s.LogEvidence);
    }

    /// <summary>All to their ends, but for those that are left.</summary>
    private void Run(EvidenceSearch[] all, (int Sets, double Behind)[] looks)
    {
        EvidenceSearch[] live = all;
        foreach (var (sets, behind) in looks)
        {
            Each(live, s => s.StepTo(sets));
            Tell();
            var logs = live.ToDictionary(s => s, s => s.LogEvidence);
            var best = logs.Values.Max();
            live = [.. live.Where(s => logs[s] > best - behind)];
        }
        Each(live, s => s.StepTo(int.MaxValue));
        Tell();
    }

    private void Tell() => told?.Invoke(++stages / (double)(Looks.Length + StrangeLooks.Length + 2));

    /// <summary>Some at once, and each with every thread: as long as one is at work no core waits.</summary>
    private void Each<T>(T[] all, Action<T> work) =>
        Parallel.ForEach(all, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, options.Threads) }, work);
}
