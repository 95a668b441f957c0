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
    [InlineData(3)]
    [InlineData(2.5)]
    [InlineData(2)]
    public void Of_one_reading_it_is_what_the_quadrature_gives(double apart)
    {
        List<Component> parts = [new(0, 1, 0, 1), new(1, 1, apart, 1)];
        Assert.Equal(Information.Bits(parts, Out), new JointInformation([1, 1], [0, 1]).With(parts, Out), 0.1);
    }

    private static List<Component> Apart(params double[] means) => [.. means.Select((m, s) => new Component(s, 1, 1000 * m, 1))];
}
