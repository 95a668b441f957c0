namespace Ohmstead.Electrical.Solving;

/// <summary>A junction seen by a wave: v + R·i(v) = a, with i(v) = I_s·(exp(v/V_s) − 1).</summary>
internal static class JunctionLaw
{
    private const int MostSteps = 50;

    /// <summary>
    /// The junction's voltage [V] for the incident wave a [V] on the reference resistance R [Ω]. Newton's method from above on
    /// a convex rising function, so it cannot overshoot; <paramref name="start"/> is any guess.
    /// </summary>
    public static double Volts(double a, double r, double saturationAmps, double slopeVolts, double start)
    {
        var leak = r * saturationAmps;
        if (a < -30 * slopeVolts) return a + leak;
        var above = a > 0 ? Math.Min(a, slopeVolts * Math.Log(1 + (a / leak))) : 0;
        var v = Math.Min(start, above);
        for (var n = 0; n < MostSteps; n++)
        {
            var e = leak * Math.Exp(v / slopeVolts);
            var change = (v + e - leak - a) / (1 + (e / slopeVolts));
            v = Math.Min(v - change, above);
            if (Math.Abs(change) < 1e-11 * (slopeVolts + Math.Abs(v))) break;
        }
        return v;
    }
}
