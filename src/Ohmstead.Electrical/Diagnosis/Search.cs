using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// Best-first search over sets of fault classes. A set is expanded by working out its own spread, fitting its sizes, and
/// trying its neighbours: every addition (a quick estimate for all, exact solutions for the best), every removal, exchanges
/// of one member, and two members for one.
/// </summary>
internal sealed class Search
{
    /// <summary>For each reading that an expanded set leaves out, additions that explain it are solved whatever else they spoil.</summary>
    private const int ExplainingAdditions = 2;

    /// <summary>Sets below the margin that are expanded because they explain a reading that the best leaves out.</summary>
    private const int MostFollowed = 6;

    /// <summary>Sets farther below the best than this carry nothing [nat].</summary>
    private const double NegligibleNats = 25;

    private readonly Evidence evidence;
    private readonly FaultClass[] classes;
    private readonly Crew crew;
    private readonly DiagnosisOptions options;
    private readonly Dictionary<string, Hypothesis> known = new(StringComparer.Ordinal);
    private readonly Newcomers newcomers;
    private readonly long solvedBefore;
    private int followed;

    public Search(Evidence evidence, FaultClass[] classes, ReadingRow[] rows, Crew crew, DiagnosisOptions options)
    {
        (this.evidence, this.classes, this.crew, this.options) = (evidence, classes, crew, options);
        (newcomers, solvedBefore) = (new Newcomers(evidence), crew.Solved);
        Spreads = new SpreadModel(evidence, rows, crew);
        known[""] = new Hypothesis([], []) { Predicted = [.. rows.Select(r => r.Sound)] };
    }

    public IReadOnlyCollection<Hypothesis> Known => known.Values;

    public SpreadModel Spreads { get; }

    public int Expanded { get; private set; }

    /// <summary>Why it stopped: nothing left that is worth it, the budget, the clock or the caller.</summary>
    public SearchStop Run()
    {
        Expand(known[""]);
        while (true)
        {
            if (options.Cancellation.IsCancellationRequested)
                return SearchStop.Cancelled;
            if (options.IsOverdue())
                return SearchStop.TimeUp;
            if (Expanded >= options.LeastExpanded && options.IsTimeUp())
                return SearchStop.TimeUp;
            if (Expanded >= options.MostExpanded)
                return SearchStop.Budget;
            if (Next() is not { } next)
                return SearchStop.Complete;
            Expand(next);
            options.Progress?.Invoke(Expanded / (double)options.MostExpanded);
        }
    }

    /// <summary>
    /// The best set within the margin; with none left, one below it that explains a reading which the best leaves out: the way
    /// to a good pair may lead through a set that explains one reading and spoils two. While the search is young or the readings
    /// few, any set that carries something.
    /// </summary>
    private Hypothesis? Next()
    {
        var best = known.Values.MaxBy(h => h.LogPosterior)!;
        var waiting = known
            .Values.Where(h => !h.IsExpanded && h.LogPosterior > best.LogPosterior - NegligibleNats)
            .OrderByDescending(h => h.LogPosterior)
            .ThenBy(h => h.Key, StringComparer.Ordinal)
            .ToArray();
        if (waiting.Length == 0)
            return null;
        if (waiting[0].LogPosterior > best.LogPosterior - options.Margin)
            return waiting[0];
        if (Expanded < options.LeastExpanded || crew.Solved - solvedBefore < options.CheapSolutions)
            return waiting[0];
        if (followed++ >= MostFollowed)
            return null;
        return waiting.FirstOrDefault(h => best.LeftOut.Except(h.LeftOut).Any());
    }

    private void Expand(Hypothesis h)
    {
        Expanded++;
        h.IsExpanded = true;
        h.Spread = Spreads.Of(h);
        crew.One(worker =>
        {
            SizeFit.Run(
                h,
                h.Spread,
                evidence,
                worker,
                (shares, from, changed) => newcomers.Solve(h.Classes, shares, from, changed, worker)
            );
            return 0;
        });
        TryAdditions(h);
        if (options.IsOver())
            return;
        if (h.Classes.Length == 0)
            TryBreaks(h);
        else if (h.LogPosterior > known.Values.Max(k => k.LogPosterior) - options.Margin)
            TryExchanges(h);
    }

    private void TryAdditions(Hypothesis h)
    {
        h.AddLogOdds = new double[classes.Length];
        Array.Fill(h.AddLogOdds, double.NegativeInfinity);
        if (h.Classes.Length >= options.MostFaults)
            return;
        var place = new Neighbourhood(h, [], h.Predicted, evidence, crew);
        var curves = new double[classes.Length][][];
        crew.Each(
            classes.Length,
            (n, worker) =>
            {
                var c = classes[n];
                if (!Newcomers.CanAdd(h.Classes, c))
                    return;
                // What is not looked at any more joins with its own chance.
                h.AddLogOdds[n] = c.LogOdds;
                if (options.IsOver())
                    return;
                curves[n] = newcomers.CandidateCurve(place, c, true, worker);
                var log = SizeIntegral.Log(
                    SizeIntegral.Coarse,
                    c,
                    curves[n],
                    place.Origin,
                    evidence,
                    place.Spread,
                    worker,
                    out _,
                    out _
                );
                h.AddLogOdds[n] =
                    log - place.LogFit + c.LogOdds + evidence.TellTales.Log([.. h.Classes, c]) - place.LogTold;
            }
        );
        if (options.IsOver())
            return;
        var chosen = Best(h.AddLogOdds, options.ExactAdditions, double.NegativeInfinity).Union(Explaining(h)).ToArray();
        var children = new Hypothesis?[chosen.Length];
        crew.Each(
            chosen.Length,
            (n, worker) =>
                children[n] =
                    KnownAsGood(place, classes[chosen[n]], h.AddLogOdds[chosen[n]] + h.LogPosterior)
                    ?? newcomers.Add(place, classes[chosen[n]], curves[chosen[n]], worker)
        );
        for (var n = 0; n < chosen.Length; n++)
        {
            if (children[n] is not { } child)
                continue;
            h.AddLogOdds[chosen[n]] = child.LogPosterior - h.LogPosterior;
            Register(child);
        }
    }

    private static int[] Best(double[] scores, int most, double floor) =>
        [
            .. Enumerable
                .Range(0, scores.Length)
                .Where(n => scores[n] > floor)
                .OrderByDescending(n => scores[n])
                .ThenBy(n => n)
                .Take(most),
        ];

    /// <summary>Additions that bring a reading which the set leaves out to what was read, the best few for each.</summary>
    private IEnumerable<int> Explaining(Hypothesis h)
    {
        foreach (var r in h.LeftOut)
        foreach (
            var n in Best(
                [
                    .. classes.Select(
                        (c, n) =>
                            evidence.CanExplain(c, r, h.Predicted[r], h.Spread!)
                                ? h.AddLogOdds![n]
                                : double.NegativeInfinity
                    ),
                ],
                ExplainingAdditions,
                double.NegativeInfinity
            )
        )
            yield return n;
    }

    /// <summary>A path that is open although two ways lead through it: both must be broken, and neither alone shows it.</summary>
    private void TryBreaks(Hypothesis sound)
    {
        var pairs = PairedBreaks.Of(sound, classes, evidence, crew, options);
        var found = new Hypothesis[pairs.Length];
        crew.Each(
            pairs.Length,
            (n, worker) => found[n] = newcomers.Weigh(sound, [pairs[n].First, pairs[n].Second], worker)
        );
        foreach (var child in found)
            Register(child);
    }

    /// <summary>Without each member: alone, and with another in its place. Without each pair: with one for two.</summary>
    private void TryExchanges(Hypothesis h)
    {
        var holes = new List<int[]>();
        for (var k = 0; k < h.Classes.Length; k++)
            holes.Add([k]);
        for (var k = 0; k < h.Classes.Length; k++)
        for (var j = k + 1; j < h.Classes.Length; j++)
            holes.Add([k, j]);
        var found = new List<Hypothesis>[holes.Count];
        crew.Each(holes.Count, (n, worker) => found[n] = options.IsOver() ? [] : Exchange(h, holes[n], worker));
        foreach (var child in found.SelectMany(f => f))
            Register(child);
    }

    private List<Hypothesis> Exchange(Hypothesis h, int[] hole, Worker worker)
    {
        var (set, shares) = (h.Classes, h.Shares);
        var origin = h.Predicted;
        foreach (var k in hole.OrderDescending())
        {
            var gone = set[k];
            (set, shares) = Hypothesis.Without(set, shares, k);
            origin = newcomers.Solve(set, shares, origin, gone, worker);
        }
        var place = new Neighbourhood(h, hole, origin, evidence, crew: null, worker);
        evidence.LogLikelihood(origin, place.Spread, worker);
        var left = evidence.LeftOut(worker);
        var found = new List<Hypothesis>();
        if (hole.Length == 1)
            found.Add(
                new Hypothesis(set, shares)
                {
                    Parent = h,
                    Predicted = origin,
                    LogFit = place.LogFit,
                    LeftOut = left,
                    LogEvidence = place.LogEvidence,
                }
            );
        var scores = new double[classes.Length];
        var curves = new double[classes.Length][][];
        for (var n = 0; n < classes.Length; n++)
        {
            scores[n] = double.NegativeInfinity;
            if (
                !Newcomers.CanAdd(set, classes[n])
                || h.Contains(classes[n])
                || !hole.All(k => Newcomers.Touches(h.Classes[k], classes[n]))
            )
                continue;
            curves[n] =
                hole.Length == 1 ? newcomers.CandidateCurve(place, classes[n], false, worker) : classes[n].Curve;
            scores[n] =
                place.LogPosterior
                - place.LogFit
                + classes[n].LogOdds
                + SizeIntegral.Log(
                    SizeIntegral.Coarse,
                    classes[n],
                    curves[n],
                    origin,
                    evidence,
                    place.Spread,
                    worker,
                    out _,
                    out _
                );
        }
        var floor = h.LogPosterior - options.Margin - 12;
        foreach (var n in Best(scores, hole.Length == 1 ? options.ExactExchanges : 2, floor))
            if (KnownAsGood(place, classes[n], scores[n]) is null)
                found.Add(newcomers.Add(place, classes[n], curves[n], worker));
        return found;
    }

    /// <summary>The set with one more class if it was tried before, from elsewhere, and was not worse than it looks from here.</summary>
    private Hypothesis? KnownAsGood(Neighbourhood place, FaultClass c, double score)
    {
        var (members, _) = Hypothesis.Insert(place.Classes, place.Shares, c, 0);
        return
            known.TryGetValue(Hypothesis.KeyOf(members), out var old)
            && (old.IsExpanded || old.LogPosterior > score - 2)
            ? old
            : null;
    }

    private void Register(Hypothesis h)
    {
        if (!known.TryGetValue(h.Key, out var old))
            known[h.Key] = h;
        else if (!old.IsExpanded && h.LogPosterior > old.LogPosterior)
            known[h.Key] = h;
    }
}
