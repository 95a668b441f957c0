namespace Ohmstead.Electrical.Solving;

/// <summary>A junction seen by a wave: v + R·i(v) = a, with i(v) = I_s·(exp(v/V_s) − 1).</summary>
internal static class JunctionLaw
{
    private const int MostSteps = 50;

    /// <summary>
    /// The junction's voltage [V] for the incident wave a [V] on the reference resistance R [Ω], by Newton's method on a convex
    /// rising function: from above it cannot overshoot, and a step that would jump above starts there instead.
    /// </summary>
    /// <param name="start">A guess, such as the voltage of the round before.</param>
    public static double Volts(double a, double r, double saturationAmps, double slopeVolts, double start)
    {
        var leak = r * saturationAmps;
        if (a + leak < -30 * slopeVolts) return a + leak;
        var inverseSlope = 1 / slopeVolts;
        var v = start > a && a > 0 ? Above(a, leak, slopeVolts) : start;
        for (var n = 0; n < MostSteps; n++)
        {
            var e = leak * Math.Exp(v * inverseSlope);
            var change = (v + e - leak - a) / (1 + (e * inverseSlope));
            v = change < -slopeVolts ? Math.Min(v - change, Above(a, leak, slopeVolts)) : v - change;
            if (Math.Abs(change) < 1e-6 * slopeVolts) break;
        }
        return v;
    }

    /// <summary>A voltage not below the solution.</summary>
    private static double Above(double a, double leak, double slopeVolts) => a > 0 ? Math.Min(a, slopeVolts * Math.Log(1 + (a / leak))) : 0;
}
