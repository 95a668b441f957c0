namespace Ohmstead.Electrical.Diagnosis.Hypotheses;

/// <summary>A smooth curve in the space of readings through a few solved points, by share of the logarithmic size.</summary>
internal static class CurveShape
{
    /// <summary>The displacement of a class at a share: on its curve, or at one of its few points.</summary>
    public static void PointAt(FaultClass c, double[][] points, double share, Span<double> into)
    {
        if (c.IsContinuous)
            At(c.PointShares, points, share, into);
        else
            points[Array.IndexOf(c.PointShares, share)].CopyTo(into);
    }

    /// <summary>The curve at a share, by Catmull–Rom cubics through evenly spaced points.</summary>
    public static void At(ReadOnlySpan<double> shares, double[][] points, double share, Span<double> into)
    {
        var last = shares.Length - 1;
        var place = Math.Clamp(share, 0, 1) * last;
        var k = Math.Min((int)place, last - 1);
        var t = place - k;
        var (p0, p1, p2, p3) = (points[Math.Max(k - 1, 0)], points[k], points[k + 1], points[Math.Min(k + 2, last)]);
        var (t2, t3) = (t * t, t * t * t);
        // The ends repeat their outermost slope.
        var (w0, w1, w2, w3) = (
            0.5 * (-t3 + (2 * t2) - t),
            0.5 * ((3 * t3) - (5 * t2) + 2),
            0.5 * ((-3 * t3) + (4 * t2) + t),
            0.5 * (t3 - t2)
        );
        for (var n = 0; n < into.Length; n++)
        {
            var before = k == 0 ? (2 * p1[n]) - p2[n] : p0[n];
            var after = k == last - 1 ? (2 * p2[n]) - p1[n] : p3[n];
            into[n] = (w0 * before) + (w1 * p1[n]) + (w2 * p2[n]) + (w3 * after);
        }
    }
}
