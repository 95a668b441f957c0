using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Searching;

/// <summary>How the readings are displaced along the size of a candidate, in the company that it would be in.</summary>
internal static class CandidateCurve
{
    /// <summary>Above this the corrections are not interpolated [limits of the meter's error].</summary>
    private const double LargeCorrection = 0.7;

    /// <summary>
    /// For ranking: what it does alone, unless the company it is in hides or changes that; one solution in the middle tells.
    /// </summary>
    /// <param name="isThorough">Company whose sizes are small is asked, too.</param>
    public static double[][] Quick(Neighbourhood place, FaultClass c, bool isThorough, Worker worker)
    {
        if (!place.Members.Classes.Any(m => (isThorough || !m.HasSize) && m.Touches(c)))
            return c.Curve;
        var middle = c.PointShares.Length / 2;
        var point = PointOf(place, c, middle, worker);
        return Vectors.LargestDifference(point, c.Curve[middle]) < LargeCorrection ? c.Curve : Exact(place, c, worker);
    }

    /// <summary>
    /// What it does alone, corrected for the company it is in by solutions at the ends and the middle; where the corrections are large
    /// every point is solved.
    /// </summary>
    public static double[][] Exact(Neighbourhood place, FaultClass c, Worker worker)
    {
        var last = c.PointShares.Length - 1;
        var curve = new double[last + 1][];
        int[] solved = c.IsContinuous ? [0, last / 2, last] : [.. Enumerable.Range(0, last + 1)];
        foreach (var k in solved)
            curve[k] = PointOf(place, c, k, worker);
        var correction = solved.Max(k => Vectors.LargestDifference(curve[k], c.Curve[k]));
        for (var k = 0; k <= last; k++)
            curve[k] ??= correction > LargeCorrection ? PointOf(place, c, k, worker) : Between(curve, c, k);
        return curve;
    }

    private static double[] PointOf(Neighbourhood place, FaultClass c, int k, Worker worker)
    {
        var point = worker.Predict(place.Members.With(c, c.PointShares[k]), place.Origin, c);
        for (var r = 0; r < point.Length; r++)
            point[r] -= place.Origin[r];
        return point;
    }

    /// <summary>The parabola through the three corrections, at u = 0, 1, 2.</summary>
    private static double[] Between(double[][] curve, FaultClass c, int k)
    {
        var last = curve.Length - 1;
        var u = 2 * c.PointShares[k];
        var (w0, w1, w2) = ((u - 1) * (u - 2) / 2, u * (2 - u), u * (u - 1) / 2);
        double Correction(int at, int r) => curve[at][r] - c.Curve[at][r];
        return [.. c.Curve[k].Select((d, r) => d + (w0 * Correction(0, r)) + (w1 * Correction(last / 2, r)) + (w2 * Correction(last, r)))];
    }
}
