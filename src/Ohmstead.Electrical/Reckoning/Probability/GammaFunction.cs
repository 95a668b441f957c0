namespace Ohmstead.Electrical.Reckoning.Probability;

/// <summary>The logarithm of the gamma function and its incomplete integrals. Tests hold them against a second program over a grid.</summary>
internal static class GammaFunction
{
    private const int MostTerms = 200_000;
    private const double Enough = 1e-16;
    private const double Tiny = 1e-300;

    /// <summary>Lanczos' coefficients for g = 7 (key lanczos).</summary>
    private static readonly double[] Lanczos =
    [
        0.99999999999980993,
        676.5203681218851,
        -1259.1392167224028,
        771.32342877765313,
        -176.61502916214059,
        12.507343278686905,
        -0.13857109526572012,
        9.9843695780195716e-6,
        1.5056327351493116e-7,
    ];

    /// <summary>ln Γ(x) for x above 0; relative error of Γ below 1e-14 up to some hundreds.</summary>
    public static double LogOf(double x)
    {
        // Below one half the series is far from its place: Γ(x) = Γ(x + 1)/x.
        if (x < 0.5)
            return LogOf(x + 1) - Math.Log(x);
        var sum = Lanczos[0];
        for (var n = 1; n < Lanczos.Length; n++)
            sum += Lanczos[n] / (x - 1 + n);
        var t = x + 6.5;
        return (0.5 * Math.Log(2 * Math.PI)) + ((x - 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }

    /// <summary>P(a, x) = ∫₀ˣ t^(a−1)·e^(−t) dt / Γ(a), for a above 0 and x at least 0.</summary>
    public static double Below(double a, double x) => x < a + 1 ? Series(a, x) : 1 - Fraction(a, x);

    /// <summary>Q(a, x) = 1 − P(a, x), exact where it is small.</summary>
    public static double Above(double a, double x) => x < a + 1 ? 1 - Series(a, x) : Fraction(a, x);

    private static double Front(double a, double x) => Math.Exp((a * Math.Log(x)) - x - LogOf(a));

    /// <summary>The power series of P (key abramowitz-stegun, 6.5.29).</summary>
    private static double Series(double a, double x)
    {
        if (x <= 0)
            return 0;
        var term = 1 / a;
        var sum = term;
        for (var n = 1; n < MostTerms && term > sum * Enough; n++)
        {
            term *= x / (a + n);
            sum += term;
        }
        return sum * Front(a, x);
    }

    /// <summary>The continued fraction of Q (key abramowitz-stegun, 6.5.31), in even form, by Lentz' method.</summary>
    private static double Fraction(double a, double x)
    {
        var b = x + 1 - a;
        var c = 1 / Tiny;
        var d = 1 / b;
        var value = d;
        for (var n = 1; n < MostTerms; n++)
        {
            var over = -n * (n - a);
            b += 2;
            d = 1 / NotZero((over * d) + b);
            c = NotZero(b + (over / c));
            value *= d * c;
            if (Math.Abs((d * c) - 1) < Enough)
                break;
        }
        return value * Front(a, x);
    }

    internal static double NotZero(double v) => Math.Abs(v) < Tiny ? Tiny : v;
}
