using System.Diagnostics.CodeAnalysis;
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

/// <summary>A set as it was found, judged by the spread of the set whose neighbour it is.</summary>
/// <param name="from">That set.</param>
internal sealed class FoundHypothesis(Members members, FittedHypothesis from) : Hypothesis(members)
{
    public FittedHypothesis From => from;

    public override Spread Spread => from.Spread;

    public override double DeviationOf(int k) => UsualDeviation;
}

/// <summary>A set with a spread of its own and the sizes that fit best by it.</summary>
/// <param name="spread">About its own prediction.</param>
/// <param name="from">The set whose neighbour it was; null for the sound unit.</param>
internal class FittedHypothesis(Members members, Spread spread, FittedHypothesis? from) : Hypothesis(members)
{
    public FittedHypothesis? From => from;

    public override Spread Spread => spread;

    /// <summary>Standard deviation of each share; 0 where there is no size to fit.</summary>
    public required double[] Deviations { get; init; }

    /// <summary>Movement of the readings for a unit of each share; null where there is no size to fit.</summary>
    public required double[]?[] Directions { get; init; }

    public override double DeviationOf(int k) => Deviations[k] > 0 ? Deviations[k] : UsualDeviation;
}

/// <summary>A fitted set whose neighbours were tried.</summary>
internal sealed class ExpandedHypothesis : FittedHypothesis
{
    /// <param name="addLogOdds">By class: log of the posterior ratio of adding it.</param>
    [SetsRequiredMembers]
    public ExpandedHypothesis(FittedHypothesis fitted, double[] addLogOdds)
        : base(fitted.Members, fitted.Spread, fitted.From)
    {
        (Predicted, LeftOut, LogEvidence) = (fitted.Predicted, fitted.LeftOut, fitted.LogEvidence);
        (Deviations, Directions, AddLogOdds) = (fitted.Deviations, fitted.Directions, addLogOdds);
    }

    /// <summary>By class: log of the posterior ratio of adding it.</summary>
    public double[] AddLogOdds { get; }
}
