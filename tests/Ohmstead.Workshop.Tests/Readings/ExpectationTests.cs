using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

public class ExpectationTests
{
    private static readonly UnitModel Model = new(OnTheBench.Sheet);

    private static Expectation Expected(string id, BenchState? bench = null, Meter? meter = null)
    {
        var spec = OnTheBench.Sheet.FindReading(id)!;
        return Expectation.Of(
            Model,
            spec,
            BenchConditions.StateOf(Model, spec, bench ?? BenchState.AsSheet, OnTheBench.Shop),
            meter ?? Meter.Usual
        );
    }

    [Fact]
    public void The_band_follows_the_line_and_the_load()
    {
        var at120 = Expected("left-full").Value;
        // With nothing connected the posts follow the line; the core's excitation bends that by little.
        Assert.Equal(at120 * 114 / 120, Expected("left-full", BenchState.AsSheet with { SupplyVolts = 114 }).Value, 0.01 * at120);
        var (heavy, light) = (Expected("left-load").Value, Expected("left-load", BenchState.AsSheet with { LoadId = "r-4" }).Value);
        Assert.True(heavy < light && light < at120);
    }

    [Fact]
    public void The_leads_are_in_the_ohms_and_the_meters_error_widens_the_band()
    {
        var leads = new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, new MeterError(0.8, 0.05, 0, 0.2)));
        Assert.Equal(0.2, Expected("blades", meter: leads).Value - Expected("blades").Value, 1e-9);
        var coarse = new Meter(Meter.Usual.Errors.SetItem(Quantity.AcVolts, new MeterError(5, 0.5, 0, 0)));
        Assert.True(Expected("left-full", meter: coarse).High > Expected("left-full").High + 0.5);
    }

    [Fact]
    public void A_meter_that_averages_is_expected_to_show_what_it_shows()
    {
        var averaging = new Meter(Meter.Usual.Errors.SetItem(Quantity.AcVolts, new MeterError(0.8, 0.03, 0, 0) { IsAveraging = true }));
        Assert.NotEqual(Expected("left-second-ac").Value, Expected("left-second-ac", meter: averaging).Value, 0.005);
        Assert.Equal(Expected("left-full").Value, Expected("left-full", meter: averaging).Value, 1e-9);
    }
}
