namespace Ohmstead.Electrical.Reckoning.Probability;

/// <summary>Exact sums of laws of counts: how likely so many, or more, or fewer.</summary>
internal static class CountLaws
{
    /// <summary>Poisson: P(X > k). A sum of Poisson terms is an incomplete gamma function (key abramowitz-stegun, 26.4.21).</summary>
    public static double PoissonAbove(double k, double mean) =>
        k < 0 ? 1
        : mean <= 0 ? 0
        : GammaFunction.Below(Math.Floor(k) + 1, mean);

    /// <summary>
    /// Negative binomial as a Poisson whose yearly rate is gamma(shape, yearsSeen), over so many years: P(X > k), the sum of
    /// Γ(a+j)/(Γ(a)·j!)·(b/(b+t))^a·(t/(b+t))^j beyond k (key abramowitz-stegun, 26.5.26).
    /// </summary>
    public static double GammaPoissonAbove(double k, double shape, double yearsSeen, double years) =>
        k < 0 ? 1
        : shape <= 0 || years <= 0 ? 0
        : BetaFunction.Below(years / (yearsSeen + years), Math.Floor(k) + 1, shape);

    /// <summary>Binomial: P(X ≥ k) among n of chance p (key abramowitz-stegun, 26.5.24).</summary>
    public static double BinomialAtLeast(int k, int n, double p) =>
        k <= 0 ? 1
        : k > n ? 0
        : BetaFunction.Below(p, k, n - k + 1);

    /// <summary>Hypergeometric: P(X ≥ k) marked among the drawn, of so many in all (Fisher's one-sided test; key fisher).</summary>
    public static double HypergeometricAtLeast(int k, int drawn, int marked, int all)
    {
        var (least, most) = (Math.Max(0, drawn + marked - all), Math.Min(drawn, marked));
        if (k <= least)
            return 1;
        // From the outside in: each term from the one before, so that nothing cancels.
        var (sum, term) = (0.0, Math.Exp(LogChoose(marked, k) + LogChoose(all - marked, drawn - k) - LogChoose(all, drawn)));
        for (double x = k; x <= most && term > sum * 1e-17; x++)
        {
            sum += term;
            term *= (marked - x) * (drawn - x) / ((x + 1) * (all - marked - drawn + x + 1));
        }
        return Math.Min(1, sum);
    }

    private static double LogChoose(int n, int k) =>
        k < 0 || k > n
            ? double.NegativeInfinity
            : GammaFunction.LogOf(n + 1.0) - GammaFunction.LogOf(k + 1.0) - GammaFunction.LogOf(n - k + 1.0);
}
