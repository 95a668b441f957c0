namespace Ohmstead.Electrical.Reckoning.Probability;

/// <summary>Student's t.</summary>
internal static class StudentLaw
{
    /// <summary>P(|T| > t) of so many degrees of freedom: I_{ν/(ν+t²)}(ν/2, 1/2) (key abramowitz-stegun, 26.7.1).</summary>
    public static double Outside(double t, double degrees) => BetaFunction.Below(degrees / (degrees + (t * t)), degrees / 2, 0.5);

    /// <summary>The t outside which, both sides together, a share lies; by halving.</summary>
    /// <param name="share">Above 0, below 1.</param>
    public static double At(double share, double degrees)
    {
        var (low, high) = (0.0, 1.0);
        while (Outside(high, degrees) > share)
            high *= 2;
        while (high - low > 1e-13 * high)
        {
            var middle = (low + high) / 2;
            if (middle <= low || middle >= high)
                break;
            if (Outside(middle, degrees) > share)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }
}
