using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Proving;

/// <summary>The ohmmeter list and first power; job reference, "first power" (common practice, no source).</summary>
public class WireCheckTests
{
    private static readonly MeterError Ohmmeter = Meter.Usual.For(Quantity.Ohms);

    private static readonly ContinuityPlan Plan = ContinuityPlanner.Plan(OnTheBench.Sheet, ImmutableDictionary<string, ControlPosition>.Empty, Meter.Usual);

    private static ImmutableArray<WireCheck> Checks(OnTheBench bench) => WireCheck.All(Plan, bench.Unit, OnTheBench.Sheet, Ohmmeter);

    private static bool Passes(WireCheck check, string typed) => ((WireChecked)check.Take(typed).Fact!).Passes;

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
        var lamps = FirstPower.Lamps(model, Shop.Usual, 120, FirstPower.UsualFaults(model), Meter.Usual);
        Assert.All(lamps, l => Assert.True(l.Lamp.Volts >= 108, l.Lamp.Id));
        var sheets = lamps.Single(l => l.IsSheets);
        Assert.True(sheets.Sound.Low > OnTheBench.Sheet.FindReading("lamp-60")!.Limits!.Min);
        Assert.All(sheets.With.Where(w => w.Fault.Mode == "shorted-turns"), w => Assert.True(w.Volts < OnTheBench.Sheet.FindReading("lamp-60")!.Limits!.Min, w.Fault.Name));
        Assert.All(sheets.With.Where(w => w.Fault.Mode == "open"), w => Assert.Equal(120, w.Volts, 1));
        var told = Enumerable.Range(0, sheets.With.Length).ToList();
        Assert.Equal(lamps.Select(l => told.Min(l.ApartOf)).OrderDescending(), lamps.Select(l => told.Min(l.ApartOf)));
    }

    [Fact]
    public void More_than_a_sound_unit_draws_is_a_stop_and_nothing_read_is_refused()
    {
        var model = new UnitModel(OnTheBench.Sheet);
        Expectation Band(Quantity q) => Expectation.Of(model, FirstPower.Step(model.Sheet, q, 48), FirstPower.Step(model.Sheet, q, 48).State, Meter.Usual);
        var (amps, watts) = (Band(Quantity.AcAmps), Band(Quantity.Watts));
        Assert.False(FirstPower.Try(48, "5", "", amps, watts).Fact!.Went);
        Assert.False(FirstPower.Try(48, "", "90", amps, watts).Fact!.Went);
        Assert.True(FirstPower.Try(48, ShopEdit.Show(amps.Value), ShopEdit.Show(watts.Value), amps, watts).Fact!.Went);
        Assert.False(FirstPower.Try(48, "5", "", amps with { CanJudge = false }, watts).Fact!.Went);
        Assert.False(FirstPower.Try(48, ShopEdit.Show(1.01 * amps.High), "", amps, watts).Fact!.Went);
        Assert.Null(FirstPower.Try(48, "", "", amps, watts).Fact);
        Assert.Contains("Amps", FirstPower.Try(48, "-1", "", amps, watts).Refused, StringComparison.Ordinal);
    }
}
