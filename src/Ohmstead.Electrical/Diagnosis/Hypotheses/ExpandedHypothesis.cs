using System.Diagnostics.CodeAnalysis;

namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

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
