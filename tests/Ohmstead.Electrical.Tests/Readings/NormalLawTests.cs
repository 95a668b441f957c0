using CsCheck;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The normal distribution as the core has it (key numerical-erfc), against Math.NET Numerics and by integration.</summary>
public class NormalLawTests
{
    [Fact]
    public void The_chance_of_a_value_below_is_good_to_a_millionth_of_the_tail() =>
        Gen.Double[-30, 8].Sample(x => Math.Abs((NormalLaw.Below(x) / Normal.CDF(0, 1, x)) - 1) < 1e-6);

    [Fact]
    public void Below_and_above_add_up_to_one() =>
        Gen.Double[-8, 8].Sample(x => Math.Abs(NormalLaw.Below(x) + NormalLaw.Below(-x) - 1) < 2.4e-7);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1.3, 0.25)]
    [InlineData(-2, 9)]
    public void The_density_is_that_of_the_law_of_such_a_variance(double off, double variance)
    {
        Assert.Equal(Normal.PDF(0, Math.Sqrt(variance), off), NormalLaw.Density(off, variance), 1e-12);
        Assert.Equal(Normal.PDF(0, 1, off), NormalLaw.Density(off), 1e-12);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.6)]
    [InlineData(0.8)]
    [InlineData(0.975)]
    [InlineData(0.99994)]
    public void The_place_of_a_share_is_found_from_a_place_below_it(double share) =>
        Assert.Equal(Normal.InvCDF(0, 1, share), NormalLaw.At(share, Math.Max(0, Normal.InvCDF(0, 1, share) - 1)), 5e-4);

    /// <remarks>A gradient without curvature is small, because both come from the same movement of the readings.</remarks>
    [Theory]
    [InlineData(0.5, 0, 0)]
    [InlineData(0.5, 0, 40)]
    [InlineData(0, -3, 40)]
    [InlineData(1, 12, 500)]
    [InlineData(0.2, 0, 4000)]
    [InlineData(0, 0.1, 5e-4)]
    [InlineData(0, -200, 1)]
    [InlineData(1, -20, 3)]
    [InlineData(0, 1, 1.1e-3)]
    [InlineData(0, 1.3, 1.1e-3)]
    [InlineData(0, 4, 0.01)]
    [InlineData(0.5, 12, 0.5)]
    [InlineData(0.5, 2, 0.9)]
    [InlineData(0, -3, 0.9)]
    public void A_parabola_cut_to_the_range_of_a_share_has_its_integral_mean_and_variance(double at, double gradient, double curvature)
    {
        double Log(double u) => (gradient * (u - at)) - (0.5 * curvature * (u - at) * (u - at));
        var most = Enumerable.Range(0, 1001).Max(k => Log(k / 1000.0));
        double Sum(Func<double, double> of) =>
            Enumerable
                .Range(0, 200)
                .Sum(k => GaussLegendreRule.Integrate(u => of(u) * Math.Exp(Log(u) - most), k / 200.0, (k + 1) / 200.0, 10));
        var (integral, mean) = (Sum(_ => 1), Sum(u => u) / Sum(_ => 1));
        var cut = NormalLaw.Cut(at, gradient, curvature);
        Assert.Equal(most + Math.Log(integral), cut.LogIntegral, 0.02);
        Assert.Equal(mean, cut.Mean, 0.002);
        Assert.Equal(Math.Sqrt(Sum(u => (u - mean) * (u - mean)) / integral), Math.Sqrt(cut.Variance), 0.005);
    }

    [Fact]
    public void A_matrix_times_its_inverse_is_one_and_its_determinant_is_that_of_the_factors()
    {
        var random = new Random(3);
        const int n = 12;
        var b = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(n, n, (_, _) => random.NextDouble() - 0.5);
        var a = (b * b.Transpose()) + (0.1 * MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseIdentity(n));
        var inverse = new double[n * n];
        var log = PositiveDefinite.Invert(a.ToRowMajorArray(), inverse, n);
        var symmetric = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(
            n,
            n,
            (i, j) => inverse[(Math.Max(i, j) * n) + Math.Min(i, j)]
        );
        Assert.True(((a * symmetric) - MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseIdentity(n)).L2Norm() < 1e-9);
        Assert.Equal(Math.Log(a.Determinant()), log, 1e-9);
    }
}
