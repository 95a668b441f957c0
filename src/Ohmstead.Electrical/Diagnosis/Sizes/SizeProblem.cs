using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>Which sizes of a set of faults explain the readings: the sizes that are free, and what any of them is worth.</summary>
internal sealed class SizeProblem(FaultClass[] classes, Judge judge)
{
    private const double Step = 0.01;

    public FaultClass[] Classes => classes;

    public Judge Judge => judge;

    /// <summary>Places of the sizes to fit.</summary>
    public int[] Free { get; } = [.. Enumerable.Range(0, classes.Length).Where(k => classes[k].IsContinuous)];

    /// <summary>A place among the sizes, with the prediction there.</summary>
    public SizePoint At(Members set, double[] predicted) => new(set, predicted, judge.LogLikelihood(predicted) + set.LogDensity());

    /// <summary>A place among the sizes, solved.</summary>
    /// <param name="from">A prediction for other sizes.</param>
    /// <param name="changed">The only class whose size differs there; null for several.</param>
    public SizePoint Solve(Members set, double[] from, FaultClass? changed) => At(set, judge.Worker.Predict(set, from, changed));

    /// <summary>The readings with the k-th size elsewhere, all else as in <paramref name="set"/>, whose readings are given.</summary>
    public double[] With(Members set, double[] predicted, int k, double share) =>
        judge.Worker.Predict(set.At(k, share), predicted, classes[k]);

    /// <summary>Movement of the readings for a unit of the k-th share.</summary>
    public double[] DirectionOf(Members set, double[] predicted, int k)
    {
        var step = StepFrom(set.Shares[k]);
        var direction = With(set, predicted, k, set.Shares[k] + step);
        for (var r = 0; r < direction.Length; r++)
            direction[r] = (direction[r] - predicted[r]) / step;
        return direction;
    }

    /// <summary>The same of one reading.</summary>
    public double SlopeOf(int reading, Members set, double[] predicted, int k)
    {
        var step = StepFrom(set.Shares[k]);
        return (With(set, predicted, k, set.Shares[k] + step)[reading] - predicted[reading]) / step;
    }

    /// <summary>A small step of a share that stays within its range.</summary>
    public static double StepFrom(double share) => share > 0.5 ? -Step : Step;
}

/// <summary>A set of faults at some sizes.</summary>
/// <param name="Predicted">Its readings on the meter's scale.</param>
/// <param name="Log">Log likelihood with the sizes' prior density.</param>
internal sealed record SizePoint(Members Members, double[] Predicted, double Log);
