using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Diagnosis.Sizes;

/// <summary>What the readings show with a class of faults at every size it may have, beside whatever else is there.</summary>
internal sealed class SizeReach
{
    private const int Grid = 24;
    private const int Narrowings = 24;

    private readonly double[][] points;
    private readonly Evidence evidence;
    private readonly double[] shares;
    private readonly double[][] shown;

    /// <param name="c">The class.</param>
    /// <param name="points">Readings on the meter's scale at its <see cref="FaultClass.PointShares"/>.</param>
    /// <param name="evidence">What a difference of readings is.</param>
    public SizeReach(FaultClass c, double[][] points, Evidence evidence)
    {
        (Class, this.points, this.evidence) = (c, points, evidence);
        shares = c.IsContinuous ? [.. Enumerable.Range(0, Grid + 1).Select(k => k / (double)Grid)] : c.PointShares;
        shown = [.. shares.Select(At)];
    }

    public FaultClass Class { get; }

    /// <summary>The readings at a share; of a class with a few sizes, at the nearest of them.</summary>
    public double[] At(double share)
    {
        var at = new double[points[0].Length];
        var exact = Class.IsContinuous ? share : Class.PointShares.MinBy(s => Math.Abs(s - share));
        CurveShape.PointAt(Class, points, exact, at);
        return at;
    }

    /// <summary>The size that comes nearest to some readings, and the largest difference left [limits of the meter's error].</summary>
    public (double Share, double Apart) Nearest(double[] wanted)
    {
        var apart = shown.Select(e => evidence.Apart(e, wanted)).ToArray();
        var nearest = Array.IndexOf(apart, apart.Min());
        if (!Class.IsContinuous)
            return (shares[nearest], apart[nearest]);
        var (low, high) = (Math.Max(nearest - 1, 0), Math.Min(nearest + 1, Grid));
        // A large size moves a reading by many limits from one step of the grid to the next: the nearest may lie between.
        var step = Math.Max(evidence.Apart(shown[low], shown[nearest]), evidence.Apart(shown[high], shown[nearest]));
        return apart[nearest] > step ? (shares[nearest], apart[nearest]) : Narrowed(shares[low], shares[high], wanted);
    }

    private (double Share, double Apart) Narrowed(double low, double high, double[] wanted)
    {
        for (var n = 0; n < Narrowings; n++)
        {
            var third = (high - low) / 3;
            if (evidence.Apart(At(low + third), wanted) <= evidence.Apart(At(high - third), wanted))
                high -= third;
            else
                low += third;
        }
        var share = (low + high) / 2;
        return (share, evidence.Apart(At(share), wanted));
    }
}
