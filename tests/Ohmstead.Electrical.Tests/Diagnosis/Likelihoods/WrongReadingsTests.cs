using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Likelihoods;

/// <summary>
/// A reading of 60 V on a meter of ± 0.5 V, wrong with a chance of 0.02. Expected by hand: its slips put it at one place each, with the
/// shares of docs/methods/diagnosis.md (common practice, no source); the normal density is 1/√(2π) at its top.
/// </summary>
public class WrongReadingsTests
{
    private const double Chance = 0.02;
    private static readonly double Top = 1 / Math.Sqrt(2 * Math.PI);
    private static readonly WrongReadings Wrong = new([(60, new MeterError(0, 0.5, 0, 0))], Chance);

    // On the scale 60 V is 120; what was meant is 12, 1200, 0.12, 120000, −120 then, and what was noted is off from it by the difference.
    [Theory]
    [InlineData(12, 0.16, 10)]
    [InlineData(1200, 0.16, 1)]
    [InlineData(0.12, 0.03, 1000)]
    [InlineData(120000, 0.03, 1)]
    [InlineData(-120, 0.03, 1)]
    public void A_slip_speaks_at_the_place_where_it_puts_the_value(double meant, double share, double thinner)
    {
        var at = Wrong.LogDensity(0, 120 - meant, 1);
        // Ten times as large is also ten times as thin; a tenth is never denser than what was meant.
        Assert.Equal(Math.Log(Chance * ((share / thinner * Top) + (0.5 / 300))), at, 1e-6);
    }

    [Fact]
    public void Anywhere_else_it_says_next_to_nothing() => Assert.Equal(Math.Log(Chance * 0.5 / 300), Wrong.LogDensity(0, 50, 1), 1e-9);

    [Fact]
    public void By_itself_no_reading_says_more_than_a_slip_lets_it()
    {
        Assert.Equal(Math.Log((0.98 * 0.3) + (0.02 / 300)), Wrong.LogOfOne(0.3), 1e-12);
        Assert.Equal(Math.Log(0.02 / 300), Wrong.LogOfOne(0), 1e-12);
    }

    [Fact]
    public void Shares_say_which_slip_it_is()
    {
        var shares = Wrong.Shares(0, 120 - 1200, 1);
        Assert.Equal(0.16 * Top, shares[1], 1e-9);
        Assert.Equal(0.5 / 300, shares[^1], 1e-12);
        Assert.Equal(0, shares[0] + shares[2] + shares[3] + shares[4], 1e-12);
    }

    /// <summary>40 V beside the 60: its own slips, ten times what was meant (4 V: 8 on the scale) and the others, are its own.</summary>
    [Fact]
    public void Every_reading_has_slips_of_its_own()
    {
        var two = new WrongReadings([(60, new MeterError(0, 0.5, 0, 0)), (40, new MeterError(0, 0.5, 0, 0))], Chance);
        Assert.Equal(Math.Log(Chance * ((0.16 / 10 * Top) + (0.5 / 300))), two.LogDensity(1, 80 - 8, 1), 1e-6);
        Assert.Equal(Math.Log(Chance * 0.5 / 300), two.LogDensity(1, 120 - 12, 1), 1e-9);
        var shares = two.Shares(1, 80 - 8, 1);
        Assert.Equal(0.16 / 10 * Top, shares[0], 1e-9);
        Assert.Equal(0, shares[1..^1].Sum(), 1e-9);
        Assert.Equal(0.03 * Top, two.Shares(1, 80 + 80, 1)[4], 1e-9);
        Assert.Equal(0.16 / 10 * Top, two.Shares(0, 120 - 12, 1)[0], 1e-9);
        // Half as far as the nearest slip it is worth a look, and where it is wildly off.
        Assert.Equal(Math.Log(Chance * 0.5 / 300), two.LogAnywhere, 1e-12);
        Assert.False(two.IsWorthALook(1, 35.9, 0));
        Assert.True(two.IsWorthALook(1, 36.1, 0));
        Assert.True(two.IsWorthALook(1, 1, -two.LogAnywhere - 6.9));
        Assert.False(two.IsWorthALook(1, 1, -two.LogAnywhere - 7.1));
    }

    /// <summary>Beside its place it speaks by the normal law of what the others expect: √(p/2π)·exp(−½·p·d²).</summary>
    [Theory]
    [InlineData(0.7, 2.5)]
    [InlineData(-1.3, 0.4)]
    public void A_slip_speaks_the_less_the_farther_it_lies_beside_its_place(double beside, double precision)
    {
        var density = 0.16 * Math.Sqrt(precision / (2 * Math.PI)) * Math.Exp(-0.5 * precision * beside * beside);
        Assert.Equal(density, Wrong.Shares(0, 120 - 1200 + beside, precision)[1], 1e-12);
        Assert.Equal(Math.Log(Chance * (density + (0.5 / 300))), Wrong.LogDensity(0, 120 - 1200 + beside, precision), 1e-9);
    }

    /// <summary>A meter of 1 % and ± 0.1 V: what a slip thins out at 60 V is not what it does at 2 V, and each reading has its own.</summary>
    [Fact]
    public void Where_the_limit_grows_with_the_value_each_reading_is_thinned_by_its_own()
    {
        var error = new MeterError(1, 0.1, 0, 0);
        var two = new WrongReadings([(60, error), (2, error)], Chance);
        foreach (var (k, value) in new[] { (0, 60.0), (1, 2.0) })
        {
            // Noted ten times too high: the limits of what was noted and of what was meant, over ten.
            var (noted, meant) = ((0.01 * value) + 0.1, (0.01 * value / 10) + 0.1);
            var off = error.ToScale(value) - error.ToScale(value / 10);
            Assert.Equal(0.16 * noted / meant / 10 * Top, two.Shares(k, off, 1)[0], 1e-9);
            Assert.Equal(Math.Log(Chance * ((0.16 * noted / meant / 10 * Top) + (0.5 / 300))), two.LogDensity(k, off, 1), 1e-3);
        }
    }
}
