using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Faults;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>Solves sets of faults, and weighs one more fault in a set: what it does there, its size, and the evidence.</summary>
internal sealed class Newcomers(Evidence evidence)
{
    /// <summary>Above this the corrections are not interpolated [limits of the meter's error].</summary>
    private const double LargeCorrection = 0.7;

    /// <summary>
    /// Solves the readings of a set; where <paramref name="changed"/> is given, readings that the change cannot move are copied
    /// from <paramref name="from"/>. A fault without a size may lay open what was hidden, so what it moves is solved anew. A reading that cannot
    /// be solved stays as it was, too: it speaks neither for the change nor against it.
    /// </summary>
    public double[] Solve(FaultClass[] set, double[] shares, double[] from, FaultClass? changed, Worker worker)
    {
        var faults = new Fault[set.Length];
        for (var k = 0; k < set.Length; k++)
            faults[k] = set[k].At(shares[k]);
        using var unit = worker.Predictor.Assume(faults);
        var t = new double[evidence.Set.Count];
        for (var r = 0; r < t.Length; r++)
            t[r] = (changed is null || changed.Moves[r] || IsRewired(set, r) ? unit.Scaled(r) : null) ?? from[r];
        return t;
    }

    private static bool IsRewired(FaultClass[] set, int reading)
    {
        foreach (var c in set)
            if (!c.HasSize && c.Moves[reading])
                return true;
        return false;
    }

    /// <summary>True when a class may stand beside the others: its element has no other fault.</summary>
    public static bool CanAdd(FaultClass[] set, FaultClass c)
    {
        foreach (var other in set)
            if (other == c || (other.Elements.Length == 1 && c.Elements.Length == 1 && other.Elements[0] == c.Elements[0]))
                return false;
        return true;
    }

    /// <summary>Solves the set at a place with one more class: its curve of sizes, the best of it, and the evidence.</summary>
    public Hypothesis Add(Neighbourhood place, FaultClass c, double[][] quick, Worker worker)
    {
        var curve = quick == c.Curve ? CurveFrom(place, c, worker) : quick;
        var log = SizeIntegral.Log(
            SizeIntegral.Fine,
            c,
            curve,
            place.Origin,
            evidence,
            place.Spread,
            worker,
            out var share,
            out var bestLog
        );
        var at = worker.Scratch(0, place.Origin.Length);
        CurveShape.PointAt(c, curve, share, at);
        for (var r = 0; r < at.Length; r++)
            at[r] += place.Origin[r];
        using var judged = evidence.Judge(at, place.Spread, worker);
        var (members, fitted) = Hypothesis.Insert(place.Classes, place.MovedShares(judged), c, share);
        var child = new Hypothesis(members, fitted) { Parent = place.Parent };
        child.Predicted = Solve(members, fitted, place.Origin, place.HasFree ? null : c, worker);
        var exact = evidence.LogLikelihood(child.Predicted, place.Spread, worker) + c.LogDensity(share);
        for (var n = 0; n < 2 && c.IsContinuous; n++)
            exact = Refine(child, c, curve, place, exact, worker);
        using var refined = evidence.Judge(child.Predicted, place.Spread, worker);
        (child.LogFit, child.LeftOut) = (exact, refined.LeftOut());
        var evidenceOfFit = place.LogEvidence - place.LogTold + log - place.LogFit + Math.Max(exact - bestLog, -30);
        // No integral is above its highest point; a free size's normal prior may exceed its flat one by about a nat.
        var most = Math.Max(exact, bestLog) + members.Length;
        child.LogEvidence = Math.Min(evidenceOfFit, most) + evidence.TellTales.Log(members);
        return child;
    }

    /// <summary>Solves a set of classes without sizes, as a neighbour of another set.</summary>
    public Hypothesis Weigh(Hypothesis from, FaultClass[] set, Worker worker)
    {
        var members = set.OrderBy(c => c.Number).ToArray();
        var child = new Hypothesis(members, new double[members.Length]) { Parent = from };
        child.Predicted = Solve(members, child.Shares, from.Predicted, null, worker);
        using var judged = evidence.Judge(child.Predicted, from.Spread!, worker);
        (child.LogFit, child.LeftOut) = (judged.Log, judged.LeftOut());
        child.LogEvidence = child.LogFit + evidence.TellTales.Log(members);
        return child;
    }

    /// <summary>The readings of a set at its shares, of some places only; null where one cannot be solved.</summary>
    public static double?[] SolveOnly(FaultClass[] set, IEnumerable<int> places, Worker worker)
    {
        Fault[] faults = [.. set.Select(c => c.At(c.PointShares[0]))];
        using var unit = worker.Predictor.Assume(faults);
        return [.. places.Select(unit.Scaled)];
    }

    /// <summary>
    /// The displacement along a candidate's size for ranking: what it does alone, unless the company it is in hides or changes
    /// that; one solution in the middle tells.
    /// </summary>
    public double[][] CandidateCurve(Neighbourhood place, FaultClass c, bool isThorough, Worker worker)
    {
        if (!place.Classes.Any(m => (isThorough || !m.HasSize) && Touches(m, c)))
            return c.Curve;
        var middle = c.PointShares.Length / 2;
        var point = PointOf(place, c, middle, worker);
        return Difference(point, c.Curve[middle]) < LargeCorrection ? c.Curve : CurveFrom(place, c, worker);
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
        foreach (var k in solved)
            curve[k] = PointOf(place, c, k, worker);
        var correction = solved.Max(k => Difference(curve[k], c.Curve[k]));
        for (var k = 0; k <= last; k++)
            curve[k] ??= correction > LargeCorrection ? PointOf(place, c, k, worker) : Between(curve, c, k);
        return curve;
    }

    private static double Difference(double[] a, double[] b)
    {
        var worst = 0.0;
        for (var r = 0; r < a.Length; r++)
            worst = Math.Max(worst, Math.Abs(a[r] - b[r]));
        return worst;
    }

    private double[] PointOf(Neighbourhood place, FaultClass c, int k, Worker worker)
    {
        var (all, sizes) = Hypothesis.Insert(place.Classes, place.Shares, c, c.PointShares[k]);
        var point = Solve(all, sizes, place.Origin, c, worker);
        for (var r = 0; r < point.Length; r++)
            point[r] -= place.Origin[r];
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
        using var judged = evidence.Judge(child.Predicted, at.Spread, worker);
        var (near, far) = (new double[child.Predicted.Length], new double[child.Predicted.Length]);
        CurveShape.At(c.PointShares, curve, share, near);
        CurveShape.At(c.PointShares, curve, share > 0.5 ? share - width : share + width, far);
        for (var r = 0; r < far.Length; r++)
            far[r] = (far[r] - near[r]) / (share > 0.5 ? -width : width);
        Span<double> gradient = stackalloc double[1];
        Span<double> curvature = stackalloc double[1];
        judged.Project([far], gradient, curvature);
        if (curvature[0] < 1)
            return exact;
        var to = Math.Clamp(share + (gradient[0] / curvature[0]), Math.Max(0, share - 0.1), Math.Min(1, share + 0.1));
        if (Math.Abs(to - share) < 1e-4)
            return exact;
        var shares = (double[])child.Shares.Clone();
        shares[place] = to;
        var predicted = Solve(child.Classes, shares, child.Predicted, c, worker);
        var now = evidence.LogLikelihood(predicted, at.Spread, worker) + c.LogDensity(to);
        if (now <= exact)
            return exact;
        (child.Shares, child.Predicted) = (shares, predicted);
        return now;
    }

    /// <summary>One can stand in for the other only where both move a reading.</summary>
    public static bool Touches(FaultClass a, FaultClass b)
    {
        for (var r = 0; r < a.Moves.Length; r++)
            if (a.Moves[r] && b.Moves[r])
                return true;
        return false;
    }
}
