using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.Doubts.DoubtBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>A meter that errs by more than it states, by what it shows of a unit of the sample sheet.</summary>
public class TwinMeterDoubtTests
{
    [Fact]
    public void A_meter_that_errs_by_three_of_its_limits_is_named_with_its_factor()
    {
        var dice = new Random(5);
        double Err(ReadingSpec r, double v) =>
            double.IsInfinity(v) ? v : v + (3 * Meter.Usual.For(r.Quantity).LimitAt(v) * ((2 * dice.NextDouble()) - 1));
        var doubt = Assert.Single(Run(All(r => r.Quantity is not (Quantity.InsulationOhms or Quantity.Ohms), Err)).Doubts);
        Assert.Equal(DoubtAbout.Meter, doubt.About);
        Assert.InRange(doubt.Value, 2, 4);
        Assert.NotEmpty(doubt.Readings);
    }

    /// <summary>
    /// The watts of a sound unit lie off by more of the meter's limits than a poor voltmeter's volts: two of the sheet's deviations of the
    /// core's loss. That is the unit's spread, and none of the meter's error.
    /// </summary>
    [Fact]
    public void A_meter_that_errs_on_volts_alone_is_named_for_volts_whatever_the_unit_spreads()
    {
        var (values, dice) = (Twin.Model.Nominal.Copy(), new Random(7));
        foreach (var p in Twin.Model.Parameters.Where(p => p.Path.EndsWith("lossOhms", StringComparison.Ordinal)))
            values.Scale(p, Math.Exp(-2 * p.Sigma));
        double Err(ReadingSpec r) =>
            Twin.Read(r, values) is var v && !double.IsInfinity(v) && r.Quantity == Quantity.AcVolts
                ? v + (3 * Meter.Usual.For(r.Quantity).LimitAt(v) * ((2 * dice.NextDouble()) - 1))
                : v;
        var doubt = Assert.Single(
            Run(All(r => r.Quantity is Quantity.AcVolts or Quantity.AcAmps or Quantity.Watts, (r, _) => Err(r))).Doubts
        );
        Assert.Equal(DoubtAbout.Meter, doubt.About);
        Assert.Equal([Quantity.AcVolts], doubt.Readings.Select(id => Reference.Twin160.FindReading(id)!.Quantity).Distinct());
    }
}
