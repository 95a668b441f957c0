namespace Ohmstead.Electrical.Reckoning.Probability;

/// <summary>
/// The error of a mean: the meter's, anywhere within ±a equally likely, plus the scatter, normal with σ. Exactly, without sampling:
/// P(error &lt; x) = (G(x + a) − G(x − a))/(2a), G(z) = zΦ(z/σ) + σφ(z/σ), the integral of Φ.
/// </summary>
/// <param name="Limit">a, 0 or more.</param>
/// <param name="Scatter">σ, 0 or more.</param>
internal readonly record struct MeterErrorLaw(double Limit, double Scatter)
{
    /// <summary>Standard uncertainty: √(a²/3 + σ²) (key gum).</summary>
    public double StandardUncertainty => Math.Sqrt((Limit * Limit / 3) + (Scatter * Scatter));

    /// <summary>P(error &lt; x).</summary>
    public double Below(double x)
    {
        if (Scatter <= 1e-9 * Limit || Scatter == 0)
            return Limit == 0 ? (x > 0 ? 1 : 0) : Math.Clamp((x + Limit) / (2 * Limit), 0, 1);
        // The upper side by symmetry, so that small tails keep their digits.
        if (x > 0)
            return 1 - Below(-x);
        // A narrow limit: the mean of Φ over it to the fourth power of a/σ, where G would cancel.
        if (Limit < 0.01 * Scatter)
        {
            var (z, ratio) = (x / Scatter, Limit / Scatter);
            return NormalFunction.Below(z) - (z * NormalFunction.Density(z) * ratio * ratio / 6);
        }
        return Math.Clamp((Integral(x + Limit) - Integral(x - Limit)) / (2 * Limit), 0, 1);
    }

    private double Integral(double z)
    {
        var (density, below) = (Scatter * NormalFunction.Density(z / Scatter), z * NormalFunction.Below(z / Scatter));
        return density + below;
    }
}
