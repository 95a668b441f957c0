using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Proving;

/// <summary>The ohmmeter list and first power; job reference, "first power" (common practice, no source).</summary>
public class ContinuityLineTests
{
    private static readonly MeterError Ohmmeter = Meter.Usual.For(Quantity.Ohms);

    private static readonly ContinuityPlan Plan = ContinuityPlanner.Plan(
        OnTheBench.Sheet,
        ImmutableDictionary<string, ControlPosition>.Empty,
        Meter.Usual
    );

    private static ImmutableArray<ContinuityLine> Checks(OnTheBench bench) =>
        ContinuityLine.All(Plan, bench.Unit, OnTheBench.Sheet, Ohmmeter);

    private static bool Passes(ContinuityLine check, string typed) => ((WireChecked)check.Take(typed).Fact!).Passes;

    [Fact]
    public void A_joint_passes_when_it_reads_next_to_nothing_and_not_when_cold_or_open()
    {
        var joined = Checks(new OnTheBench()).First(c => c.Check.IsJoined && c.Check.Ohms < 0.05);
        Assert.True(Passes(joined, "0.1"));
        Assert.False(Passes(joined, "1,2"));
        Assert.False(Passes(joined, "OL"));
        Assert.Null(joined.Take("three").Fact);
    }

    [Fact]
    public void What_must_be_apart_passes_on_ol_and_not_on_a_bridge()
    {
        var apart = Checks(new OnTheBench()).First(c => !c.Check.IsJoined && double.IsPositiveInfinity(c.High));
        Assert.True(Passes(apart, "OL"));
        Assert.False(Passes(apart, "0.3"));
    }

    [Fact]
    public void A_wire_moved_after_it_makes_every_check_new()
    {
        var bench = new OnTheBench();
        bench.Add(Checks(bench)[0].Take("0.1").Fact!);
        Assert.NotNull(Checks(bench)[0].Taken);
        bench.Add(new PartChanged("w-5", PartChange.Rewired, null, ""));
        Assert.Null(Checks(bench)[0].Taken);
    }

    /// <summary>The lamp leaves most of the line on a sound unit and less than half on one with shorted turns (job reference, section 1).</summary>
    [Fact]
    public void The_lamp_that_tells_a_shorted_winding_best_comes_first()
    {
        var model = new UnitModel(OnTheBench.Sheet);
        var shop = UsualShop.LampsFor(120).Aggregate(Shop.Usual, (s, lamp) => s.Has(lamp, true));
        var lamps = FirstPower.Lamps(model, shop, 120, FirstPower.UsualFaults(model), Meter.Usual);
        Assert.All(lamps, l => Assert.True(l.Lamp.Volts >= 108, l.Lamp.Id));
        var sheets = lamps.Single(l => l.IsSheets);
        Assert.True(sheets.Sound.Low > OnTheBench.Sheet.FindReading("lamp-60")!.Limits!.Min);
        Assert.All(
            sheets.With.Where(w => w.Fault.Mode == "shorted-turns"),
            w => Assert.True(w.Volts < OnTheBench.Sheet.FindReading("lamp-60")!.Limits!.Min, w.Fault.Name)
        );
        Assert.All(sheets.With.Where(w => w.Fault.Mode == "open"), w => Assert.Equal(120, w.Volts, 1));
        var told = Enumerable.Range(0, sheets.With.Length).ToList();
        Assert.Equal(lamps.Select(l => told.Min(l.ApartOf)).OrderDescending(), lamps.Select(l => told.Min(l.ApartOf)));
    }

    /// <summary>A shop that was never asked has no lamp, and none of another line is proposed: a 230 V lamp on 120 V hardly glows.</summary>
    [Fact]
    public void Lamps_are_those_that_the_shop_says_it_has_and_of_the_line_of_the_bench_only()
    {
        var model = new UnitModel(OnTheBench.Sheet);
        Assert.DoesNotContain(Shop.Usual.Loads, l => l.Volts > 0);
        Assert.Empty(FirstPower.Lamps(model, Shop.Usual, 120, [], Meter.Usual));
        var both = UsualShop.LampsFor(120).Concat(UsualShop.LampsFor(230)).Aggregate(Shop.Usual, (s, lamp) => s.Has(lamp, true));
        double[] Volts(double line) => [.. FirstPower.Lamps(model, both, line, [], Meter.Usual).Select(l => l.Lamp.Volts).Distinct()];
        Assert.Equal([120.0], Volts(120));
        Assert.Equal([120.0], Volts(114));
        Assert.Equal([120.0], Volts(126));
        Assert.Equal([230.0], Volts(230));
        Assert.Equal([230.0], Volts(240));
        // 60 W at 120 V: 60/120 = 0.5 A and 120²/60 = 240 Ω.
        var sixty = UsualShop.LampsFor(121.4).Single(l => l.Name == "Series lamp 60 W, 120 V");
        Assert.Equal((240.0, 0.5), (sixty.Ohms, sixty.Amps));
    }

    [Fact]
    public void More_than_a_sound_unit_draws_is_a_stop_and_nothing_read_is_refused()
    {
        var model = new UnitModel(OnTheBench.Sheet);
        Expectation Band(Quantity q) =>
            Expectation.Of(model, FirstPower.Step(model.Sheet, q, 48), FirstPower.Step(model.Sheet, q, 48).State, Meter.Usual);
        var (amps, watts) = (Band(Quantity.AcAmps), Band(Quantity.Watts));
        Assert.False(FirstPower.Try(48, "5", "", amps, watts).Fact!.Went);
        Assert.False(FirstPower.Try(48, "", "90", amps, watts).Fact!.Went);
        Assert.True(FirstPower.Try(48, ShopEdit.Show(amps.Value), ShopEdit.Show(watts.Value), amps, watts).Fact!.Went);
        Assert.False(FirstPower.Try(48, "5", "", amps with { CanJudge = false }, watts).Fact!.Went);
        Assert.False(FirstPower.Try(48, ShopEdit.Show(1.01 * amps.High), "", amps, watts).Fact!.Went);
        Assert.Null(FirstPower.Try(48, "", "", amps, watts).Fact);
        Assert.Contains("Amps", FirstPower.Try(48, "-1", "", amps, watts).Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_checks_come_last_first_and_the_list_takes_as_long_as_all_of_them()
    {
        var bench = new OnTheBench();
        bench.Add(Checks(bench)[2].Take("0.1").Fact!).Add(Checks(bench)[0].Take("OL").Fact!);
        var checks = Checks(bench);
        Assert.Equal([checks[0], checks[2]], ContinuityLine.Last(checks, bench.Unit));
        Assert.Equal(Plan.Checks.Sum(c => c.Minutes), Plan.Minutes, 9);
        Assert.Equal(Plan.Minutes, ContinuityLine.MinutesLeft(Checks(new OnTheBench())), 9);
    }

    [Fact]
    public void The_lamps_asked_for_are_the_usual_ones_of_the_line_and_those_of_the_shop()
    {
        var own = new ShopLoad("own", "Own lamp", 100, 120, 1.2);
        var shop = Shop.Usual with { Loads = [own, own with { Id = "other", Volts = 230 }] };
        Assert.Equal([own], FirstPower.LampsOf(shop, 120));
        Assert.Equal([.. UsualShop.LampsFor(120).Select(l => l.Id), "own"], FirstPower.LampsToAskFor(shop, 120).Select(l => l.Id));
        Assert.Equal(144, FirstPower.Watts(own), 9);
    }

    [Fact]
    public void A_lamp_shows_the_faults_that_lie_out_of_the_sound_band_and_a_step_has_the_band_of_its_volts()
    {
        var model = new UnitModel(OnTheBench.Sheet);
        var shop = UsualShop.LampsFor(120).Aggregate(Shop.Usual, (s, lamp) => s.Has(lamp, true));
        foreach (var lamp in FirstPower.Lamps(model, shop, 120, FirstPower.UsualFaults(model), Meter.Usual))
            Assert.Equal(lamp.With.Where((_, f) => lamp.ApartOf(f) >= 1), lamp.Shows);
        var (half, full) = (FirstPower.StepOf(model, 60, Meter.Usual), FirstPower.StepOf(model, 120, Meter.Usual));
        Assert.Equal(60, half.Volts);
        Assert.True(half.Amps.Value < full.Amps.Value && half.Watts.Value < full.Watts.Value);
        Assert.EndsWith("A", half.Amps.Band, StringComparison.Ordinal);
        Assert.EndsWith("W", half.Watts.Band, StringComparison.Ordinal);
    }
}
