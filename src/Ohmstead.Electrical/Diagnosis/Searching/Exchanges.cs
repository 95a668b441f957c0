using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>The neighbours of a set of faults that lack one or two of its members.</summary>
internal sealed class Exchanges(SearchSetting setting, KnownSets known)
{
    /// <summary>Exchanges so far below what may still be expanded are not solved [nat].</summary>
    private const double Hopeless = 12;

    /// <summary>Of one fault for two, so many are solved.</summary>
    private const int ExactPairs = 2;

    private readonly Evidence evidence = setting.Evidence;
    private readonly CandidateFit fit = new(setting.Evidence);

    /// <summary>Without each member: alone, and with another in its place. Without each pair: with one for two.</summary>
    public void Try(FittedHypothesis h)
    {
        var holes = new List<int[]>();
        for (var k = 0; k < h.Members.Count; k++)
            holes.Add([k]);
        for (var k = 0; k < h.Members.Count; k++)
        for (var j = k + 1; j < h.Members.Count; j++)
            holes.Add([k, j]);
        var found = new List<FoundHypothesis>[holes.Count];
        setting.Workers.Each(holes.Count, (n, worker) => found[n] = setting.Guard.IsOver ? [] : Exchange(h, holes[n], worker));
        foreach (var neighbour in found.SelectMany(f => f))
            known.Register(neighbour);
    }

    private List<FoundHypothesis> Exchange(FittedHypothesis h, int[] hole, Worker worker)
    {
        var (left, origin) = (h.Members, h.Predicted);
        foreach (var k in hole.OrderDescending())
        {
            var gone = left.Classes[k];
            left = left.Without(k);
            origin = worker.Predict(left, origin, gone);
        }
        var place = new Neighbourhood(h, hole, left, origin, evidence, worker);
        var found = new List<FoundHypothesis>();
        if (hole.Length == 1)
            found.Add(Removal(place, worker));
        var (scores, curves) = Scores(place, hole, worker);
        var floor = h.LogPosterior - setting.Options.Margin - Hopeless;
        foreach (var n in KnownSets.Highest(scores, hole.Length == 1 ? setting.Options.ExactExchanges : ExactPairs, floor))
            if (known.AsGood(place, setting.Classes[n], scores[n]) is null)
                found.Add(fit.Add(place, setting.Classes[n], curves[n], worker));
        return found;
    }

    private FoundHypothesis Removal(Neighbourhood place, Worker worker)
    {
        using var judged = new Judge(evidence, place.Spread, worker).At(place.Origin);
        return new(place.Members, place.Of)
        {
            Predicted = place.Origin,
            LeftOut = judged.LeftOut(),
            LogEvidence = place.LogEvidence,
        };
    }

    /// <summary>By class: an estimate of the log posterior with it in the hole, and the curve that it was made with.</summary>
    private (double[] Scores, double[][][] Curves) Scores(Neighbourhood place, int[] hole, Worker worker)
    {
        var (h, classes) = (place.Of, setting.Classes);
        var inPlace = WithoutTheirOwn(h, hole);
        var (scores, curves) = (new double[classes.Length], new double[classes.Length][][]);
        for (var n = 0; n < classes.Length; n++)
        {
            scores[n] = double.NegativeInfinity;
            var c = classes[n];
            if (!place.Members.CanAdd(c) || h.Members.Contains(c) || !hole.All(k => h.Classes[k].Touches(c)))
                continue;
            curves[n] = hole.Length == 1 ? CandidateCurve.Quick(place, c, false, worker) : c.Curve;
            scores[n] = place.LogPosterior - place.LogFit + c.LogOdds + Log(place, c, curves[n], inPlace, worker);
        }
        return (scores, curves);
    }

    /// <summary>The better of two quick estimates: what a candidate does added to what is left, and put in place of who left.</summary>
    private double Log(Neighbourhood place, FaultClass c, double[][] curve, double[] inPlace, Worker worker)
    {
        var judge = new Judge(evidence, place.Spread, worker);
        var added = SizeIntegral.Over(SizeIntegral.Coarse, c, curve, place.Origin, judge).Log;
        var put = SizeIntegral.Over(SizeIntegral.Coarse, c, c.Curve, inPlace, judge);
        var near = c.IsContinuous ? CurveClimb.LogIntegral(put.BestShare, c, c.Curve, inPlace, judge) : double.NegativeInfinity;
        return Math.Max(added, Math.Max(put.Log, near));
    }

    /// <summary>
    /// The prediction less what the members that leave do alone: with what a candidate does alone it is right for one that does
    /// the same, whatever the company makes of it.
    /// </summary>
    private static double[] WithoutTheirOwn(FittedHypothesis h, int[] hole)
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
