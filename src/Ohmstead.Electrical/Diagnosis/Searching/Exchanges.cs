using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>The neighbours of a set of faults that lack one or two of its members.</summary>
internal sealed class Exchanges(
    Evidence evidence,
    FaultClass[] classes,
    KnownSets known,
    Newcomers newcomers,
    Crew crew,
    DiagnosisOptions options
)
{
    /// <summary>Without each member: alone, and with another in its place. Without each pair: with one for two.</summary>
    public void Try(Hypothesis h)
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
            known.Register(child);
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
        using var judged = evidence.Judge(origin, place.Spread, worker);
        var left = judged.LeftOut();
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
        var inPlace = WithoutTheirOwn(h, hole);
        var scores = new double[classes.Length];
        var curves = new double[classes.Length][][];
        for (var n = 0; n < classes.Length; n++)
        {
            scores[n] = double.NegativeInfinity;
            if (!Newcomers.CanAdd(set, classes[n]) || h.Contains(classes[n]) || !hole.All(k => Newcomers.Touches(h.Classes[k], classes[n])))
                continue;
            curves[n] = hole.Length == 1 ? newcomers.CandidateCurve(place, classes[n], false, worker) : classes[n].Curve;
            scores[n] = place.LogPosterior - place.LogFit + classes[n].LogOdds + Log(place, classes[n], curves[n], inPlace, worker);
        }
        var floor = h.LogPosterior - options.Margin - 12;
        foreach (var n in KnownSets.Highest(scores, hole.Length == 1 ? options.ExactExchanges : 2, floor))
            if (known.AsGood(place, classes[n], scores[n]) is null)
                found.Add(newcomers.Add(place, classes[n], curves[n], worker));
        return found;
    }

    /// <summary>The better of two quick estimates: what a newcomer does added to what is left, and put in place of who left.</summary>
    private double Log(Neighbourhood place, FaultClass c, double[][] curve, double[] inPlace, Worker worker)
    {
        var added = SizeIntegral.Log(SizeIntegral.Coarse, c, curve, place.Origin, evidence, place.Spread, worker, out _, out _);
        var put = SizeIntegral.Log(SizeIntegral.Coarse, c, c.Curve, inPlace, evidence, place.Spread, worker, out var share, out _);
        if (c.IsContinuous)
            put = Math.Max(put, SizeIntegral.LogNear(share, c, c.Curve, inPlace, evidence, place.Spread, worker));
        return Math.Max(added, put);
    }

    /// <summary>
    /// The prediction less what the members that leave do alone: with what a newcomer does alone it is right for one that does
    /// the same, whatever the company makes of it.
    /// </summary>
    private static double[] WithoutTheirOwn(Hypothesis h, int[] hole)
    {
        var (without, own) = ((double[])h.Predicted.Clone(), new double[h.Predicted.Length]);
        foreach (var k in hole)
        {
            CurveShape.PointAt(h.Classes[k], h.Classes[k].Curve, h.Shares[k], own);
            for (var r = 0; r < own.Length; r++)
                without[r] -= own[r];
        }
        return without;
    }
}
