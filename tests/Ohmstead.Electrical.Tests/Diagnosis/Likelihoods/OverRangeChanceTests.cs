using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Likelihoods;

/// <summary>
/// The chance of OL in closed form. By docs/methods/diagnosis.md (common practice, no source): the range is 20 MΩ; in 1 unit of 12 all breaks
/// are four times wider, give or take 0.3 of the logarithm; the limit itself is good to 1 %; an OL that nothing explains costs a
/// tenth of a nat for each e-fold below the range.
/// </summary>
public class OverRangeChanceTests
{
    private const double WrongChance = 0.02;
    private const double Wide = 1.0 / 12;
    private readonly Evidence evidence;
    private readonly double limit;
    private readonly double fold;

    public OverRangeChanceTests()
    {
        var unit = Parts(("w1", "a", "b", 1), ("w2", "b", "c", 1))
            .Element("insulation", "ins", "b", "case", new { ohms = 1e9 })
            .Reading("first", "ohms", ["a", "b"])
            .Reading("second", "ohms", ["b", "c"])
            .Reading("leak", "insulation-ohms", ["a", "case"])
            .Unit();
        evidence = new Evidence(
            new ReadingLibrary(unit.Model),
            WireBench.Unit(unit, [OL(unit, "first"), OL(unit, "second"), OL(unit, "leak")]),
            WrongChance
        );
        limit = evidence.Set.ToScale(0, 20e6);
        fold = limit - evidence.Set.ToScale(0, 20e6 / Math.E);
    }

    /// <summary>By e-folds of the predicted ohms below the range, for both readings; the leak is far above its own.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.01, 0.02)]
    [InlineData(0.7, 0.7)]
    [InlineData(1.2, 1.5)]
    [InlineData(1.5, 0.01)]
    [InlineData(1.9, 1.7)]
    [InlineData(3, 6)]
    [InlineData(-1, 9)]
    public void All_breaks_of_a_unit_are_wide_or_none_is(double first, double second)
    {
        var work = new OverRangeWork();
        double[] predicted = [limit - (first * fold), limit - (second * fold), evidence.Measured(2) + 100];
        var chance = evidence.OverRange.LogChance(predicted, Spread(0, 0), work);
        double Usual(double folds) => Above(-folds / 0.01) + Wrong(folds);
        double IfWide(double folds) => Above((Math.Log(4) - folds) / 0.3) + Wrong(folds);
        var (usual, wide) = ((1 - Wide) * Usual(first) * Usual(second), Wide * IfWide(first) * IfWide(second));
        Assert.Equal(Math.Log(usual + wide), chance, 1e-4);
        // What explains less than being wrong does is left out, in the likelier of the two ways.
        bool IsLeftOut(double folds) =>
            wide < usual ? Above(-folds / 0.01) < Wrong(folds) : Above((Math.Log(4) - folds) / 0.3) < Wrong(folds);
        Assert.Equal((IsLeftOut(first), IsLeftOut(second), false), (work.IsLeftOut[0], work.IsLeftOut[1], work.IsLeftOut[2]));
    }

    /// <summary>The reading's own spread widens both, and a shift of the mean moves them.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(1.1)]
    [InlineData(1.6)]
    public void Slope_and_curvature_are_those_of_the_likelier_way(double below)
    {
        const double sigma = 0.4,
            shift = 0.1;
        var work = new OverRangeWork();
        double[] predicted = [limit - (below * fold), limit + (9 * fold), evidence.Measured(2) + 100];
        var chance = evidence.OverRange.LogChance(predicted, Spread(sigma * fold, shift * fold), work);
        double Way(double more, double deviation) => Above((shift - below + more) / Math.Sqrt((sigma * sigma) + (deviation * deviation)));
        double usual = Way(0, 0.01),
            wide = Way(Math.Log(4), 0.3);
        Assert.Equal(Math.Log(((1 - Wide) * (usual + Wrong(below))) + (Wide * (wide + Wrong(below)))), chance, 1e-4);
        // d ln Φ/dx = φ/Φ = λ, −d² = λ(λ + x), in the scale of the way that is the likelier.
        var isWide = Wide * wide > (1 - Wide) * usual;
        var deviation = fold * Math.Sqrt((sigma * sigma) + Math.Pow(isWide ? 0.3 : 0.01, 2));
        var x = fold * (shift - below + (isWide ? Math.Log(4) : 0)) / deviation;
        var ratio = Normal.PDF(0, 1, x) / Above(x);
        var right = Above(x) / (Above(x) + Wrong(below));
        Assert.Equal(right * ratio / deviation, work.Slope[0], 1e-3 * ratio / deviation);
        Assert.Equal(
            right * ratio * (ratio + x) / (deviation * deviation),
            work.Curvature[0],
            1e-3 * ratio * ratio / (deviation * deviation)
        );
        Assert.Equal(below > 1, isWide);
    }

    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(1.0, 0.5)]
    [InlineData(1.8, 0.2)]
    [InlineData(-0.2, 0.1)]
    public void By_itself_it_has_the_same_chance_at_its_own_variance(double below, double sigma)
    {
        double Way(double more, double deviation) => Above((more - below) / Math.Sqrt((sigma * sigma) + (deviation * deviation)));
        var expected = ((1 - Wide) * Way(0, 0.01)) + (Wide * Way(Math.Log(4), 0.3)) + (WrongChance * 0.5 / 300);
        Assert.Equal(Math.Log(expected), evidence.OverRange.LogChanceOf(0, limit - (below * fold), sigma * sigma * fold * fold), 1e-4);
        // A leak is no break, and none of it is wide.
        var (top, step) = (evidence.Measured(2), evidence.Measured(2) - evidence.Set.ToScale(2, 1e9 / Math.E));
        Assert.Equal(
            Math.Log(Above(-below / Math.Sqrt((sigma * sigma) + 1e-4)) + (WrongChance * 0.5 / 300)),
            evidence.OverRange.LogChanceOf(2, top - (below * step), sigma * sigma * step * step),
            1e-4
        );
    }

    /// <summary>ln 4 and two deviations of 0.3 below the range a wide break may still show OL.</summary>
    [Fact]
    public void As_far_below_the_range_as_a_wide_break_reaches_it_may_show_OL()
    {
        var reach = Math.Log(4) + 0.6;
        Assert.True(evidence.OverRange.IsLifted(0, limit - ((reach - 0.01) * fold)));
        Assert.False(evidence.OverRange.IsLifted(0, limit - ((reach + 0.01) * fold)));
    }

    private static double Above(double x) => Normal.CDF(0, 1, x);

    private static double Wrong(double below) => WrongChance * 0.5 / 300 * Math.Exp(-0.1 * Math.Max(0, below));

    private Spread Spread(double first, double shift)
    {
        var slopes = new double[evidence.Set.Count * evidence.Set.Model.Parameters.Length];
        slopes[0] = first;
        return evidence.SpreadOf(slopes, [shift, 0, 0]);
    }
}
