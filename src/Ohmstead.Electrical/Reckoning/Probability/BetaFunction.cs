namespace Ohmstead.Electrical.Reckoning.Probability;

/// <summary>The incomplete beta function. A test holds it against a second program over a grid.</summary>
internal static class BetaFunction
{
    private const int MostTerms = 200_000;
    private const double Enough = 1e-16;

    /// <summary>I_x(a, b): the chance that a beta variable of these two shapes lies below x.</summary>
    /// <param name="x">From 0 to 1.</param>
    /// <param name="a">Above 0.</param>
    /// <param name="b">Above 0.</param>
    public static double Below(double x, double a, double b)
    {
        if (x <= 0)
            return 0;
        if (x >= 1)
            return 1;
        var front = Math.Exp(
            GammaFunction.LogOf(a + b) - GammaFunction.LogOf(a) - GammaFunction.LogOf(b) + (a * Math.Log(x)) + (b * Math.Log(1 - x))
        );
        // The fraction converges fast on the near side of the mean; from the other side the complement is taken.
        return x < (a + 1) / (a + b + 2) ? front * Fraction(x, a, b) / a : 1 - (front * Fraction(1 - x, b, a) / b);
    }

    /// <summary>The continued fraction (key abramowitz-stegun, 26.5.8) by Lentz' method.</summary>
    private static double Fraction(double x, double a, double b)
    {
        var c = 1.0;
        var d = 1 / GammaFunction.NotZero(1 - ((a + b) * x / (a + 1)));
        var value = d;
        for (var n = 1; n < MostTerms; n++)
        {
            Step(n * (b - n) * x / ((a + (2 * n) - 1) * (a + (2 * n))), ref c, ref d, ref value);
            Step(-(a + n) * (a + b + n) * x / ((a + (2 * n)) * (a + (2 * n) + 1)), ref c, ref d, ref value);
            if (Math.Abs((d * c) - 1) < Enough)
                break;
        }
        return value;
    }

    private static void Step(double over, ref double c, ref double d, ref double value)
    {
        d = 1 / GammaFunction.NotZero(1 + (over * d));
        c = GammaFunction.NotZero(1 + (over / c));
        value *= d * c;
    }
}
