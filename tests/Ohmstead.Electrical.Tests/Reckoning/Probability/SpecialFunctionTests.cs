using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Reckoning.Probability;

namespace Ohmstead.Electrical.Tests.Reckoning.Probability;

/// <summary>Special functions and laws of counts over a grid, against MathNet.Numerics and against plain sums.</summary>
public class SpecialFunctionTests
{
    private static readonly double[] Shapes = [1e-3, 0.1, 0.5, 1, 1.5, 3.5, 10, 47.3, 300, 5000];

    private static void Close(double expected, double ours, double within, string what) =>
        Assert.True(
            Math.Abs(ours - expected) <= within * Math.Abs(expected) + 1e-290,
            FormattableString.Invariant($"{what}: ours {ours:R}, expected {expected:R}")
        );

    [Fact]
    public void The_logarithm_of_the_gamma_function_is_that_of_the_second_program()
    {
        foreach (var x in Shapes)
            Assert.Equal(SpecialFunctions.GammaLn(x), GammaFunction.LogOf(x), 1e-13 * Math.Max(10, Math.Abs(SpecialFunctions.GammaLn(x))));
        // Γ(½) = √π, Γ(6) = 5!.
        Assert.Equal(Math.Log(Math.PI) / 2, GammaFunction.LogOf(0.5), 1e-14);
        Assert.Equal(Math.Log(120), GammaFunction.LogOf(6), 1e-14);
    }

    [Fact]
    public void Incomplete_gamma_functions_are_those_of_the_second_program_on_both_sides()
    {
        foreach (var a in Shapes)
        foreach (var share in new[] { 0.01, 0.3, 0.9, 1, 1.1, 3, 20 })
        {
            var x = a * share;
            Close(
                SpecialFunctions.GammaLowerRegularized(a, x),
                GammaFunction.Below(a, x),
                1e-9,
                FormattableString.Invariant($"P({a}, {x})")
            );
            Close(1, GammaFunction.Below(a, x) + GammaFunction.Above(a, x), 1e-12, "P + Q");
        }
        // Q(1, x) = e^−x, far out where 1 − P would hold no digit.
        Close(Math.Exp(-60), GammaFunction.Above(1, 60), 1e-12, "Q(1, 60)");
        Close(Math.Exp(-1e-3), GammaFunction.Above(1, 1e-3), 1e-12, "Q(1, 0.001)");
    }

    [Fact]
    public void The_incomplete_beta_function_is_that_of_the_second_program()
    {
        foreach (var a in Shapes)
        foreach (var b in Shapes)
        foreach (var x in new[] { 1e-6, 0.05, 0.3, 0.5, 0.77, 0.99 })
        {
            var ours = BetaFunction.Below(x, a, b);
            Assert.Equal(SpecialFunctions.BetaRegularized(a, b, x), ours, 2e-9);
            // Its two ends are each other's mirror.
            Assert.Equal(1 - ours, BetaFunction.Below(1 - x, b, a), 1e-10);
        }
        // I_x(1, b) = 1 − (1 − x)^b.
        Close(1 - Math.Pow(0.7, 4.5), BetaFunction.Below(0.3, 1, 4.5), 1e-13, "I");
        Assert.Equal((0.0, 1.0), (BetaFunction.Below(0, 2, 3), BetaFunction.Below(1, 2, 3)));
    }

    [Fact]
    public void A_Poisson_tail_is_the_sum_of_its_terms()
    {
        foreach (var mean in new[] { 0.01, 0.5, 4.2, 37 })
        foreach (var k in new[] { 0, 1, 5, 40, 90 })
            Close(
                Enumerable.Range(k + 1, 300).Sum(n => new Poisson(mean).Probability(n)),
                CountLaws.PoissonAbove(k, mean),
                1e-10,
                FormattableString.Invariant($"P(X > {k} | {mean})")
            );
        Assert.Equal((1, 0), (CountLaws.PoissonAbove(-1, 3), CountLaws.PoissonAbove(0, 0)));
        Assert.Equal(CountLaws.PoissonAbove(2, 4), CountLaws.PoissonAbove(2.5, 4));
    }

    [Fact]
    public void A_gamma_Poisson_tail_is_the_sum_of_its_terms()
    {
        foreach (var (a, b, t) in new[] { (0.5, 1.0, 0.1), (12, 0.6, 0.0685), (12, 0.6, 0.164), (3.5, 0.2, 2) })
        foreach (var k in new[] { 0, 1, 4, 20 })
            Close(
                Enumerable.Range(k + 1, 4000).Sum(n => new NegativeBinomial(a, b / (b + t)).Probability(n)),
                CountLaws.GammaPoissonAbove(k, a, b, t),
                1e-9,
                FormattableString.Invariant($"{a} {b} {t} > {k}")
            );
        Assert.Equal(
            (1, 0, 0),
            (CountLaws.GammaPoissonAbove(-1, 1, 1, 1), CountLaws.GammaPoissonAbove(0, 0, 1, 1), CountLaws.GammaPoissonAbove(0, 1, 1, 0))
        );
    }

    [Fact]
    public void Binomial_and_hypergeometric_tails_are_the_sums_of_their_terms()
    {
        foreach (var (n, p) in new[] { (9, 0.065), (40, 0.5), (3, 0.99) })
            for (var k = 0; k <= n + 1; k++)
                Assert.Equal(
                    Enumerable.Range(k, Math.Max(0, n + 1 - k)).Sum(x => new Binomial(p, n).Probability(x)),
                    CountLaws.BinomialAtLeast(k, n, p),
                    1e-12
                );
        foreach (var (drawn, marked, all) in new[] { (9, 7, 73), (50, 20, 60), (5, 5, 5), (0, 3, 9) })
            for (var k = 0; k <= marked + 1; k++)
                Assert.Equal(
                    Enumerable
                        .Range(k, marked + 2)
                        .Where(x => x <= Math.Min(drawn, marked))
                        .Sum(x => new Hypergeometric(all, marked, drawn).Probability(x)),
                    CountLaws.HypergeometricAtLeast(k, drawn, marked, all),
                    1e-10
                );
    }
}
