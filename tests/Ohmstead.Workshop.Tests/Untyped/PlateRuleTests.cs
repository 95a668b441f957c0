using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.Workshop.Tests.Untyped;

public class PlateRuleTests
{
    /// <summary>
    /// Closed form: at W watts and V volts the primary carries I = W/V; copper that takes a share s of W has s·W/I² = s·V²/W ohms.
    /// 180 W at 120 V: 80 Ω·s, so 1.6 to 8 Ω for 2 to 10 %.
    /// </summary>
    [Theory]
    [InlineData(120, 180, 1.6, 8.0)]
    [InlineData(230, 60, 17.6333, 88.1667)]
    public void The_ohms_between_the_blades_follow_from_the_plates_volts_and_watts(double volts, double watts, double low, double high)
    {
        var band = PlateRule.BladeOhms(new PlateRead(volts, watts));
        Assert.Equal(low, band.Low, 3);
        Assert.Equal(high, band.High, 3);
    }

    /// <summary>Primaries of the invented types (demo/*.sheet.json) and of a 180 W unit of common practice, 3.0 Ω, no source.</summary>
    [Theory]
    [InlineData(120, 180, 3.0)]
    [InlineData(120, 175, 3.35)]
    [InlineData(117, 110, 6.1)]
    [InlineData(230, 60, 40.0)]
    public void A_usual_primary_lies_inside_and_a_tenth_or_tenfold_of_it_outside(double volts, double watts, double ohms)
    {
        var (low, high) = PlateRule.BladeOhms(new PlateRead(volts, watts));
        Assert.InRange(ohms, low, high);
        Assert.False(ohms / 10 >= low || ohms * 10 <= high);
    }

    [Fact]
    public void Without_watts_the_band_holds_that_of_every_plate_from_25_to_300_W()
    {
        var (low, high) = PlateRule.BladeOhms(new PlateRead(120, null));
        Assert.Equal(PlateRule.BladeOhms(new PlateRead(120, 300)).Low, low);
        Assert.Equal(PlateRule.BladeOhms(new PlateRead(120, 25)).High, high);
    }

    [Fact]
    public void The_rule_is_said_with_what_it_rests_on()
    {
        Assert.Contains("120 V and 180 W on the plate", PlateRule.Words(new PlateRead(120, 180)), StringComparison.Ordinal);
        Assert.All(
            (PlateRead[])[new(120, 180), new(null, null)],
            p => Assert.EndsWith("Common practice, no source.", PlateRule.Words(p), StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(1200.0, 180.0, "Volts")]
    [InlineData(120.0, 2.0, "Watts")]
    [InlineData(120.0, 180.0, "")]
    [InlineData(null, null, "")]
    public void A_plate_that_cannot_be_is_refused_in_words(double? volts, double? watts, string begins)
    {
        var problem = PlateRule.Problem(new PlateRead(volts, watts));
        Assert.Equal(begins.Length == 0, problem.Length == 0);
        Assert.StartsWith(begins, problem, StringComparison.Ordinal);
    }
}
