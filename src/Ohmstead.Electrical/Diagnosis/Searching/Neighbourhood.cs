using Ohmstead.Electrical.Diagnosis.Candidates;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>
/// An expanded set of faults, perhaps without some members, as the place from which neighbours are judged: the sizes of the
/// members that stay are free, so that they may give way to a newcomer.
/// </summary>
internal sealed class Neighbourhood
{
    /// <summary>Deviation of a free size's share: that of a size anywhere in its range, 1/√12, rounded down.</summary>
    private const double FreeDeviation = 0.25;

    private readonly double[]?[] directions;

    public Neighbourhood(Hypothesis parent, int[] hole, double[] origin, Evidence evidence, Crew crew)
        : this(parent, hole, origin, evidence, crew, null) { }

    public Neighbourhood(Hypothesis parent, int[] hole, double[] origin, Evidence evidence, Crew? crew, Worker? worker)
    {
        (Parent, Origin) = (parent, origin);
        int[] stay = [.. Enumerable.Range(0, parent.Classes.Length).Where(k => Array.IndexOf(hole, k) < 0)];
        Classes = [.. stay.Select(k => parent.Classes[k])];
        Shares = [.. stay.Select(k => parent.Shares[k])];
        directions = [.. stay.Select(k => parent.Directions[k])];
        Spread = evidence.Free(parent.Spread!, directions.OfType<double[]>(), FreeDeviation);
        double Fit(double[] predicted, Spread spread) =>
            worker is not null
                ? evidence.LogLikelihood(predicted, spread, worker)
                : crew!.One(w => evidence.LogLikelihood(predicted, spread, w));
        LogFit = Fit(origin, Spread);
        LogTold = evidence.TellTales.Log(Classes);
        // What the free sizes of the members cost is in the parent's evidence; a member that left takes nothing with it but its fit.
        var parentFit =
            hole.Length == 0
                ? LogFit
                : Fit(parent.Predicted, evidence.Free(parent.Spread!, parent.Directions.OfType<double[]>(), FreeDeviation));
        LogEvidence = parent.LogEvidence - evidence.TellTales.Log(parent.Classes) - parentFit + LogFit + LogTold;
        LogPosterior = LogEvidence + Classes.Sum(c => c.LogOdds);
    }

    public Hypothesis Parent { get; }

    public FaultClass[] Classes { get; }

    public double[] Shares { get; }

    public double[] Origin { get; }

    public Spread Spread { get; }

    /// <summary>Log likelihood of the origin, sizes free.</summary>
    public double LogFit { get; }

    public double LogTold { get; }

    public double LogEvidence { get; }

    public double LogPosterior { get; }

    /// <summary>True when a member's size is free.</summary>
    public bool HasFree => directions.Any(d => d is not null);

    /// <summary>The members' shares as a judgement with this spread would have them.</summary>
    public double[] MovedShares(Judgement judged) =>
        [.. Shares.Select((s, k) => directions[k] is { } d ? Math.Clamp(s + judged.ShareMove(d, FreeDeviation), 0, 1) : s)];
}
