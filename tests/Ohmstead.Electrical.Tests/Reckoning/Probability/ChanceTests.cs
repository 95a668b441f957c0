using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Reckoning.Probability;

namespace Ohmstead.Electrical.Tests.Reckoning.Probability;

/// <summary>The laws that answers print, over a grid, against Math.NET Numerics.</summary>
public class ChanceTests
{
    [Fact]
    public void The_normal_law_is_exact_in_its_tails_too()
    {
        for (var x = -20.0; x <= 8; x += 0.37)
            Assert.Equal(1, NormalFunction.Below(x) / (0.5 * SpecialFunctions.Erfc(-x / Math.Sqrt(2))), 1e-11);
    }

    [Fact]
    public void The_place_of_a_share_of_the_normal_law_is_found()
    {
        foreach (var share in new[] { 1e-12, 1e-4, 0.01, 0.3, 0.5, 0.8, 0.999 })
            Assert.Equal(Normal.InvCDF(0, 1, share), NormalFunction.At(share), 1e-7);
    }

    /// <remarks>
    /// GUM H.1 (JCGM 100; check value 9.2, components seen, the rest from memory): 25, 16.599, 6.7, 5.8, 3.9 and 2.887 nm are 32 (31.66) nm
    /// together; with 16 degrees of freedom 99 % lie within 2.92 of them, 93 nm.
    /// </remarks>
    [Fact]
    public void Components_of_the_guides_gauge_block_add_by_their_squares_and_spread_by_students_t()
    {
        double[] scatter = [16.599, 6.7, 5.8, 3.9, 2.887];
        var law = new MeterErrorLaw(25 * Math.Sqrt(3), Math.Sqrt(scatter.Sum(s => s * s)));
        Assert.Equal(31.66, law.StandardUncertainty, 0.005);
        Assert.Equal(2.92, StudentLaw.At(0.01, 16), 0.005);
        Assert.Equal(93, StudentLaw.At(0.01, 16) * 32, 0.5);
    }

    [Fact]
    public void Students_t_has_its_chance_and_its_place()
    {
        foreach (var degrees in new[] { 1, 2.5, 7, 18, 200 })
        foreach (var t in new[] { 0.1, 1, 2.7, 9 })
        {
            var outside = 2 * StudentT.CDF(0, 1, degrees, -t);
            Assert.Equal(1, StudentLaw.Outside(t, degrees) / outside, 1e-8);
            Assert.Equal(t, StudentLaw.At(outside, degrees), 1e-7 * (1 + t));
        }
    }
}
