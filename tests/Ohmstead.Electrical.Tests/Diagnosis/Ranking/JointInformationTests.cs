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
    [Theory]
    [InlineData(1, 20, 1)]
    [InlineData(0.25, 6, 1)]
    [InlineData(0.25, 6, 9)]
    public void A_narrow_law_is_denser_than_a_wide_one(double narrow, double times, double scale)
    {
        double[] weights = [narrow / (1 + narrow), 1 / (1 + narrow)];
        double[] deviations = [scale, scale * times];
        List<Component> parts = [.. weights.Select((w, s) => new Component(s, w, 0, deviations[s] * deviations[s]))];
        // Σ w·∫ p(t|s)·log₂ p(t|s)/p(t), in steps of a fiftieth of a deviation out to six of the wide one.
        double Law(double t, int s) => Math.Exp(-0.5 * t * t / (deviations[s] * deviations[s])) / deviations[s] / Math.Sqrt(2 * Math.PI);
        double Of(int s) =>
            Enumerable
                .Range((int)(-300 * times), (int)(600 * times) + 1)
                .Select(n => n * scale / 50)
                .Where(t => Law(t, s) > 0)
                .Sum(t => Law(t, s) * Math.Log2(Law(t, s) / ((weights[0] * Law(t, 0)) + (weights[1] * Law(t, 1)))))
            * scale
            / 50;
        var expected = (weights[0] * Of(0)) + (weights[1] * Of(1));
        Assert.Equal(expected, new JointInformation(weights, [0, 1]).With(parts, Out), 0.12);
    }

    /// <summary>
    /// Nine hundred readings of a fifteenth of a deviation each are one reading of two deviations, whichever of the two it is: by the quadrature.
    /// </summary>
    [Theory]
    [InlineData(0.9)]
    [InlineData(0.5)]
    [InlineData(0.1)]
    public void Many_faint_readings_tell_as_much_as_one_that_is_as_sharp_as_all_of_them(double first)
    {
        const int count = 900;
        double[] weights = [first, 1 - first];
        List<Component> Of(double apart) => [new(0, weights[0], 0, 1), new(1, weights[1], apart, 1)];
        var joint = new JointInformation(weights, [0, 1]);
        var bits = 0.0;
        for (var n = 0; n < count; n++)
            bits = joint.With(Of(2 / Math.Sqrt(count)), Out);
        Assert.Equal(Information.Bits(Of(2), Out), bits, 0.1);
    }

    /// <summary>Of 160 draws a scenario has those whose middle lies in its share: one in 320 has just the first, one in 200 too.</summary>
    [Theory]
    [InlineData(319)]
    [InlineData(199)]
    public void A_rare_scenario_is_drawn_by_its_share(double often)
    {
        var bits = new JointInformation([1, often], [0, 1]).With(Apart(0, 1), Out);
        Assert.Equal((Math.Log2(1 + often) + (159 * Math.Log2((1 + often) / often))) / 160, bits, 1e-9);
    }

    /// <summary>One of two is at the far place three times out of four, and else where the other always is: 1 − ⅝·H(⅕) bit.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_scenario_of_several_parts_shows_each_as_often_as_it_weighs(bool isFarFirst)
    {
        Component far = new(0, 0.75, 1000, 1),
            near = new(0, 0.25, 0, 1);
        List<Component> parts = [isFarFirst ? far : near, isFarFirst ? near : far, new(1, 1, 0, 1)];
        var left = -(0.2 * Math.Log2(0.2)) - (0.8 * Math.Log2(0.8));
        Assert.Equal(1 - (0.625 * left), new JointInformation([1, 1], [0, 1]).With(parts, Out), 0.12);
        Assert.Equal(1 - (0.625 * left), Information.Bits(parts, Out), 1e-6);
    }
}
