using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>From which distance on a value is off and not a little off: three deviations, or ten times beyond the end (common practice, no source).</summary>
public class StandingTests
{
    [Theory]
    [InlineData(Side.Above, 3, 0, true)]
    [InlineData(Side.Below, 3, 0, true)]
    [InlineData(Side.Above, 2.999, 9.999, false)]
    [InlineData(Side.Above, 0, 10, true)]
    [InlineData(Side.Below, 0, 10, true)]
    [InlineData(Side.Within, 4, 11, false)]
    [InlineData(Side.NotJudged, 4, 11, false)]
    public void Three_deviations_or_ten_times_are_clearly_off(Side side, double deviations, double times, bool isOff) =>
        Assert.Equal(isOff, new Standing(side, 1, deviations) { TimesOut = times }.IsClearlyOff);
}
