using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// A gate passes where a laboratory would say "pass" (tests/Reference/published/measurement.json, 8.11 and 9.6): the value with
/// the meter's error inside the limit. What would pass conditionally does not.
/// </summary>
public class GuardBandTests
{
    [Theory]
    [InlineData("pass", true)]
    [InlineData("conditionalPass", false)]
    [InlineData("conditionalFail", false)]
    [InlineData("fail", false)]
    public void A_lower_limit_is_kept_by_the_meters_error(string verdict, bool stands)
    {
        var p = Published.Case("measurement", "8.11");
        var error = new MeterError(p.Given("percent"), p.Given("floorOhms"), 0, 0);
        Assert.Equal(
            stands,
            Stands(Quantity.InsulationOhms, new Limits(p.Given("limitOhms"), double.PositiveInfinity), error, p.Given(verdict))
        );
    }

    [Fact]
    public void An_upper_limit_is_kept_by_the_meters_error()
    {
        var p = Published.Case("measurement", "9.6");
        var (limit, error) = (p.Given("limitVolts"), new MeterError(p.Given("percent"), p.Given("floorVolts"), 0, 0));
        // Accepted up to TL − w, w the error at the value: v + 0.008 v + 0.03 = TL.
        var accepted = (limit - error.Floor) / (1 + (error.Percent / 100));
        Assert.True(Stands(Quantity.AcVolts, new Limits(17, limit), error, accepted - 0.001));
        Assert.False(Stands(Quantity.AcVolts, new Limits(17, limit), error, accepted + 0.001));
        Assert.False(Stands(Quantity.AcVolts, new Limits(17, limit), error, limit));
        Assert.False(Stands(Quantity.AcVolts, new Limits(17, limit), error, limit + 0.1));
    }

    private static bool Stands(Quantity quantity, Limits limits, MeterError error, double value)
    {
        var spec = new SheetDraft().Resistor("r", "a", "b", 1).Reading("r", "ohms", ["a", "b"]).Sheet().Readings[0] with
        {
            Quantity = quantity,
            Limits = limits,
        };
        var meter = new Meter(Meter.Usual.Errors.SetItem(quantity, error));
        return Gates.Stands(
            new UnitReadings("draft", 120, null, meter, [new TakenReading(spec, Outcome.Value, value, [], "", "", spec.State)], []),
            spec
        );
    }
}
