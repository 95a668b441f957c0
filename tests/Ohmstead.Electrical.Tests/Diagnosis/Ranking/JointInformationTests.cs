using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Ranking;

namespace Ohmstead.Electrical.Tests.Diagnosis.Ranking;

/// <summary>What readings together tell: never the sum where they say the same.</summary>
public class JointInformationTests
{
    private const double Out = 1e9;

    [Fact]
    public void A_second_reading_that_says_the_same_adds_nothing()
    {
        var joint = new JointInformation([1, 1], [0, 1]);
        Assert.Equal(1, joint.With(Apart(0, 1), Out), 1e-6);
        Assert.Equal(1, joint.With(Apart(0, 1), Out), 1e-6);
    }

    [Fact]
    public void Two_readings_that_each_halve_four_scenarios_tell_two_bits()
    {
        var joint = new JointInformation([1, 1, 1, 1], [0, 1, 2, 3]);
        Assert.Equal(1, joint.With(Apart(0, 0, 1, 1), Out), 1e-6);
        Assert.Equal(2, joint.With(Apart(0, 1, 0, 1), Out), 1e-6);
    }

    [Fact]
    public void A_scenario_without_parts_shows_what_its_base_shows()
    {
        var joint = new JointInformation([1, 1, 2], [0, 1, 0]);
        // The third is told from the second (with the first: 3 to 1), not from the first: H(1/4) = 0.811278 bit (key cover-thomas).
        Assert.Equal(0.811278, joint.With(Apart(0, 1), Out), 1e-5);
    }

    [Fact]
    public void OL_is_one_answer()
    {
        var joint = new JointInformation([1, 1, 2], [0, 1, 2]);
        // Two of three are above the range and look the same: H(1/4).
        Assert.Equal(0.811278, joint.With(Apart(0, 2, 5), 100), 1e-5);
    }

    /// <summary>The quadrature for one reading and the draws for several are two ways to one number.</summary>
    [Theory]
    [InlineData(3, 1)]
    [InlineData(2.5, 1)]
    [InlineData(2, 1)]
    [InlineData(30, 100)]
    [InlineData(0.2, 0.01)]
    public void Of_one_reading_it_is_what_the_quadrature_gives(double apart, double variance)
    {
        List<Component> parts = [new(0, 1, 0, variance), new(1, 1, apart, variance)];
        Assert.Equal(Information.Bits(parts, Out), new JointInformation([1, 1], [0, 1]).With(parts, Out), 0.1);
    }

    private static List<Component> Apart(params double[] means) => [.. means.Select((m, s) => new Component(s, 1, 1000 * m, 1))];

    /// <summary>A narrow and a wide one about the same place: what is shown in the middle speaks for the narrow one, the more so the denser it is.</summary>
    [Fact]
    public void A_narrow_law_is_denser_than_a_wide_one()
    {
        List<Component> parts = [new(0, 1, 0, 1), new(1, 1, 0, 400)];
        // Σ ½∫ p(t|s)·log₂ p(t|s)/p(t), in steps of 0.01 out to six deviations.
        static double Law(double t, double deviation) => Math.Exp(-0.5 * t * t / (deviation * deviation)) / deviation;
        double Of(double deviation) =>
            Enumerable
                .Range(-12000, 24001)
                .Select(n => n / 100.0)
                .Where(t => Law(t, deviation) > 0)
                .Sum(t => Law(t, deviation) * Math.Log2(Law(t, deviation) / (0.5 * (Law(t, 1) + Law(t, 20)))))
            * 0.01
            / Math.Sqrt(2 * Math.PI);
        Assert.Equal((Of(1) + Of(20)) / 2, new JointInformation([1, 1], [0, 1]).With(parts, Out), 0.12);
    }
}
