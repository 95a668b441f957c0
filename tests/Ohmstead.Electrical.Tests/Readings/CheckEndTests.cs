using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The three ends of a check, and the stricter of two limits.</summary>
public class CheckEndTests
{
    private static readonly ReadingSpec Insulation = Reference.Twin160.FindReading("insulation-core")!;
    private static readonly ReadingSpec Blades = Reference.Twin160.FindReading("blades")!;

    /// <remarks>
    /// At least 2 MΩ, ± (5 % + 20 kΩ): v − 0.05v − 20 kΩ ≥ 2 MΩ from v = 2.02/0.95 = 2.12632 MΩ on; below 2 MΩ the value itself is
    /// outside, whatever the meter.
    /// </remarks>
    [Theory]
    [InlineData(20e3, CheckEnd.Failed)]
    [InlineData(1.99e6, CheckEnd.Failed)]
    [InlineData(2.01e6, CheckEnd.TooClose)]
    [InlineData(2.12e6, CheckEnd.TooClose)]
    [InlineData(2.13e6, CheckEnd.Passed)]
    [InlineData(double.PositiveInfinity, CheckEnd.Passed)]
    public void A_lower_limit_has_three_ends(double value, CheckEnd end) =>
        Assert.Equal(end, CheckJudge.EndOf(Insulation, value, Meter.Usual.For(Quantity.InsulationOhms)));

    /// <remarks>2.8 to 5.2 Ω, leads of 0.2 Ω in the value, ± (0.8 % + 0.05 Ω).</remarks>
    [Theory]
    [InlineData(2.9, CheckEnd.Failed)]
    [InlineData(3.05, CheckEnd.TooClose)]
    [InlineData(3.2, CheckEnd.Passed)]
    [InlineData(5.35, CheckEnd.TooClose)]
    [InlineData(5.45, CheckEnd.Failed)]
    [InlineData(double.PositiveInfinity, CheckEnd.Failed)]
    public void Leads_are_taken_off_before_limits_are_looked_at(double value, CheckEnd end) =>
        Assert.Equal(end, CheckJudge.EndOf(Blades, value, new MeterError(0.8, 0.05, 0, 0.2)));

    /// <summary>2 to 5 Ω, ± 0.25 Ω, all of them sums of powers of two: what reaches just to a limit passes.</summary>
    [Theory]
    [InlineData(2, CheckEnd.TooClose)]
    [InlineData(2.25, CheckEnd.Passed)]
    [InlineData(4.75, CheckEnd.Passed)]
    [InlineData(5, CheckEnd.TooClose)]
    [InlineData(1.9, CheckEnd.Failed)]
    [InlineData(5.1, CheckEnd.Failed)]
    public void A_value_that_reaches_just_to_a_limit_is_inside(double value, CheckEnd end) =>
        Assert.Equal(end, CheckJudge.EndOf(Blades with { Limits = new(2, 5) }, value, new MeterError(0, 0.25, 0, 0)));

    [Fact]
    public void Of_two_limits_the_stricter_counts_at_each_end_and_keeps_its_source()
    {
        var both = new Limits(2, 10).With(new Limits(3, 12) { MinSource = LimitSource.Shop, MaxSource = LimitSource.Shop });
        Assert.Equal((3, LimitSource.Shop, 10, LimitSource.TypeSheet), (both.Min, both.MinSource, both.Max, both.MaxSource));
        Assert.Equal(new Limits(2, 10), new Limits(2, 10).With(new Limits(2, 10) { MinSource = LimitSource.Shop }));
    }
}
