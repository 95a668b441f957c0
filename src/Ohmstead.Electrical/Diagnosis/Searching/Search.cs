using System.Numerics;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// Best-first search over sets of fault classes. A set is expanded by working out its own spread, fitting its sizes, and
/// trying its neighbours: every addition (a quick estimate for all, exact solutions for the best), every removal, exchanges
/// of one member, and two members for one.
/// </summary>
internal sealed class Search
{
    /// <summary>Sets below the margin that are expanded because they explain a reading that the best leaves out.</summary>
    private const int MostFollowed = 6;

    /// <summary>Sets within this of the best are judged by their own spread in the end, expanded or not [nat]: 1/55 of its weight.</summary>
    private const double SettledNats = 4;

    /// <summary>Sets expanded before anybody is shown what was found so far: with fewer it is often something else in the end (docs/performance.md).</summary>
    private const int FirstShown = 8;

    /// <summary>How often the spread of a set is worked out about the parameters that the readings point to.</summary>
    private const int MostBends = 2;

    /// <summary>Sets farther below the best than this carry nothing [nat].</summary>
    internal const double NegligibleNats = 25;

    private readonly SearchSetting setting;
    private readonly Evidence evidence;
    private readonly Budget budget;
    private readonly KnownSets known = new();
    private readonly Additions additions;
    private readonly Exchanges exchanges;
    private int followed;

    public Search(SearchSetting setting)
    {
        (this.setting, evidence, budget) = (setting, setting.Evidence, new Budget(setting));
        Spreads = new SpreadModel(evidence, setting.Rows, setting.Workers);
        additions = new Additions(setting, known);
        exchanges = new Exchanges(setting, known);
    }

    public IReadOnlyCollection<Hypothesis> Known => known.All;

    /// <summary>What it judges by: the readings, on one bench.</summary>
    public Evidence Evidence => evidence;

    public SpreadModel Spreads { get; }

    /// <summary>Sets whose neighbours were tried.</summary>
    public int Expanded => budget.Expanded;

    /// <summary>Log chance of that bench before any reading.</summary>
    public double LogBench => Math.Log(evidence.Bench.Chance);

    /// <summary>ln Σ of all its sets, without the chance of the bench.</summary>
    public double LogTotal => Vectors.LogSum([.. Known.Select(h => h.LogPosterior).Where(double.IsFinite)]);

    /// <summary>What became of a set whose neighbours were tried.</summary>
    public ExpandedHypothesis Expansion(FittedHypothesis h) => known.Expanded(h);

    /// <summary>
    /// The same by other evidence, with the slopes that are known of each set or of the one it was found from: that costs no solution.
    /// </summary>
    public double LogTotalBy(Evidence other, Worker worker)
    {
        var logs = new List<double>();
        foreach (var group in Known.Where(h => double.IsFinite(h.LogPosterior)).GroupBy(h => h.Spread))
        {
            var here = new Judge(evidence, group.Key, worker);
            var spread = ReferenceEquals(other, evidence) ? group.Key : other.SpreadOf(group.Key.Slopes, group.Key.Shift);
            var there = new Judge(other, spread, worker);
            foreach (var h in group)
                logs.Add(h.LogPosterior - here.LogLikelihood(h.Predicted) + there.LogLikelihood(h.Predicted));
        }
        return Vectors.LogSum([.. logs]);
    }

    /// <summary>Why it stopped: nothing left that is worth it, the budget, the guard or the caller.</summary>
    public SearchStop Run()
    {
        while (true)
            if (Step() is { } stop)
            {
                Settle();
                return stop;
            }
    }

    /// <summary>Expands one set more, the sound unit first; null while there is more to do, else why it stops.</summary>
    public SearchStop? Step()
    {
        if (Expanded == 0)
        {
            Expand(Members.None, [.. setting.Rows.Select(r => r.Sound)], null);
            return null;
        }
        if (budget.Pace == Pace.Stop)
            return setting.Guard.Or(SearchStop.Complete);
        if (Next() is not { } next)
            return SearchStop.Complete;
        if (!budget.MayExpand)
            return SearchStop.Budget;
        Expand(next.Members, next.Predicted, next.From);
        if (Expanded >= FirstShown && BitOperations.IsPow2(Expanded) && budget.Pace != Pace.Stop)
            setting.Watch?.Invoke(this);
        setting.Options.Progress?.Invoke(Expanded / (double)setting.Options.MostExpanded);
        return null;
    }

    /// <summary>
    /// The best set within the margin; with none left, one below it that explains a reading which the best leaves out: the way
    /// to a good pair may lead through a set that explains one reading and spoils two. While the search is young or the readings
    /// few, any set that carries something.
    /// </summary>
    private FoundHypothesis? Next()
    {
        var best = known.Best;
        var waiting = Waiting(best.LogPosterior - NegligibleNats).ToArray();
        if (waiting.Length == 0)
            return null;
        if (waiting[0].LogPosterior > best.LogPosterior - setting.Options.Margin || budget.IsYoung)
            return waiting[0];
        if (followed++ >= MostFollowed)
            return null;
        return waiting.FirstOrDefault(h => best.LeftOut.Except(h.LeftOut).Any());
    }

    /// <summary>Sets above a level that were found and not fitted, best first.</summary>
    private IOrderedEnumerable<FoundHypothesis> Waiting(double above) =>
        known
            .All.OfType<FoundHypothesis>()
            .Where(h => h.LogPosterior > above)
            .OrderByDescending(h => h.LogPosterior)
            .ThenBy(h => h.Key, StringComparer.Ordinal);

    private void Expand(Members set, double[] predicted, FittedHypothesis? from)
    {
        budget.CountExpanded();
        var fitted = Fit(set, predicted, from);
        known.Replace(new ExpandedHypothesis(fitted, additions.Try(fitted)));
        if (budget.Pace == Pace.Stop)
            return;
        if (set.Count == 0)
            TryBreaks(fitted);
        else if (fitted.LogPosterior > known.Best.LogPosterior - setting.Options.Margin)
            exchanges.Try(fitted);
    }

    /// <summary>Works out the set's own spread and fits its sizes by it.</summary>
    private FittedHypothesis Fit(Members set, double[] predicted, FittedHypothesis? from)
    {
        var straight = Spreads.Of(set, predicted);
        var (fit, spread) = (FitSizes(set, predicted, straight), straight);
        for (var n = 0; n < MostBends && budget.Pace != Pace.Stop && Spreads.About(fit.Members, fit.Predicted, spread) is { } near; n++)
            spread = near;
        if (spread != straight)
            fit = FitSizes(fit.Members, fit.Predicted, spread);
        var fitted = new FittedHypothesis(fit.Members, spread, from)
        {
            Predicted = fit.Predicted,
            LeftOut = fit.LeftOut,
            LogEvidence = fit.LogEvidence,
            Deviations = fit.Deviations,
            Directions = fit.Directions,
        };
        known.Replace(fitted);
        return fitted;
    }

    private SizeFit FitSizes(Members set, double[] predicted, Spread spread) =>
        setting.Workers.One(worker => SizeFit.From(set, predicted, new(evidence, spread, worker)));

    /// <summary>
    /// A set that was found and not expanded was judged by the spread of the set it was found from, where a reading may hang
    /// on other parts altogether. Those that carry weight are judged by their own before they count.
    /// </summary>
    public void Settle()
    {
        while (Waiting(known.Best.LogPosterior - SettledNats).FirstOrDefault() is { } heaviest && budget.TrySettle())
            Fit(heaviest.Members, heaviest.Predicted, heaviest.From);
    }

    /// <summary>A path that is open although two ways lead through it: both must be broken, and neither alone shows it.</summary>
    private void TryBreaks(FittedHypothesis sound)
    {
        var pairs = PairedBreaks.Of(sound, setting);
        var found = new FoundHypothesis[pairs.Length];
        var fit = new CandidateFit(evidence);
        setting.Workers.Each(pairs.Length, (n, worker) => found[n] = fit.Weigh(sound, [pairs[n].First, pairs[n].Second], worker));
        foreach (var pair in found)
            known.Register(pair);
    }
}
