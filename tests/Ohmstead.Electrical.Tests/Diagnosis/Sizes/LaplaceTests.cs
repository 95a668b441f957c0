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
}
