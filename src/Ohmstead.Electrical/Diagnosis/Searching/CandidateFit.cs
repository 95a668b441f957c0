using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>Weighs a candidate, one more fault in a set: its size there, and the evidence of the set with it.</summary>
internal sealed class CandidateFit(Evidence evidence)
{
    /// <summary>Exact solutions by which the size is mended.</summary>
    private const int Refinements = 2;

    /// <summary>An exact solution so far below what the curve promised is worth no more than that [nat].</summary>
    private const double MostBroken = 30;

    /// <summary>Solves the set at a place with one more class: its curve of sizes, the best of it, and the evidence.</summary>
    /// <param name="quick">The curve by which it was ranked.</param>
    public FoundHypothesis Add(Neighbourhood place, FaultClass c, double[][] quick, Worker worker)
    {
        var judge = new Judge(evidence, place.Spread, worker);
        var curve = quick == c.Curve ? CandidateCurve.Exact(place, c, worker) : quick;
        var along = SizeIntegral.Over(SizeIntegral.Fine, c, curve, place.Origin, judge);
        var members = Best(place, c, curve, along.BestShare, judge);
        var predicted = worker.Predict(members, place.Origin, place.HasFree ? null : c);
        var point = new SizePoint(members, predicted, judge.LogLikelihood(predicted) + c.LogDensity(along.BestShare));
        for (var n = 0; n < Refinements && c.IsContinuous; n++)
            point = Refined(point, c, curve, judge);
        using var judged = judge.At(point.Predicted);
        var fit = place.LogEvidence - place.LogSymptoms + along.Log - place.LogFit + Math.Max(point.Log - along.BestLog, -MostBroken);
        // No integral is above its highest point; a free size's normal prior may exceed its flat one by about a nat.
        var most = Math.Max(point.Log, along.BestLog) + members.Count;
        return new(point.Members, place.Of)
        {
            Predicted = point.Predicted,
            LeftOut = judged.LeftOut(),
            LogEvidence = Math.Min(fit, most) + evidence.Symptoms.LogLikelihood(members.Classes),
        };
    }

    /// <summary>Solves a set of classes without sizes, as a neighbour of another set.</summary>
    public FoundHypothesis Weigh(FittedHypothesis from, FaultClass[] set, Worker worker)
    {
        var members = new Members([.. set.OrderBy(c => c.Number)], new double[set.Length]);
        var predicted = worker.Predict(members, from.Predicted);
        using var judged = new Judge(evidence, from.Spread, worker).At(predicted);
        return new(members, from)
        {
            Predicted = predicted,
            LeftOut = judged.LeftOut(),
            LogEvidence = judged.Log + evidence.Symptoms.LogLikelihood(members.Classes),
        };
    }

    /// <summary>The set with the candidate at its best size on the curve, the others' sizes as they give way to it.</summary>
    private static Members Best(Neighbourhood place, FaultClass c, double[][] curve, double share, Judge judge)
    {
        var at = judge.Worker.Scratch(0, place.Origin.Length);
        CurveShape.PointAt(c, curve, share, at);
        for (var r = 0; r < at.Length; r++)
            at[r] += place.Origin[r];
        using var judged = judge.At(at);
        return place.Moved(judged).With(c, share);
    }

    /// <summary>One step of the new size from the interpolated to the exact best, where that gains.</summary>
    private static SizePoint Refined(SizePoint from, FaultClass c, double[][] curve, Judge judge)
    {
        var place = Array.IndexOf(from.Members.Classes, c);
        var share = from.Members.Shares[place];
        using var judged = judge.At(from.Predicted);
        var (gradient, curvature) = CurveClimb.Slopes(share, c, curve, judged);
        if (CurveClimb.Step(share, gradient, curvature) is not { } to || Math.Abs(to - share) < 1e-4)
            return from;
        var members = from.Members.At(place, to);
        var predicted = judge.Worker.Predict(members, from.Predicted, c);
        var log = judge.LogLikelihood(predicted) + c.LogDensity(to);
        return log > from.Log ? new(members, predicted, log) : from;
    }
}
