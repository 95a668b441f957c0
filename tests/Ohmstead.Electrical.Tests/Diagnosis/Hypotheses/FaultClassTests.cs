using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Hypotheses;

/// <summary>
/// Two faults that no reading tells apart, 1 to 100 Ω with odds of 3 and 10 to 1000 Ω with odds of 1. Expected: log-uniform sizes by hand;
/// the share runs over three decades.
/// </summary>
public class FaultClassTests
{
    private static readonly FaultClass Both = new(0, [Mode(0, "near", 1, 100), Mode(1, "far", 10, 1000)], [3, 1], [0, 1]);

    [Fact]
    public void Its_size_runs_over_both_ranges_by_decades()
    {
        Assert.Equal(1, Both.SizeAt(0), 1e-9);
        Assert.Equal(10, Both.SizeAt(1 / 3.0), 1e-9);
        Assert.Equal(1000, Both.SizeAt(1), 1e-6);
        Assert.Equal(Enumerable.Range(0, 7).Select(k => k / 6.0), Both.PointShares);
    }

    /// <summary>Per decade the first has 3/2 and the second 1/2 of the odds, and four odds over three decades are 4/3.</summary>
    [Theory]
    [InlineData(0.1, 1.5)]
    [InlineData(0.5, 2)]
    [InlineData(0.9, 0.5)]
    public void Where_both_can_be_their_chances_add_up(double share, double perDecade) =>
        Assert.Equal(Math.Log(perDecade / (4 / 3.0)), Both.LogDensity(share), 1e-9);

    [Theory]
    [InlineData(0.1, 0.01, 1, 0)]
    [InlineData(0.5, 0.01, 0.75, 0.25)]
    [InlineData(0.9, 0.01, 0, 1)]
    // At 0.2 − 0.24 (taken as 0), 0.2 and 0.44: the first at all three, the second at the last.
    [InlineData(0.2, 0.2, 0.9, 0.1)]
    // At 0.56, 0.8 and 1.04 (taken as 1): the first at one of three, the second at all.
    [InlineData(0.8, 0.2, 0.5, 0.5)]
    public void Which_of_them_it_is_goes_by_the_size(double share, double deviation, double first, double second)
    {
        var shares = Both.SharesOfModes(share, deviation);
        Assert.Equal(first, shares[0], 1e-9);
        Assert.Equal(second, shares[1], 1e-9);
    }

    [Fact]
    public void A_few_whole_turns_are_tried_one_by_one()
    {
        var turns = new FaultClass(0, [Mode(0, "turns", 1, 4, SizeKind.WholeTurns)], [1], [0]);
        Assert.True(turns.IsDiscrete);
        Assert.Equal([1, 2, 3, 4], turns.PointShares.Select(s => Math.Round(turns.SizeAt(s), 9)));
        var more = new FaultClass(0, [Mode(0, "turns", 3, 8, SizeKind.WholeTurns)], [1], [0]);
        Assert.True(more.IsDiscrete);
        Assert.Equal([3, 4, 5, 6, 7, 8], more.PointShares.Select(s => Math.Round(more.SizeAt(s), 9)));
        Assert.False(new FaultClass(0, [Mode(0, "turns", 3, 9, SizeKind.WholeTurns)], [1], [0]).IsDiscrete);
    }

    private static FaultMode Mode(int number, string element, double min, double max, SizeKind size = SizeKind.Continuous) =>
        new(number, element, number, ElementKind.Resistor, new FaultSpec("drifted", FaultChange.SetsOhms, 1, size, min, max));

    /// <summary>2 to 20 Ω with odds of 3 and 6 to 60 Ω with odds of 1, by hand: both a decade wide, 1.477 decades together.</summary>
    [Theory]
    [InlineData(0.1, 0.01, 1, 0)]
    [InlineData(0.5, 0.01, 0.75, 0.25)]
    [InlineData(0.9, 0.01, 0, 1)]
    // At 0.06, 0.3 and 0.54 of it: 2.4, 5.5 and 12.6 Ω.
    [InlineData(0.3, 0.2, 0.9, 0.1)]
    public void So_it_is_where_sizes_begin_elsewhere(double share, double deviation, double first, double second)
    {
        var both = new FaultClass(0, [Mode(0, "near", 2, 20), Mode(1, "far", 6, 60)], [3, 1], [0, 1]);
        Assert.Equal(2 * Math.Pow(30, share), both.SizeAt(share), 1e-9);
        Assert.Equal([first, second], both.SharesOfModes(share, deviation).Select(s => Math.Round(s, 9)));
        var perDecade = (first > 0 ? 3 : 0) + (second > 0 && deviation < 0.1 ? 1 : 0);
        Assert.Equal(Math.Log(perDecade * Math.Log10(30) / 4), both.LogDensity(share), 1e-9);
    }
}
