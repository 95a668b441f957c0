using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Words;

public class ValueTextTests
{
    /// <summary>Two digits: by arithmetic.</summary>
    [Theory]
    [InlineData(0.763, Quantity.DcVolts, "0.76 V")]
    [InlineData(0.197, Quantity.DcVolts, "0.2 V")]
    [InlineData(0.0452, Quantity.DcVolts, "0.045 V")]
    [InlineData(18.23, Quantity.AcVolts, "18 V")]
    [InlineData(-6.13, Quantity.DcVolts, "-6.1 V")]
    [InlineData(286e6, Quantity.InsulationOhms, "290 MΩ")]
    [InlineData(0, Quantity.DcVolts, "0 V")]
    [InlineData(double.PositiveInfinity, Quantity.Ohms, "OL")]
    public void What_is_only_about_so_has_two_digits(double value, Quantity quantity, string words) =>
        Assert.Equal(words, ValueText.About(value, quantity));
}
