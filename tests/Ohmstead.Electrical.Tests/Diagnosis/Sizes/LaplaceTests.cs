using MathNet.Numerics.Integration;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Sizes;

namespace Ohmstead.Electrical.Tests.Diagnosis.Sizes;

/// <summary>Integrals over sizes that trade off against each other. Expected: a grid of Gauss–Legendre squares (MathNet).</summary>
public class LaplaceTests
{
    /// <summary>Two resistances in series that add up to what was read: a ridge, from its top and from beside it.</summary>
    [Theory]
    [InlineData(0.4, 0.5, 0.4, 0.5)]
    [InlineData(0.4, 0.5, 0.45, 0.47)]
    [InlineData(0.4, 0.5, 0.3, 0.55)]
    public void What_a_size_says_of_the_next_counts_also_beside_the_top(double topX, double topY, double x, double y)
    {
        // ln L = −½ ((x − topX) + (y − topY))²/0.02² − ½ (x − topX)²/0.2².
        var (a, b) = (1 / (0.02 * 0.02), 1 / (0.2 * 0.2));
        double Log(double u, double v) => (-0.5 * a * Math.Pow(u - topX + v - topY, 2)) - (0.5 * b * Math.Pow(u - topX, 2));
        var sum = x - topX + y - topY;
        double[] gradient = [(-a * sum) - (b * (x - topX)), -a * sum];
        double[] curvature = [a + b, a, a, a];
        var exact = 0.0;
        for (var n = 0; n < 40; n++)
        for (var m = 0; m < 40; m++)
            exact += GaussLegendreRule.Integrate(
                (u, v) => Math.Exp(Log(u, v) - Log(x, y)),
                n / 40.0,
                (n + 1) / 40.0,
                m / 40.0,
                (m + 1) / 40.0,
                16
            );
        Assert.Equal(Math.Log(exact), Laplace.LogIntegral([x, y], gradient, curvature), 0.05);
    }

    /// <summary>Three sizes well within their ranges: ½·ln((2π)³/det A), the normal integral.</summary>
    [Fact]
    public void Three_sizes_that_trade_off_integrate_to_the_normal_law()
    {
        // A = 10⁴·(2 1 0.5; 1 3 1; 0.5 1 4), whose determinant is 10¹²·18.25.
        double[] curvature = [2e4, 1e4, 0.5e4, 1e4, 3e4, 1e4, 0.5e4, 1e4, 4e4];
        var expected = 0.5 * ((3 * Math.Log(2 * Math.PI)) - Math.Log(18.25e12));
        Assert.Equal(expected, Laplace.LogIntegral([0.5, 0.4, 0.6], [0, 0, 0], curvature), 1e-6);
    }

    /// <summary>Four sizes that all trade off, from beside their best: ½·gᵀA⁻¹g + ½·ln((2π)⁴/det A), worked out by Math.NET.</summary>
    [Fact]
    public void Four_sizes_integrate_to_the_normal_law_also_beside_the_top()
    {
        var a = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(
            new[,]
            {
                { 5e4, 2e4, 1e4, -1e4 },
                { 2e4, 6e4, 1.5e4, 0.5e4 },
                { 1e4, 1.5e4, 4e4, 2.5e4 },
                { -1e4, 0.5e4, 2.5e4, 7e4 },
            }
        );
        var g = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense([300, -200, 250, 150]);
        var expected = (0.5 * g.DotProduct(a.Inverse() * g)) + (0.5 * ((4 * Math.Log(2 * Math.PI)) - Math.Log(a.Determinant())));
        Assert.Equal(expected, Laplace.LogIntegral([0.5, 0.4, 0.6, 0.5], [.. g], a.ToRowMajorArray()), 1e-5);
    }

    /// <summary>The variance of each with the others free is the inverse's diagonal: 11, 7.75 and 5 over 18.25, of A plus the range's own 4.</summary>
    [Fact]
    public void Deviations_are_those_with_the_others_free()
    {
        double[] curvature = [2e6, 1e6, 0.5e6, 1e6, 3e6, 1e6, 0.5e6, 1e6, 4e6];
        double[] cofactors = [11, 7.75, 5];
        var deviations = Laplace.Deviations(curvature, 3);
        for (var k = 0; k < 3; k++)
            Assert.Equal(Math.Sqrt(cofactors[k] / 18.25e6), deviations[k], 1e-5 * deviations[k]);
    }

    /// <summary>A size that nothing fixes lies anywhere in its range: half of it is its deviation.</summary>
    [Fact]
    public void What_nothing_fixes_deviates_by_half_the_range()
    {
        Assert.Equal([0.5], Laplace.Deviations([0], 1));
        Assert.Equal(
            [0.5, 1 / Math.Sqrt(104)],
            Laplace.Deviations([0, 0, 0, 100], 2).Select(d => Math.Round(d, 12)),
            (a, b) => Math.Abs(a - b) < 1e-9
        );
    }
}
