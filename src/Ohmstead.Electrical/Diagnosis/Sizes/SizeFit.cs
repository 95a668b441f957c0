using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>The sizes of a set of faults that explain the readings best, and how much the readings leave open about them.</summary>
/// <param name="Predicted">The readings there.</param>
/// <param name="Deviations">By class: standard deviation of its share; 0 where there is no size to fit.</param>
/// <param name="Directions">By class: movement of the readings for a unit of its share; null where there is no size to fit.</param>
/// <param name="LeftOut">Readings that are left out as wrong altogether.</param>
/// <param name="LogEvidence">Log likelihood integrated over the sizes.</param>
internal sealed record SizeFit(
    Members Members,
    double[] Predicted,
    double[] Deviations,
    double[]?[] Directions,
    IReadOnlyList<int> LeftOut,
    double LogEvidence
)
{
    /// <summary>Climbs to the best sizes from some, and integrates over them.</summary>
    /// <param name="predicted">The readings at the sizes that it starts from.</param>
    public static SizeFit From(Members set, double[] predicted, Judge judge)
    {
        var problem = new SizeProblem(set.Classes, judge);
        var climb = SizeClimb.From(problem, SizePull.From(problem, problem.At(set, predicted)));
        var surface = SizeSurface.Over(problem, climb);
        if (surface.Better is { } better)
        {
            // The climb got stuck below what the surface shows: once more from there.
            var there = problem.Solve(better, climb.Top.Predicted, null);
            if (there.Log > climb.Top.Log)
            {
                climb = SizeClimb.From(problem, there);
                surface = SizeSurface.Over(problem, climb);
            }
        }
        var top = climb.Top;
        using var judged = judge.At(top.Predicted);
        return new(
            top.Members,
            top.Predicted,
            climb.Deviations,
            climb.Directions,
            judged.LeftOut(),
            top.Log + climb.LogIntegral + surface.Correction + judge.Evidence.Symptoms.LogLikelihood(set.Classes) + DiscreteShare(set)
        );
    }

    /// <summary>A few whole turns: each size has an equal share.</summary>
    private static double DiscreteShare(Members set) => set.Classes.Where(c => c.IsDiscrete).Sum(c => -Math.Log(c.PointShares.Length));
}
