using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// A fitted set of faults, perhaps without some members, as the place from which neighbours are judged: the sizes of the
/// members that stay are free, so that they may give way to a candidate.
/// </summary>
internal sealed class Neighbourhood
{
    /// <summary>Deviation of a free size's share: that of a size anywhere in its range, 1/√12, rounded down.</summary>
    private const double FreeDeviation = 0.25;

    private readonly double[]?[] directions;

    /// <param name="set">The fitted set.</param>
    /// <param name="hole">Places of the members that are left out.</param>
    /// <param name="members">Those that stay.</param>
    /// <param name="origin">The readings with these.</param>
    public Neighbourhood(FittedHypothesis set, int[] hole, Members members, double[] origin, Evidence evidence, Worker worker)
    {
        (Of, Members, Origin) = (set, members, origin);
        directions = [.. set.Directions.Where((_, k) => Array.IndexOf(hole, k) < 0)];
        Spread = evidence.Free(set.Spread, directions.OfType<double[]>(), FreeDeviation);
        LogFit = new Judge(evidence, Spread, worker).LogLikelihood(origin);
        LogSymptoms = evidence.Symptoms.LogLikelihood(members.Classes);
        // What the free sizes of the members cost is in the set's evidence; a member that left takes nothing with it but its fit.
        var logFitOfAll = LogFit;
        if (hole.Length > 0)
        {
            var free = evidence.Free(set.Spread, set.Directions.OfType<double[]>(), FreeDeviation);
            logFitOfAll = new Judge(evidence, free, worker).LogLikelihood(set.Predicted);
        }
        LogEvidence = set.LogEvidence - evidence.Symptoms.LogLikelihood(set.Classes) - logFitOfAll + LogFit + LogSymptoms;
        LogPosterior = LogEvidence + members.LogPrior;
    }

    /// <summary>The set whose neighbours these are.</summary>
    public FittedHypothesis Of { get; }

    public Members Members { get; }

    public double[] Origin { get; }

    public Spread Spread { get; }

    /// <summary>Log likelihood of the origin, sizes free.</summary>
    public double LogFit { get; }

    /// <summary>Log likelihood of the symptoms.</summary>
    public double LogSymptoms { get; }

    public double LogEvidence { get; }

    public double LogPosterior { get; }

    /// <summary>True when a member's size is free.</summary>
    public bool HasFree => directions.Any(d => d is not null);

    /// <summary>The members with the sizes that a judgement with this spread would have.</summary>
    public Members Moved(Judgement judged) =>
        Members.At([
            .. Members.Shares.Select((s, k) => directions[k] is { } d ? Math.Clamp(s + judged.ShareMove(d, FreeDeviation), 0, 1) : s),
        ]);
}
