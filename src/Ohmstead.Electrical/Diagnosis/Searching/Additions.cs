using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>The neighbours of a set with one more fault: a quick estimate for all, exact solutions for the best.</summary>
internal sealed class Additions(
    Evidence evidence,
    FaultClass[] classes,
    KnownSets known,
    Newcomers newcomers,
    Crew crew,
    DiagnosisOptions options
)
{
    /// <summary>For each reading that an expanded set leaves out, additions that explain it are solved whatever else they spoil.</summary>
    private const int ExplainingAdditions = 2;

    /// <summary>Estimates every addition, solves the best, and registers what comes of them.</summary>
    public void Try(Hypothesis h)
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
                var log = SizeIntegral.Log(SizeIntegral.Coarse, c, curves[n], place.Origin, evidence, place.Spread, worker, out _, out _);
                h.AddLogOdds[n] = log - place.LogFit + c.LogOdds + evidence.TellTales.Log([.. h.Classes, c]) - place.LogTold;
            }
        );
        if (options.IsOver())
            return;
        var chosen = KnownSets.Highest(h.AddLogOdds, options.ExactAdditions, double.NegativeInfinity).Union(Explaining(h)).ToArray();
        var children = new Hypothesis?[chosen.Length];
        crew.Each(
            chosen.Length,
            (n, worker) =>
                children[n] =
                    known.AsGood(place, classes[chosen[n]], h.AddLogOdds[chosen[n]] + h.LogPosterior)
                    ?? newcomers.Add(place, classes[chosen[n]], curves[chosen[n]], worker)
        );
        for (var n = 0; n < chosen.Length; n++)
        {
            if (children[n] is not { } child)
                continue;
            h.AddLogOdds[chosen[n]] = child.LogPosterior - h.LogPosterior;
            known.Register(child);
        }
    }

    /// <summary>Additions that bring a reading which the set leaves out to what was read, the best few for each.</summary>
    private IEnumerable<int> Explaining(Hypothesis h)
    {
        foreach (var r in h.LeftOut)
        foreach (
            var n in KnownSets.Highest(
                [
                    .. classes.Select(
                        (c, n) => evidence.CanExplain(c, r, h.Predicted[r], h.Spread!) ? h.AddLogOdds![n] : double.NegativeInfinity
                    ),
                ],
                ExplainingAdditions,
                double.NegativeInfinity
            )
        )
            yield return n;
    }
}
