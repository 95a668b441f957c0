using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>The neighbours of a set with one more fault: a quick estimate for all, exact solutions for the best.</summary>
internal sealed class Additions(SearchSetting setting, KnownSets known)
{
    /// <summary>For each reading that an expanded set leaves out, additions that explain it are solved whatever else they spoil.</summary>
    private const int ExplainingAdditions = 2;

    private readonly Evidence evidence = setting.Evidence;
    private readonly FaultClass[] classes = setting.Classes;
    private readonly CandidateFit fit = new(setting.Evidence);

    /// <summary>Estimates every addition, solves the best, and registers what comes of them.</summary>
    /// <returns>By class: log of the posterior ratio of adding it.</returns>
    public double[] Try(FittedHypothesis h)
    {
        var logOdds = new double[classes.Length];
        Array.Fill(logOdds, double.NegativeInfinity);
        if (h.Members.Count >= setting.Options.MostFaults)
            return logOdds;
        var place = setting.Workers.One(worker => new Neighbourhood(h, [], h.Members, h.Predicted, evidence, worker));
        var curves = new double[classes.Length][][];
        setting.Workers.Each(classes.Length, (n, worker) => (logOdds[n], curves[n]) = Estimate(place, classes[n], worker));
        if (!setting.Guard.IsOver)
            Solve(place, curves, logOdds);
        return logOdds;
    }

    private (double LogOdds, double[][] Curve) Estimate(Neighbourhood place, FaultClass c, Worker worker)
    {
        if (!place.Members.CanAdd(c))
            return (double.NegativeInfinity, []);
        // What is not looked at any more joins with its own chance.
        if (setting.Guard.IsOver)
            return (c.LogOdds, []);
        var curve = CandidateCurve.Quick(place, c, true, worker);
        var log = SizeIntegral.Over(SizeIntegral.Coarse, c, curve, place.Origin, new(evidence, place.Spread, worker)).Log;
        var logSymptoms = evidence.Symptoms.LogLikelihood([.. place.Members.Classes, c]);
        return (log - place.LogFit + c.LogOdds + logSymptoms - place.LogSymptoms, curve);
    }

    private void Solve(Neighbourhood place, double[][][] curves, double[] logOdds)
    {
        var h = place.Of;
        int[] chosen =
        [
            .. KnownSets.Highest(logOdds, setting.Options.ExactAdditions, double.NegativeInfinity).Union(Explaining(h, logOdds)),
        ];
        var neighbours = new Hypothesis[chosen.Length];
        setting.Workers.Each(
            chosen.Length,
            (n, worker) =>
            {
                var c = classes[chosen[n]];
                neighbours[n] =
                    known.AsGood(place, c, logOdds[c.Number] + h.LogPosterior) ?? (Hypothesis)fit.Add(place, c, curves[c.Number], worker);
            }
        );
        for (var n = 0; n < chosen.Length; n++)
        {
            logOdds[chosen[n]] = neighbours[n].LogPosterior - h.LogPosterior;
            if (neighbours[n] is FoundHypothesis found)
                known.Register(found);
        }
    }

    /// <summary>Additions that bring a reading which the set leaves out to what was read, the best few for each.</summary>
    private IEnumerable<int> Explaining(FittedHypothesis h, double[] logOdds)
    {
        foreach (var r in h.LeftOut)
        {
            double[] scores =
            [
                .. classes.Select((c, n) => evidence.CanExplain(c, r, h.Predicted[r], h.Spread) ? logOdds[n] : double.NegativeInfinity),
            ];
            foreach (var n in KnownSets.Highest(scores, ExplainingAdditions, double.NegativeInfinity))
                yield return n;
        }
    }
}
