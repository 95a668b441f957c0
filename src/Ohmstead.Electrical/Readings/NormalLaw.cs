namespace Ohmstead.Electrical.Readings;

/// <summary>The normal distribution.</summary>
internal static class NormalLaw
{
    /// <summary>Φ(x): the chance of a standard normal value below x; absolute error below 1.2·10⁻⁷ relative to the tail.</summary>
    public static double Below(double x) => 0.5 * Erfc(-x / Math.Sqrt(2));

    /// <summary>The place below which a share of the normal law lies, by Newton's method from a place near it.</summary>
    /// <param name="share">Above 0, below 1.</param>
    /// <param name="near">Where to begin; within about one standard deviation of the answer, on its side nearer to 0.</param>
    public static double At(double share, double near)
    {
        var z = near;
        for (var n = 0; n < 20; n++)
        {
            var step = (share - Below(z)) * Math.Sqrt(2 * Math.PI) * Math.Exp(z * z / 2);
            z += step;
            if (Math.Abs(step) < 1e-6)
                break;
        }
        return z;
    }

    /// <summary>Complementary error function by a Chebyshev fit (key numerical-erfc): relative error below 1.2·10⁻⁷ everywhere.</summary>
    private static double Erfc(double x)
    {
        var z = Math.Abs(x);
        var t = 1 / (1 + (0.5 * z));
        var sum =
            -1.26551223
            + (
                t
                * (
                    1.00002368
                    + (
                        t
                        * (
                            0.37409196
                            + (
                                t
                                * (
                                    0.09678418
                                    + (
                                        t
                                        * (
                                            -0.18628806
                                            + (
                                                t
                                                * (
                                                    0.27886807
                                                    + (t * (-1.13520398 + (t * (1.48851587 + (t * (-0.82215223 + (t * 0.17087277)))))))
                                                )
                                            )
                                        )
                                    )
                                )
                            )
                        )
                    )
                )
            );
        var value = t * Math.Exp((-z * z) + sum);
        return x >= 0 ? value : 2 - value;
    }

    /// <summary>ln ∫₀¹ exp(g·(u − at) − h·(u − at)²/2) du: a parabola of the log likelihood cut to the range of a share.</summary>
    public static double LogIntegral(double at, double gradient, double curvature) => Cut(at, gradient, curvature).LogIntegral;

    /// <summary>The same with the mean and the variance of the share u under it.</summary>
    public static (double LogIntegral, double Mean, double Variance) Cut(double at, double gradient, double curvature)
    {
        if (curvature < 1 && Math.Abs(gradient) < 10)
            return Shallow(at, gradient, curvature);
        var mean = at + (gradient / curvature);
        var root = Math.Sqrt(curvature);
        var (low, high) = (-mean * root, (1 - mean) * root);
        // The tail that is farther out is taken from the side where it is small.
        var inside = low > 0 ? Below(-low) - Below(-high) : Below(high) - Below(low);
        if (inside < 1e-280)
        {
            // All of it lies at one end.
            var end = mean > 0.5 ? 1 : 0;
            var (away, slope) = (end - at, Math.Abs(gradient - (curvature * (end - at))));
            var depth = 1 / (1 + slope);
            var top = (gradient * away) - (0.5 * curvature * away * away);
            return (top + Math.Log(depth), Math.Abs(end - depth), depth * depth);
        }
        var log = (0.5 * gradient * gradient / curvature) + (0.5 * Math.Log(2 * Math.PI / curvature)) + Math.Log(inside);
        var (atLow, atHigh) = (Density(low) / inside, Density(high) / inside);
        var moved = atLow - atHigh;
        var share = 1 + (low * atLow) - (high * atHigh) - (moved * moved);
        return (log, Math.Clamp(mean + (moved / root), 0, 1), Math.Clamp(share, 0, 1) / curvature);
    }

    /// <summary>ln 2π.</summary>
    public const double Log2Pi = 1.8378770664093454;

    /// <summary>φ(x): the density of the standard normal law.</summary>
    public static double Density(double x) => Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI);

    /// <summary>The density so far off the mean of a law of some variance.</summary>
    public static double Density(double off, double variance) => Math.Exp(-0.5 * off * off / variance) / Math.Sqrt(2 * Math.PI * variance);

    private static (double LogIntegral, double Mean, double Variance) Shallow(double at, double gradient, double curvature)
    {
        const int Points = 20;
        Span<double> logs = stackalloc double[Points];
        for (var k = 0; k < Points; k++)
        {
            var away = ((k + 0.5) / Points) - at;
            logs[k] = (gradient * away) - (0.5 * curvature * away * away) - Math.Log(Points);
        }
        var all = Vectors.LogSum(logs);
        var (mean, square) = (0.0, 0.0);
        for (var k = 0; k < Points; k++)
        {
            var (u, weight) = ((k + 0.5) / Points, Math.Exp(logs[k] - all));
            mean += weight * u;
            square += weight * u * u;
        }
        return (all, mean, square - (mean * mean));
    }
}
