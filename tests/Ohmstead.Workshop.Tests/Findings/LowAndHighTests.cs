using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Drawing;

namespace Ohmstead.Workshop.Tests.Findings;

public sealed class LowAndHighTests
{
    private static readonly UnitModel Twin = new(DrawnSheets.Sheet("demo/twin-175.sheet.json"));

    private static LowAndHigh Of(string reading)
    {
        var spec = Twin.Sheet.FindReading(reading)!;
        var band = Expectation.Of(Twin, spec, spec.State, Meter.Usual);
        return LowAndHigh.Of(Twin, spec, spec.State, band, Meter.Usual, MeasuredPath.Of(Twin.Sheet, spec));
    }

    [Fact]
    public void More_ohms_on_the_way_to_a_loaded_post_make_its_volts_low()
    {
        // Ohm's law: what drops on the way is missing at the load.
        var means = Of("load-1");
        Assert.Contains("roller of track 1", means.Low);
        Assert.DoesNotContain("roller of track 1", means.High);
        Assert.DoesNotContain("roller of track 2", means.Low);
    }

    [Fact]
    public void The_same_ohms_make_a_resistance_high() => Assert.NotEmpty(Of("ohms-14").High);
}
