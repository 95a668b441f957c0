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
    [InlineData(9, Side.Within, 0, 1.96)]
    [InlineData(12, Side.Within, 0, 1.96)]
    [InlineData(8.5, Side.Below, 0.5, 2.94)]
    [InlineData(8, Side.Below, 1, 3.92)]
    [InlineData(13, Side.Above, 1, 2.94)]
    [InlineData(14, Side.Above, 2, 3.92)]
    public void A_value_is_judged_by_the_end_on_its_own_side(double value, Side side, double off, double deviations)
    {
        var standing = Uneven.Judge(value);
        Assert.Equal(side, standing.Side);
        Assert.Equal(off, standing.Off, 1e-9);
        Assert.Equal(deviations, standing.Deviations, 1e-3);
        Assert.Equal(deviations > 3, standing.IsClearlyOff);
    }

    /// <summary>A ratio has no sign: of the wrong sign nothing is "so many times" off, and nothing at all is more times off than any factor.</summary>
    [Theory]
    [InlineData(3, 3)]
    [InlineData(24, 2)]
    [InlineData(-3, 0)]
    public void How_many_times_a_value_is_off_is_counted_from_the_end_of_the_band(double value, double times) =>
        Assert.Equal(times, Uneven.Judge(value).TimesOut, 1e-12);

    [Fact]
    public void Nothing_where_something_is_expected_is_more_times_off_than_any_factor() => Assert.True(Uneven.Judge(0).TimesOut > 1e6);

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
    public void Bands_that_touch_are_not_apart()
    {
        Assert.False(Uneven.IsApartFrom(new(Quantity.AcVolts, 8, 7, 9)));
        Assert.False(new Expectation(Quantity.AcVolts, 8, 7, 9).IsApartFrom(Uneven));
        Assert.True(Uneven.IsApartFrom(new(Quantity.AcVolts, 8, 7, 8.999)));
        Assert.True(Uneven.IsApartFrom(new(Quantity.AcVolts, 13, 12.001, 14)));
    }

    [Fact]
    public void Where_only_open_is_expected_both_ends_are_open_and_where_it_may_be_only_the_upper_one()
    {
        const double open = double.PositiveInfinity;
        Assert.Equal(Open, Expectation.Of(new PredictedReading(Ohms, open, open, open), Meter.Usual.For(Quantity.Ohms)));
        var half = Expectation.Of(new PredictedReading(Ohms, 9e6, 8e6, open), new MeterError(0, 0.5, 0, 0));
        Assert.Equal(8e6 - (1.1316 * 0.5), half.Low, 1e-3);
        Assert.Equal(open, half.High);
    }

    [Fact]
    public void What_cannot_be_judged_is_on_no_side()
    {
        Assert.Equal(new Standing(Side.NotJudged, 0, 0), (Uneven with { CanJudge = false }).Judge(10));
        Assert.Equal(new Standing(Side.Within, 0, 0), Uneven.Judge(10));
        var standing = (Uneven with { CanJudge = false }).Judge(40);
        Assert.Equal(Side.NotJudged, standing.Side);
        Assert.False(standing.IsClearlyOff);
    }

    /// <remarks>
    /// An insulation path spreads log-normally by √ln(1 + 0.7²) = 0.6315: its band is from e^(−1.2378) to e^(1.2378) times the
    /// nominal. A tenth of the lower end is (1.2378 + 2.3026)/0.6315 = 5.606 standard deviations down. On a linear scale the same
    /// value was 1.96·0.971/0.71 = 2.68 and "a little" off.
    /// </remarks>
    [Fact]
    public void What_spreads_over_decades_is_judged_by_its_logarithm()
    {
        var sigma = Math.Sqrt(Math.Log(1.49));
        var (low, high) = (100e6 * Math.Exp(-1.959964 * sigma), 100e6 * Math.Exp(1.959964 * sigma));
        var band = new Expectation(Quantity.InsulationOhms, 100e6, low, high);
        Assert.Equal(5.606, band.Judge(low / 10).Deviations, 1e-3);
        Assert.True(band.Judge(low / 10).IsClearlyOff);
        Assert.Equal(5.606, band.Judge(high * 10).Deviations, 1e-3);
        Assert.Equal(1.96, band.Judge(low).Deviations, 1e-3);
        Assert.False(band.Judge(low * 0.7).IsClearlyOff);
        Assert.Equal(10, band.Judge(low / 10).TimesOut, 1e-9);
        // Nothing at all counts as a millionth of the lower end: (1.2378 + ln 10⁶)/0.6315 deviations.
        Assert.Equal(((1.959964 * sigma) + Math.Log(1e6)) / sigma, band.Judge(0).Deviations, 1e-3);
        // The same of plain ohms that spread as wide, and not of ohms that spread by a fifth.
        Assert.Equal(5.606, (band with { Quantity = Quantity.Ohms }).Judge(low / 10).Deviations, 1e-3);
        Assert.Equal(1.96 * 7 / 2, new Expectation(Quantity.Ohms, 10, 8, 12).Judge(3).Deviations, 1e-3);
    }

    /// <remarks>1 to 10,000 times the nominal: ten times beyond is 1.96·5/4 = 2.45 standard deviations even in the logarithm.</remarks>
    [Fact]
    public void Ten_times_beyond_the_band_is_never_a_little_however_wide_it_is()
    {
        var wide = new Expectation(Quantity.InsulationOhms, 1e6, 1e2, 1e10);
        Assert.Equal(2.45, wide.Judge(10).Deviations, 1e-3);
        Assert.True(wide.Judge(10).IsClearlyOff);
        Assert.True(wide.Judge(1e11).IsClearlyOff);
        Assert.False(wide.Judge(20).IsClearlyOff);
    }
}
