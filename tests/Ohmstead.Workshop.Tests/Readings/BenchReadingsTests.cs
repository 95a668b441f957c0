using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

public class BenchReadingsTests
{
    private static readonly BenchState Line = BenchState.AsSheet with { SupplyVolts = 118.5 };

    [Fact]
    public void Values_OL_jumps_what_could_not_be_taken_and_waivers_arrive_as_such()
    {
        var read = new OnTheBench()
            .Read("blades", 4.2)
            .Read("blades-posts", Shown.OverRange)
            .Read("ohms-17", Shown.Jumps(0.4, null))
            .Read("ohms-5", Shown.NotTaken("cannot reach it"))
            .Add(new ReadingWaived("insulation-core", "no tester", "J. Example", "ohmmeter OL"))
            .Readings.Readings;
        Assert.Equal([Outcome.Value, Outcome.OverRange, Outcome.Jumps, Outcome.NotTaken, Outcome.NotTaken], read.Select(r => r.Outcome));
        Assert.Equal([0.4, double.PositiveInfinity], read[2].JumpValues);
        Assert.Equal("cannot reach it", read[3].Why);
        Assert.Equal(("no tester", "J. Example"), (read[4].Why, read[4].WaivedBy));
    }

    [Fact]
    public void Each_reading_keeps_the_line_volts_and_the_heat_that_it_was_taken_at()
    {
        var readings = new OnTheBench()
            .Read("volts-17", 17.2, Line)
            .Read("volts-5", 5.1, Line with { SupplyVolts = 121, Celsius = 45 })
            .Readings;
        Assert.Equal([118.5, 121], readings.Readings.Select(r => r.State.Source!.Volts));
        Assert.Equal([20, 45], readings.Readings.Select(r => r.State.Celsius));
        Assert.Equal(121, readings.SupplyVolts);
    }

    [Fact]
    public void A_low_source_is_not_the_line()
    {
        Assert.Equal(12, new OnTheBench().Read("low-17", 1.7, Line).Readings.Readings.Single().State.Source!.Volts);
    }

    [Fact]
    public void The_low_supply_has_volts_of_its_own_where_it_is_the_one_that_the_sheet_asks_for()
    {
        var bench = Line with { LowVolts = 12.3 };
        var readings = new OnTheBench()
            .Read("low-17", 1.7, bench)
            .Read("volts-17", 17, bench)
            .Read("low-5", 0.6, Line with { LowVolts = 24 })
            .Readings;
        Assert.Equal([12.3, 118.5, 12], readings.Readings.Select(r => r.State.Source!.Volts));
    }

    [Fact]
    public void A_throttle_stands_where_it_stands_between_its_stops_and_at_a_stop_where_the_sheet_says()
    {
        var bench = Line with { Throttles = ImmutableSortedDictionary<string, double>.Empty.Add("throttle-left", 0.52) };
        var readings = new OnTheBench().Read("left-first-dc", 6, bench).Read("left-full", 17.4, bench).Readings.Readings;
        Assert.Equal([0.52, 1], readings.Select(r => r.State.Controls["throttle-left"].Throttle));
    }

    [Fact]
    public void A_load_on_hand_stands_in_for_one_about_as_large_only()
    {
        var bench = Line with { LoadId = "r-4" };
        var readings = new OnTheBench().Read("left-load", 15, bench).Read("low-left-second", 1.9, bench).Readings.Readings;
        Assert.Equal([4, 100], readings.Select(r => r.State.Loads.Single().Ohms));
    }

    [Fact]
    public void A_lamp_as_a_load_has_the_resistance_of_the_voltage_that_it_gets()
    {
        var load = new OnTheBench().Read("left-load", 15, Line with { LoadId = "lamps" }).Readings.Readings.Single().State.Loads.Single();
        // Tungsten by docs/formats.md: R = 12/3.5·(V/12)^0.45; some 16 V stand across it.
        var volts = 12 * Math.Pow(load.Ohms / (12 / 3.5), 1 / 0.45);
        Assert.InRange(volts, 14.5, 17.5);
        var shown = Expectation.Of(
            new(OnTheBench.Sheet),
            OnTheBench.Sheet.FindReading("left-load")!,
            new OnTheBench().Add(new BenchSet(Line with { LoadId = "lamps" })).Offer("left-load").State,
            Meter.Usual
        );
        Assert.Equal(volts, shown.Value, 0.01);
    }

    [Fact]
    public void Each_reading_keeps_the_meter_that_it_was_taken_with()
    {
        var bench = new OnTheBench();
        Assert.True(bench.Readings.Meter.IsAveraging);
        Assert.Equal(0.2, bench.Readings.Meter.For(Quantity.Ohms).LeadOhms);
        bench.Read("volts-17", 17.2, Line with { MeterId = "good" }).Read("volts-5", 5.1, Line with { MeterId = "hand" });
        var readings = bench.Readings;
        Assert.Equal([0.3, 0.8], readings.Readings.Select(r => readings.ErrorOf(r).Percent));
        Assert.Equal([false, true], readings.Readings.Select(r => readings.ErrorOf(r).IsAveraging));
        Assert.True(readings.Meter.IsAveraging);
        Assert.Equal(20e3, readings.Meter.For(Quantity.InsulationOhms).Floor);
    }

    [Fact]
    public void Readings_and_waivers_of_the_unit_as_it_was_do_not_speak_of_it_as_it_is()
    {
        var bench = new OnTheBench().Read("blades", 4.2).Add(new ReadingWaived("insulation-core", "no tester", "J.", "looked"));
        bench.Add(new PartChanged("roller-left", PartChange.Renewed, null, ""));
        Assert.Empty(bench.Readings.Readings);
    }

    [Fact]
    public void What_was_told_counts_and_what_the_sheet_does_not_ask_is_left_out()
    {
        var asked = OnTheBench.Sheet.Observations[0].Id;
        var told = new OnTheBench()
            .Add(new SignAnswered(asked, Answer.Yes))
            .Add(new SignAnswered("of another kind", Answer.Yes))
            .Readings.Symptoms;
        Assert.True(Assert.Single(told).Yes);
        Assert.Empty(new OnTheBench().Add(new SignAnswered(asked, Answer.Unsure)).Readings.Symptoms);
    }

    [Fact]
    public void The_meter_in_hand_is_the_one_taken_up_or_the_first_of_the_shop()
    {
        Assert.Equal("good", MeterInHand.IdAt(BenchState.AsSheet with { MeterId = "good" }, OnTheBench.Shop));
        Assert.Equal("hand", MeterInHand.IdAt(BenchState.AsSheet with { MeterId = "sold" }, OnTheBench.Shop));
        Assert.Equal("", MeterInHand.IdAt(BenchState.AsSheet, OnTheBench.Shop with { Meters = [] }));
    }
}
