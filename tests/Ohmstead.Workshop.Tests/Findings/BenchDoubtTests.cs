using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>What is off on the bench and not in the unit: readings are those of the nominal unit, changed as the bench would change them.</summary>
public class BenchDoubtTests
{
    private static readonly string[] Ohms = ["ohms-5", "ohms-17", "ohms-left", "ohms-right"];
    private static readonly string[] Volts = ["volts-5", "volts-17", "left-full", "right-full"];

    private static System.Collections.Immutable.ImmutableArray<BenchDoubt> Of(IEnumerable<string> ids, Func<string, double, double> shown)
    {
        var (model, bench) = (new OnTheBench().Model, new OnTheBench().Readings);
        var meter = new Meter(bench.Meter.Errors.SetItem(Quantity.Ohms, new MeterError(0.8, 0.05, 0, 0)));
        var taken = ids.Select(id =>
        {
            var spec = model.Sheet.FindReading(id)!;
            return new TakenReading(spec, Outcome.Value, shown(id, FaultEffect.ValueWith(model, spec, spec.State, null, meter)!.Value), [], "", "", spec.State);
        });
        return BenchDoubt.Of(model, bench with { Meter = meter, Readings = [.. taken] });
    }

    [Fact]
    public void A_sound_bench_raises_no_doubt() => Assert.Empty(Of([.. Ohms, .. Volts], (_, v) => v));

    [Fact]
    public void Low_ohm_readings_high_by_the_same_are_the_test_leads()
    {
        var doubt = Assert.Single(Of(Ohms, (_, v) => v + 0.3));
        Assert.Equal(0.3, doubt.Size, 1e-9);
        Assert.Contains("test leads", doubt.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void One_reading_that_is_high_is_a_part_and_not_the_leads() =>
        Assert.Empty(Of(Ohms, (id, v) => id == "ohms-left" ? v + 0.9 : v));

    [Theory]
    [InlineData(1.04, "4 % high")]
    [InlineData(0.95, "5 % low")]
    public void Posts_off_by_one_share_are_the_line(double factor, string words)
    {
        var doubt = Assert.Single(Of(Volts, (_, v) => v * factor));
        Assert.Equal(factor - 1, doubt.Size, 1e-9);
        Assert.Contains(words, doubt.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void One_post_that_is_low_is_not_the_line() => Assert.Empty(Of(Volts, (id, v) => id == "left-full" ? v * 0.9 : v));
}
