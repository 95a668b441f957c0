using Ohmstead.Electrical.Diagnosis.Likelihoods;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

/// <summary>A set as it was found, judged by the spread of the set whose neighbour it is.</summary>
/// <param name="from">That set.</param>
internal sealed class FoundHypothesis(Members members, FittedHypothesis from) : Hypothesis(members)
{
    public FittedHypothesis From => from;

    public override Spread Spread => from.Spread;

    public override double DeviationOf(int k) => UsualDeviation;
}
