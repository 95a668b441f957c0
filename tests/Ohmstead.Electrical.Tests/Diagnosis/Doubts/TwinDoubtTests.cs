using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.Doubts.DoubtBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>What is wrong with the bench, by what it says of a sound unit of the sample sheet on it.</summary>
public class TwinDoubtTests
{
    [Fact]
    public void A_sound_unit_on_a_good_bench_raises_no_doubt()
    {
        var result = Run(All(_ => true, (_, v) => v));
        Assert.Empty(result.Doubts);
        Assert.Empty(result.Slips);
        Assert.True(result.IsExplained);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(-5)]
    public void A_line_that_was_not_as_noted_is_named_with_its_volts(double off)
    {
        var share = 1 + (off / Reference.Twin160.SupplyVolts);
        var taken = All(r => !OnMains(r) || r.Quantity == Quantity.AcVolts, (r, v) => OnMains(r) ? v * share : v);
        var doubt = Assert.Single(Run(taken).Doubts);
        Assert.Equal(DoubtAbout.Line, doubt.About);
        Assert.Equal(Reference.Twin160.SupplyVolts + off, doubt.Value, 0.5);
        Assert.All(doubt.Readings, id => Assert.True(OnMains(Reference.Twin160.FindReading(id)!)));
    }

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

    /// <summary>Sound readings with leads left in: a contact that all but one of them pass does the same, and is not very likely (0.8) for that.</summary>
    [Fact]
    public void Of_a_few_cold_readings_leads_left_in_are_no_burnt_breaker_contact_that_is_very_likely()
    {
        string[] cold = ["blades", "ohms-5", "ohms-17", "ohms-left", "ohms-right"];
        var result = Run(All(r => cold.Contains(r.Id), (_, v) => v + 0.3));
        Assert.InRange(result.Faults.Single(f => f.Mode.Name == "breaker:resistive").Probability, 0.5, 0.8);
    }
}
