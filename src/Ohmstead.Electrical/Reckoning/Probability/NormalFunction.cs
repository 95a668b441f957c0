namespace Ohmstead.Electrical.Reckoning.Probability;

/// <summary>
/// The normal law to the last digits, its tails too: for chances that are printed. (<c>Readings.NormalLaw</c> is the fast one, good
/// to a ten-millionth, that a diagnosis asks a million times.)
/// </summary>
internal static class NormalFunction
{
    /// <summary>Φ(x): the chance of less than x. Φ(−x) = Q(1/2, x²/2)/2 (key abramowitz-stegun, 6.5.17).</summary>
    public static double Below(double x) =>
        x < 0 ? 0.5 * GammaFunction.Above(0.5, 0.5 * x * x) : 1 - (0.5 * GammaFunction.Above(0.5, 0.5 * x * x));

    /// <summary>φ(x), the density.</summary>
    public static double Density(double x) => Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI);

    /// <summary>The place below which a share lies, by halving: −40 for what is below all of it.</summary>
    public static double At(double share)
    {
        var (low, high) = (-40.0, 40.0);
        while (high - low > 1e-13 * Math.Max(1, Math.Abs(low)))
        {
            var middle = (low + high) / 2;
            // Of the upper half the small tail is asked: 1 − share has lost its digits there, Φ has not.
            if (middle <= low || middle >= high)
                break;
            if (Below(middle) < share)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }
}
