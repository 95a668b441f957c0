using Ohmstead.Electrical.Diagnosis.Likelihoods;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

/// <summary>
/// A set of faults and how well it explains the readings. It is found as the neighbour of another, fitted by a spread of its own, and
/// expanded into its neighbours: three types, each of which knows all that one of its state can.
/// </summary>
/// <param name="members">The faults with their sizes.</param>
internal abstract class Hypothesis(Members members)
{
    private readonly double logPrior = members.LogPrior;

    public Members Members { get; } = members;

    public FaultClass[] Classes => Members.Classes;

    /// <summary>Size of each as a share of its logarithmic range.</summary>
    public double[] Shares => Members.Shares;

    /// <summary>Predicted readings on the meter's scale.</summary>
    public required double[] Predicted { get; init; }

    /// <summary>Readings that are left out as wrong altogether at these sizes.</summary>
    public required IReadOnlyList<int> LeftOut { get; init; }

    /// <summary>Log likelihood integrated over the sizes.</summary>
    public required double LogEvidence { get; init; }

    public double LogPosterior => logPrior + LogEvidence;

    /// <summary>The spread about the prediction that it is judged by.</summary>
    public abstract Spread Spread { get; }

    /// <summary>Standard deviation of the k-th size's share.</summary>
    public abstract double DeviationOf(int k);

    /// <summary>How the k-th member's probability divides among the modes of its class.</summary>
    public double[] SharesOfModes(int k) => Classes[k].SharesOfModes(Shares[k], DeviationOf(k));

    public string Key => Members.Key;

    /// <summary>Of a share that nothing was worked out for.</summary>
    protected const double UsualDeviation = 0.05;
}
