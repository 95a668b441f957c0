using Ohmstead.Electrical.Diagnosis.Candidates;
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

    /// <summary>Most sets settled so, and how many of them when the work allowed is done.</summary>
    private const int MostSettled = 16;
    private const int LeastSettled = 3;

    /// <summary>How often the spread of a set is worked out about the parameters that the readings point to.</summary>
    private const int MostBends = 2;

    /// <summary>Sets farther below the best than this carry nothing [nat].</summary>
    internal const double NegligibleNats = 25;

    private readonly Evidence evidence;
    private readonly FaultClass[] classes;
    private readonly Crew crew;
    private readonly DiagnosisOptions options;
    private readonly KnownSets known = new();
    private readonly Newcomers newcomers;
    private readonly Additions additions;
    private readonly Exchanges exchanges;
    private readonly Hypothesis sound;
    private readonly long solvedBefore;
    private readonly long workBefore;
    private int followed;

    public Search(Evidence evidence, FaultClass[] classes, ReadingRow[] rows, Crew crew, DiagnosisOptions options)
    {
        (this.evidence, this.classes, this.crew, this.options) = (evidence, classes, crew, options);
        (newcomers, solvedBefore, workBefore) = (new Newcomers(evidence), crew.Solved, crew.Work);
        Spreads = new SpreadModel(evidence, rows, crew);
        sound = new Hypothesis([], []) { Predicted = [.. rows.Select(r => r.Sound)] };
        known.Register(sound);
        additions = new Additions(evidence, classes, known, newcomers, crew, options);
        exchanges = new Exchanges(evidence, classes, known, newcomers, crew, options);
    }

    public IReadOnlyCollection<Hypothesis> Known => known.All;

    /// <summary>What it judges by: the readings, on one bench.</summary>
    public Evidence Evidence => evidence;

    /// <summary>Log chance of that bench before any reading.</summary>
    public double LogBench => Math.Log(evidence.Bench.Chance);

    /// <summary>ln Σ of all its sets, without the chance of the bench.</summary>
    public double LogTotal => Vectors.LogSum([.. Known.Select(h => h.LogPosterior).Where(double.IsFinite)]);

    /// <summary>
    /// The same by other evidence, with the slopes that are known of each set or of the one it was found from: that costs no solution.
    /// </summary>
    public double LogTotalBy(Evidence other, Worker worker)
    {
        var logs = new List<double>();
        foreach (var group in Known.Where(h => double.IsFinite(h.LogPosterior)).GroupBy(h => h.NearestSpread))
        {
            if (group.Key is not { } spread)
                continue;
            var there = ReferenceEquals(other, evidence) ? spread : other.SpreadOf(spread.Slopes, spread.Shift);
            foreach (var h in group)
            {
                var here = evidence.LogLikelihood(h.Predicted, spread, worker);
                logs.Add(h.LogPosterior - here + other.LogLikelihood(h.Predicted, there, worker));
            }
        }
        return Vectors.LogSum([.. logs]);
    }

    public SpreadModel Spreads { get; }

    public int Expanded { get; private set; }

    /// <summary>Why it stopped: nothing left that is worth it, the budget, the guard or the caller.</summary>
    public SearchStop Run()
    {
        var stop = Look();
        Settle();
        return stop;
    }

    private SearchStop Look()
    {
        Expand(sound);
        while (true)
        {
            if (options.Cancellation.IsCancellationRequested)
                return SearchStop.Cancelled;
            if (options.IsOverdue())
                return SearchStop.TimeUp;
            if (Next() is not { } next)
                return SearchStop.Complete;
            if (Expanded >= options.MostExpanded || (Expanded >= options.LeastExpanded && IsWorkDone()))
                return SearchStop.Budget;
            Expand(next);
            options.Progress?.Invoke(Expanded / (double)options.MostExpanded);
        }
    }

    /// <summary>True when the work allowed is done. Asked between pieces that all threads have finished, so it hangs on no race.</summary>
    private bool IsWorkDone() => (crew.Work - workBefore) * evidence.Set.Model.Sheet.Elements.Length >= options.MostWork;

    private long Solved => crew.Solved - solvedBefore;

    /// <summary>
    /// The best set within the margin; with none left, one below it that explains a reading which the best leaves out: the way
    /// to a good pair may lead through a set that explains one reading and spoils two. While the search is young or the readings
    /// few, any set that carries something.
    /// </summary>
    private Hypothesis? Next()
    {
        var best = known.Best;
        var waiting = known
            .All.Where(h => !h.IsExpanded && h.LogPosterior > best.LogPosterior - NegligibleNats)
            .OrderByDescending(h => h.LogPosterior)
            .ThenBy(h => h.Key, StringComparer.Ordinal)
            .ToArray();
        if (waiting.Length == 0)
            return null;
        if (waiting[0].LogPosterior > best.LogPosterior - options.Margin)
            return waiting[0];
        if (Expanded < options.YoungExpanded || Solved < options.CheapSolutions)
            return waiting[0];
        if (followed++ >= MostFollowed)
            return null;
        return waiting.FirstOrDefault(h => best.LeftOut.Except(h.LeftOut).Any());
    }

    private void Expand(Hypothesis h)
    {
        Expanded++;
        h.IsExpanded = true;
        Fit(h);
        additions.Try(h);
        if (options.IsOver())
            return;
        if (h.Classes.Length == 0)
            TryBreaks();
        else if (h.LogPosterior > known.Best.LogPosterior - options.Margin)
            exchanges.Try(h);
    }

    /// <summary>Works out the set's own spread and fits its sizes by it.</summary>
    private void Fit(Hypothesis h)
    {
        var straight = h.Spread = Spreads.Of(h);
        FitSizes(h);
        for (var n = 0; n < MostBends && !options.IsOver() && Spreads.About(h, h.Spread) is { } near; n++)
            h.Spread = near;
        if (h.Spread != straight)
            FitSizes(h);
    }

    private void FitSizes(Hypothesis h) =>
        crew.One(worker =>
        {
            SizeFit.Run(
                h,
                h.Spread!,
                evidence,
                worker,
                (shares, from, changed) => newcomers.Solve(h.Classes, shares, from, changed, worker)
            );
            return 0;
        });

    /// <summary>
    /// A set that was found and not expanded was judged by the spread of the set it was found from, where a reading may hang
    /// on other parts altogether. Those that carry weight are judged by their own before they count.
    /// </summary>
    private void Settle()
    {
        for (var n = 0; n < MostSettled && !options.IsOver(); n++)
        {
            if (n >= LeastSettled && IsWorkDone())
                return;
            var least = known.Best.LogPosterior - SettledNats;
            var heaviest = known
                .All.Where(h => h.Spread is null && h.LogPosterior > least)
                .OrderByDescending(h => h.LogPosterior)
                .ThenBy(h => h.Key, StringComparer.Ordinal)
                .FirstOrDefault();
            if (heaviest is null)
                return;
            Fit(heaviest);
        }
    }

    /// <summary>A path that is open although two ways lead through it: both must be broken, and neither alone shows it.</summary>
    private void TryBreaks()
    {
        var pairs = PairedBreaks.Of(sound, classes, evidence, crew, options);
        var found = new Hypothesis[pairs.Length];
        crew.Each(pairs.Length, (n, worker) => found[n] = newcomers.Weigh(sound, [pairs[n].First, pairs[n].Second], worker));
        foreach (var child in found)
            known.Register(child);
    }
}
