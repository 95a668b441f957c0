using Ohmstead.Electrical.Diagnosis.Likelihoods;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

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
