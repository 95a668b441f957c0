using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// Best-first search over sets of fault classes. A set is expanded by working out its own spread, fitting its sizes, and
/// trying its neighbours: every addition (a quick estimate for all, exact solutions for the best), every removal, exchanges
/// of one member, and two members for one.
/// </summary>
internal sealed class Search
{
    /// <summary>Above this the corrections are not interpolated [limits of the meter's error].</summary>
    private const double LargeCorrection = 0.7;

    private readonly Evidence evidence;
    private readonly FaultClass[] classes;
    private readonly Crew crew;
    private readonly DiagnosisOptions options;
    private readonly Dictionary<string, Hypothesis> known = new(StringComparer.Ordinal);
    private readonly SpreadModel spreads;

    public Search(Evidence evidence, FaultClass[] classes, ReadingRow[] rows, Crew crew, DiagnosisOptions options)
    {
        (this.evidence, this.classes, this.crew, this.options) = (evidence, classes, crew, options);
        spreads = new SpreadModel(evidence, rows, crew);
        known[""] = new Hypothesis([], []) { Predicted = [.. rows.Select(r => r.Sound)] };
    }

    public IReadOnlyCollection<Hypothesis> Known => known.Values;

    public SpreadModel Spreads => spreads;

    public int Expanded { get; private set; }

    /// <summary>Why it stopped: nothing left within the margin, the budget, the clock or the caller.</summary>
    public SearchStop Run()
    {
        Expand(known[""]);
        while (true)
        {
            if (options.Cancellation.IsCancellationRequested) return SearchStop.Cancelled;
            if (Expanded >= options.LeastExpanded && options.IsTimeUp()) return SearchStop.TimeUp;
            if (Expanded >= options.MostExpanded) return SearchStop.Budget;
            var best = known.Values.Max(h => h.LogPosterior);
            var next = known.Values.Where(h => !h.IsExpanded && h.LogPosterior > best - options.Margin)
                .OrderByDescending(h => h.LogPosterior).ThenBy(h => h.Key, StringComparer.Ordinal).FirstOrDefault();
            if (next is null) return SearchStop.Complete;
            Expand(next);
            options.Progress?.Invoke(Expanded / (double)options.MostExpanded);
        }
    }

    private void Expand(Hypothesis h)
    {
        Expanded++;
        h.IsExpanded = true;
        h.Spread = spreads.Of(h);
        crew.One(worker =>
        {
            SizeFit.Run(h, h.Spread, evidence, worker, (shares, from, changed) => Solve(h.Classes, shares, from, changed, worker));
            return 0;
        });
        TryAdditions(h);
        var best = known.Values.Max(k => k.LogPosterior);
        if (h.Classes.Length == 0 || h.LogPosterior < best - options.Margin) return;
        TryExchanges(h);
    }

    /// <summary>
    /// Solves the readings of a set; where <paramref name="changed"/> is given, readings that the change cannot move are copied
    /// from <paramref name="from"/>. A fault without a size may lay open what was hidden, so what it moves is solved anew.
    /// </summary>
    private double[] Solve(FaultClass[] set, double[] shares, double[] from, FaultClass? changed, Worker worker)
    {
        var faults = new Fault[set.Length];
        for (var k = 0; k < set.Length; k++) faults[k] = set[k].At(shares[k]);
        worker.Predictor.Begin(faults);
        var t = new double[evidence.Set.Count];
        for (var r = 0; r < t.Length; r++)
            t[r] = changed is null || changed.Moves[r] || IsRewired(set, r) ? worker.Predictor.Scaled(r, faults) : from[r];
        return t;
    }

    private static bool IsRewired(FaultClass[] set, int reading)
    {
        foreach (var c in set)
            if (!c.HasSize && c.Moves[reading]) return true;
        return false;
    }

    private void TryAdditions(Hypothesis h)
    {
        h.AddLogOdds = new double[classes.Length];
        Array.Fill(h.AddLogOdds, double.NegativeInfinity);
        if (h.Classes.Length >= options.MostFaults) return;
        var place = new Neighbourhood(h, [], h.Predicted, evidence, crew);
        var curves = new double[classes.Length][][];
        crew.Each(classes.Length, (n, worker) =>
        {
            var c = classes[n];
            if (!CanAdd(h.Classes, c)) return;
            curves[n] = CandidateCurve(place, c, true, worker);
            var log = SizeIntegral.Log(SizeIntegral.Coarse, c, curves[n], place.Origin, evidence, place.Spread, worker, out _, out _);
            h.AddLogOdds[n] = log - place.LogFit + c.LogOdds + evidence.LogTold([.. h.Classes, c]) - place.LogTold;
        });
        var chosen = Best(h.AddLogOdds, options.ExactAdditions, double.NegativeInfinity);
        var children = new Hypothesis?[chosen.Length];
        crew.Each(chosen.Length, (n, worker) =>
            children[n] = KnownAsGood(place, classes[chosen[n]], h.AddLogOdds[chosen[n]] + h.LogPosterior) ?? Add(place, classes[chosen[n]], curves[chosen[n]], worker));
        for (var n = 0; n < chosen.Length; n++)
        {
            if (children[n] is not { } child) continue;
            h.AddLogOdds[chosen[n]] = child.LogPosterior - h.LogPosterior;
            Register(child);
        }
    }

    private static int[] Best(double[] scores, int most, double floor) =>
        [.. Enumerable.Range(0, scores.Length).Where(n => scores[n] > floor).OrderByDescending(n => scores[n]).ThenBy(n => n).Take(most)];

    private static bool CanAdd(FaultClass[] set, FaultClass c)
    {
        foreach (var other in set)
            if (other == c || (other.Elements.Length == 1 && c.Elements.Length == 1 && other.Elements[0] == c.Elements[0])) return false;
        return true;
    }

    /// <summary>Solves the set at a place with one more class: its curve of sizes, the best of it, and the evidence.</summary>
    private Hypothesis Add(Neighbourhood place, FaultClass c, double[][] quick, Worker worker)
    {
        var curve = quick == c.Curve ? CurveFrom(place, c, worker) : quick;
        var log = SizeIntegral.Log(SizeIntegral.Fine, c, curve, place.Origin, evidence, place.Spread, worker, out var share, out var bestLog);
        var at = worker.Scratch(0, place.Origin.Length);
        CurveShape.PointAt(c, curve, share, at);
        for (var r = 0; r < at.Length; r++) at[r] += place.Origin[r];
        evidence.LogLikelihood(at, place.Spread, worker);
        var (members, fitted) = Hypothesis.Insert(place.Classes, place.MovedShares(evidence, worker), c, share);
        var child = new Hypothesis(members, fitted) { Parent = place.Parent };
        child.Predicted = Solve(members, fitted, place.Origin, place.HasFree ? null : c, worker);
        var exact = evidence.LogLikelihood(child.Predicted, place.Spread, worker) + c.LogDensity(share);
        for (var n = 0; n < 2 && c.IsContinuous; n++) exact = Refine(child, c, curve, place, exact, worker);
        child.LogFit = exact;
        child.LogEvidence = place.LogEvidence + log - place.LogFit + Math.Max(exact - bestLog, -30) + evidence.LogTold(members) - place.LogTold;
        return child;
    }

    /// <summary>
    /// The displacement along a candidate's size for ranking: what it does alone, unless the company it is in hides or changes
    /// that; one solution in the middle tells.
    /// </summary>
    private double[][] CandidateCurve(Neighbourhood place, FaultClass c, bool isThorough, Worker worker)
    {
        if (!place.Classes.Any(m => (isThorough || !m.HasSize) && Touches(m, c))) return c.Curve;
        var middle = c.PointShares.Length / 2;
        var point = PointOf(place, c, middle, worker);
        var difference = 0.0;
        for (var r = 0; r < point.Length; r++) difference = Math.Max(difference, Math.Abs(point[r] - c.Curve[middle][r]));
        return difference < LargeCorrection ? c.Curve : CurveFrom(place, c, worker);
    }

    /// <summary>
    /// The displacement of the readings along the added fault's size: what it does alone, corrected for the company it is in by
    /// solutions at the ends and the middle; where the corrections are large every point is solved.
    /// </summary>
    private double[][] CurveFrom(Neighbourhood place, FaultClass c, Worker worker)
    {
        var last = c.PointShares.Length - 1;
        var curve = new double[last + 1][];
        int[] solved = c.IsContinuous ? [0, last / 2, last] : [.. Enumerable.Range(0, last + 1)];
        foreach (var k in solved) curve[k] = PointOf(place, c, k, worker);
        var correction = solved.Max(k => curve[k].Zip(c.Curve[k], (x, y) => Math.Abs(x - y)).Max());
        for (var k = 0; k <= last; k++)
            curve[k] ??= correction > LargeCorrection ? PointOf(place, c, k, worker) : Between(curve, c, k);
        return curve;
    }

    private double[] PointOf(Neighbourhood place, FaultClass c, int k, Worker worker)
    {
        var (all, sizes) = Hypothesis.Insert(place.Classes, place.Shares, c, c.PointShares[k]);
        var point = Solve(all, sizes, place.Origin, c, worker);
        for (var r = 0; r < point.Length; r++) point[r] -= place.Origin[r];
        return point;
    }

    /// <summary>The parabola through the three corrections, at u = 0, 1, 2.</summary>
    private static double[] Between(double[][] curve, FaultClass c, int k)
    {
        var last = curve.Length - 1;
        var u = 2 * c.PointShares[k];
        var (w0, w1, w2) = ((u - 1) * (u - 2) / 2, u * (2 - u), u * (u - 1) / 2);
        double Correction(int at, int r) => curve[at][r] - c.Curve[at][r];
        return [.. c.Curve[k].Select((d, r) => d + (w0 * Correction(0, r)) + (w1 * Correction(last / 2, r)) + (w2 * Correction(last, r)))];
    }

    /// <summary>One step of the new size from the interpolated to the exact best; returns the log likelihood reached.</summary>
    private double Refine(Hypothesis child, FaultClass c, double[][] curve, Neighbourhood at, double exact, Worker worker)
    {
        const double width = 0.01;
        var place = Array.IndexOf(child.Classes, c);
        var share = child.Shares[place];
        evidence.LogLikelihood(child.Predicted, at.Spread, worker);
        var (near, far) = (new double[child.Predicted.Length], new double[child.Predicted.Length]);
        CurveShape.At(c.PointShares, curve, share, near);
        CurveShape.At(c.PointShares, curve, share > 0.5 ? share - width : share + width, far);
        for (var r = 0; r < far.Length; r++) far[r] = (far[r] - near[r]) / (share > 0.5 ? -width : width);
        Span<double> gradient = stackalloc double[1];
        Span<double> curvature = stackalloc double[1];
        evidence.Project([far], at.Spread, worker, gradient, curvature);
        if (curvature[0] < 1) return exact;
        var to = Math.Clamp(share + (gradient[0] / curvature[0]), Math.Max(0, share - 0.1), Math.Min(1, share + 0.1));
        if (Math.Abs(to - share) < 1e-4) return exact;
        var shares = (double[])child.Shares.Clone();
        shares[place] = to;
        var predicted = Solve(child.Classes, shares, child.Predicted, c, worker);
        var now = evidence.LogLikelihood(predicted, at.Spread, worker) + c.LogDensity(to);
        if (now <= exact) return exact;
        (child.Shares, child.Predicted) = (shares, predicted);
        return now;
    }

    /// <summary>Without each member: alone, and with another in its place. Without each pair: with one for two.</summary>
    private void TryExchanges(Hypothesis h)
    {
        var holes = new List<int[]>();
        for (var k = 0; k < h.Classes.Length; k++) holes.Add([k]);
        for (var k = 0; k < h.Classes.Length; k++)
            for (var j = k + 1; j < h.Classes.Length; j++) holes.Add([k, j]);
        var found = new List<Hypothesis>[holes.Count];
        crew.Each(holes.Count, (n, worker) => found[n] = Exchange(h, holes[n], worker));
        foreach (var child in found.SelectMany(f => f)) Register(child);
    }

    private List<Hypothesis> Exchange(Hypothesis h, int[] hole, Worker worker)
    {
        var (set, shares) = (h.Classes, h.Shares);
        var origin = h.Predicted;
        foreach (var k in hole.OrderDescending())
        {
            var gone = set[k];
            (set, shares) = Hypothesis.Without(set, shares, k);
            origin = Solve(set, shares, origin, gone, worker);
        }
        var place = new Neighbourhood(h, hole, origin, evidence, crew: null, worker);
        var found = new List<Hypothesis>();
        if (hole.Length == 1) found.Add(new Hypothesis(set, shares) { Parent = h, Predicted = origin, LogFit = place.LogFit, LogEvidence = place.LogEvidence });
        var scores = new double[classes.Length];
        var curves = new double[classes.Length][][];
        for (var n = 0; n < classes.Length; n++)
        {
            scores[n] = double.NegativeInfinity;
            if (!CanAdd(set, classes[n]) || h.Contains(classes[n]) || !hole.All(k => Touches(h.Classes[k], classes[n]))) continue;
            curves[n] = hole.Length == 1 ? CandidateCurve(place, classes[n], false, worker) : classes[n].Curve;
            scores[n] = place.LogPosterior - place.LogFit + classes[n].LogOdds
                + SizeIntegral.Log(SizeIntegral.Coarse, classes[n], curves[n], origin, evidence, place.Spread, worker, out _, out _);
        }
        var floor = h.LogPosterior - options.Margin - 12;
        foreach (var n in Best(scores, hole.Length == 1 ? options.ExactExchanges : 2, floor))
            if (KnownAsGood(place, classes[n], scores[n]) is null) found.Add(Add(place, classes[n], curves[n], worker));
        return found;
    }

    /// <summary>The set with one more class if it was tried before, from elsewhere, and was not worse than it looks from here.</summary>
    private Hypothesis? KnownAsGood(Neighbourhood place, FaultClass c, double score)
    {
        var (members, _) = Hypothesis.Insert(place.Classes, place.Shares, c, 0);
        return known.TryGetValue(Hypothesis.KeyOf(members), out var old) && (old.IsExpanded || old.LogPosterior > score - 2) ? old : null;
    }

    /// <summary>One can stand in for the other only where both move a reading.</summary>
    private static bool Touches(FaultClass a, FaultClass b)
    {
        for (var r = 0; r < a.Moves.Length; r++)
            if (a.Moves[r] && b.Moves[r]) return true;
        return false;
    }

    private void Register(Hypothesis h)
    {
        if (!known.TryGetValue(h.Key, out var old)) known[h.Key] = h;
        else if (!old.IsExpanded && h.LogPosterior > old.LogPosterior) known[h.Key] = h;
    }
}

/// <summary>Why the search for sets of faults stopped.</summary>
public enum SearchStop
{
    /// <summary>No unexpanded set is left within the margin of the best.</summary>
    Complete,

    /// <summary>The largest number of expansions was reached.</summary>
    Budget,

    /// <summary>The caller's clock said so.</summary>
    TimeUp,

    /// <summary>The caller stopped it.</summary>
    Cancelled,
}
