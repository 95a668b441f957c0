using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The band that a meter shows, and how a value stands to it.</summary>
public class ExpectationTests
{
    private static readonly ReadingSpec Volts = Reference.Twin160.FindReading("left-full")!;
    private static readonly ReadingSpec Ohms = Reference.Twin160.FindReading("ohms-left")!;
    private static readonly Expectation Uneven = new(Quantity.AcVolts, 10, 9, 12);
    private static readonly Expectation Open = new(
        Quantity.Ohms,
        double.PositiveInfinity,
        double.PositiveInfinity,
        double.PositiveInfinity
    );

    /// <remarks>A limit of 0.8 % + 0.03 V at 17 and 19 V; 1.96/√3 = 1.1316 of it, in quadrature with the half band of 1 V.</remarks>
    [Fact]
    public void A_band_is_widened_by_the_meters_error_in_quadrature()
    {
        var band = Expectation.Of(new PredictedReading(Volts, 18, 17, 19), new MeterError(0.8, 0.03, 0, 0));
        Assert.Equal(18 - Math.Sqrt(1 + Math.Pow(1.1316 * 0.166, 2)), band.Low, 1e-4);
        Assert.Equal(18 + Math.Sqrt(1 + Math.Pow(1.1316 * 0.182, 2)), band.High, 1e-4);
        Assert.Equal(18, band.Value);
    }

    [Fact]
    public void The_leads_are_in_what_an_ohmmeter_shows_and_a_resistance_is_never_negative()
    {
        var band = Expectation.Of(new PredictedReading(Ohms, 0.02, 0.01, 0.03), new MeterError(0, 0.5, 0, 0.2));
        Assert.Equal(0.22, band.Value, 1e-12);
        Assert.Equal(0, band.Low);
        Assert.Equal(0.22 + Math.Sqrt(1e-4 + Math.Pow(1.1316 * 0.5, 2)), band.High, 1e-4);
    }

    [Theory]
    [InlineData(10, Side.Within, 0, 0)]
    [InlineData(9, Side.Within, 1, 1.96)]
    [InlineData(12, Side.Within, 2, 1.96)]
    [InlineData(8.5, Side.Below, 1.5, 2.94)]
    [InlineData(8, Side.Below, 2, 3.92)]
    [InlineData(13, Side.Above, 3, 2.94)]
    [InlineData(14, Side.Above, 4, 3.92)]
    public void A_value_is_judged_by_the_end_on_its_own_side(double value, Side side, double off, double deviations)
    {
        var standing = Uneven.Judge(value);
        Assert.Equal(side, standing.Side);
        Assert.Equal(off, standing.Off, 1e-9);
        Assert.Equal(deviations, standing.Deviations, 1e-3);
        Assert.Equal(deviations > 3, standing.IsClearlyOff);
    }

    [Fact]
    public void Open_where_open_is_expected_is_within_and_a_number_there_is_clearly_below()
    {
        Assert.Equal(new Standing(Side.Within, 0, 0), Open.Judge(double.PositiveInfinity));
        Assert.Equal(Side.Below, Open.Judge(1e6).Side);
        Assert.True(Open.Judge(1e6).IsClearlyOff);
    }

    [Fact]
    public void Open_where_a_number_is_expected_is_clearly_above()
    {
        Assert.Equal(Side.Above, Uneven.Judge(double.PositiveInfinity).Side);
        Assert.True(Uneven.Judge(double.PositiveInfinity).IsClearlyOff);
    }

    [Fact]
    public void What_cannot_be_judged_is_on_no_side()
    {
        var standing = (Uneven with { CanJudge = false }).Judge(40);
        Assert.Equal(Side.NotJudged, standing.Side);
        Assert.False(standing.IsClearlyOff);
    }
}
