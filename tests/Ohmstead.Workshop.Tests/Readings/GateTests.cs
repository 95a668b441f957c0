using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>What may be read when; binding is section 2 of docs/formats.md, "Needs and gates".</summary>
public class GateTests
{
    private static readonly BenchState Bench = BenchState.AsSheet;

    [Fact]
    public void No_mains_reading_is_open_on_a_unit_that_nothing_was_read_on()
    {
        var bench = new OnTheBench();
        var offers = ReadingOffer.All(bench.Unit, bench.Model, bench.Readings, OnTheBench.Shop);
        Assert.All(offers.Where(o => o.IsMains), o => Assert.False(o.IsOpen));
        Assert.Contains(offers, o => o.IsMains);
        Assert.All(offers.Where(o => o.Spec.IsGate), o => Assert.True(o.IsOpen));
    }

    [Fact]
    public void A_reading_behind_a_shut_gate_is_refused_and_says_which_and_why()
    {
        var taken = ReadingEntry.Enter(new OnTheBench().Offer("left-full"), Shown.Number(17.3), Bench);
        Assert.Null(taken.Fact);
        Assert.StartsWith("Locked. Between the plug blades: not taken yet. Take it first. And ", taken.Refused, StringComparison.Ordinal);
        Assert.NotNull(ReadingEntry.Enter(new OnTheBench().Offer("left-full"), Shown.NotTaken("no line here"), Bench).Fact);
    }

    [Fact]
    public void OL_is_no_voltage_and_one_that_came_in_from_elsewhere_spoils_nothing()
    {
        var bench = new OnTheBench().ColdGates();
        Assert.Null(ReadingEntry.Enter(bench.Offer("low-17"), Shown.OverRange, Bench).Fact);
        Assert.NotNull(ReadingEntry.Enter(bench.Offer("ohms-17"), Shown.OverRange, Bench).Fact);
        Assert.False(bench.Read("low-17", Shown.OverRange).Readings.Readings[^1].IsTaken);
    }

    [Fact]
    public void The_gates_open_one_after_another()
    {
        var bench = new OnTheBench().ColdGates();
        Assert.True(bench.Offer("lamp-60").IsOpen);
        Assert.Equal("lamp-60", Assert.Single(bench.Offer("left-full").Shut).Gate.Id);
        Assert.IsType<ReadingEntered>(ReadingEntry.Enter(bench.Read("lamp-60", 105).Offer("left-full"), Shown.Number(17.3), Bench).Fact);
    }

    [Fact]
    public void A_measured_failure_is_never_waived_not_even_after_a_could_not()
    {
        var bench = new OnTheBench().Read("insulation-core", 100e3).Read("insulation-core", Shown.NotTaken("tester went home"));
        Assert.Null(ReadingEntry.Waive(bench.Offer("insulation-core"), "no tester", "J.", "nothing").Fact);
        var shut = bench.Offer("lamp-60").Shut.Single(s => s.Gate.Id == "insulation-core");
        Assert.False(shut.CanBeWaived);
        Assert.Contains("100 kΩ", shut.Why, StringComparison.Ordinal);
        Assert.Contains("failed the type sheet's limit, at least 2.00 MΩ", shut.Why, StringComparison.Ordinal);
        // Written into the journal all the same, a waiver opens nothing.
        Assert.Contains(
            bench.Add(new ReadingWaived("insulation-core", "no tester", "J.", "nothing")).Offer("lamp-60").Shut,
            s => s.Gate.Id == "insulation-core"
        );
    }

    [Fact]
    public void What_no_instrument_can_read_is_waived_in_writing_and_every_later_reading_says_so()
    {
        var bench = new OnTheBench().Read("blades", 4.2).Read("blades-posts", Shown.OverRange).Read("insulation-posts", 250e6);
        Assert.Null(ReadingEntry.Waive(bench.Offer("insulation-core"), "no tester", " ", "nothing").Fact);
        bench.Add(ReadingEntry.Waive(bench.Offer("insulation-core"), "no tester", "J. Example", "ohmmeter OL").Fact!);
        Assert.True(bench.Offer("insulation-core").IsWaived);
        var lamp = bench.Offer("lamp-60");
        Assert.True(lamp.IsOpen);
        Assert.Contains("waived by J. Example", Assert.Single(lamp.Waived), StringComparison.Ordinal);
        Assert.Empty(bench.Read("insulation-core", 300e6).Offer("lamp-60").Waived);
    }

    [Fact]
    public void The_meters_error_keeps_a_gate_shut_that_the_bare_value_would_open()
    {
        // 5.2 Ω at most; 5.3 Ω with 0.2 Ω of leads is 5.1, but ± (0.8 % + 0.05 Ω) reaches to 5.19; 5.35 Ω reaches beyond.
        Assert.DoesNotContain(new OnTheBench().Read("blades", 5.3).Offer("low-17").Shut, s => s.Gate.Id == "blades");
        Assert.Contains(new OnTheBench().Read("blades", 5.35).Offer("low-17").Shut, s => s.Gate.Id == "blades");
    }

    [Fact]
    public void A_finer_meter_taken_up_later_opens_no_gate_that_the_first_left_shut()
    {
        // At least 2 MΩ: 2.08 MΩ ± (5 % + 20 kΩ) reaches down to 1.96 MΩ; with the finer tester it would end at 2.06 MΩ.
        var bench = new OnTheBench()
            .Read("insulation-core", 2.08e6, Bench with { MeterId = "tester" })
            .Read("insulation-posts", 250e6, Bench with { MeterId = "fine" });
        var close = bench.Offer("lamp-60").Shut.Single(s => s.Gate.Id == "insulation-core");
        Assert.Equal((CheckEnd.TooClose, false), (close.End, close.CanBeWaived));
        Assert.Contains("Read it again, or use a better meter", close.Why, StringComparison.Ordinal);
        bench.Read("insulation-core", 2.08e6, Bench with { MeterId = "fine" });
        Assert.DoesNotContain(bench.Offer("lamp-60").Shut, s => s.Gate.Id == "insulation-core");
    }

    [Fact]
    public void A_changed_part_shuts_the_gates_again()
    {
        var bench = new OnTheBench().ColdGates();
        Assert.True(bench.Offer("lamp-60").IsOpen);
        Assert.False(bench.Add(new PartChanged("roller-left", PartChange.Renewed, null, "")).Offer("lamp-60").IsOpen);
    }

    [Fact]
    public void Only_what_others_wait_for_can_be_waived() =>
        Assert.Null(ReadingEntry.Waive(new OnTheBench().Offer("ohms-17"), "no meter", "J.", "nothing").Fact);

    [Fact]
    public void Hazards_of_the_sheet_and_of_the_mains_are_said()
    {
        var bench = new OnTheBench();
        Assert.Contains(bench.Offer("insulation-core").Cautions, c => c.Contains("500 V", StringComparison.Ordinal));
        Assert.Contains(bench.Offer("left-full").Cautions, c => c.Contains("Mains on the unit: clips on first", StringComparison.Ordinal));
        Assert.Empty(bench.Offer("ohms-17").Cautions);
    }

    [Fact]
    public void Undo_takes_back_the_last_that_still_counts_and_then_the_one_before()
    {
        var bench = new OnTheBench().Read("blades", 4.2).Read("ohms-17", 0.5);
        Assert.Equal("ohms-17", ((ReadingEntered)ReadingEntry.Undo(bench.Unit)!.Value.Undone.Fact).ReadingId);
        bench.Add(ReadingEntry.Undo(bench.Unit)!.Value.Fact);
        Assert.Equal("blades", ((ReadingEntered)ReadingEntry.Undo(bench.Unit)!.Value.Undone.Fact).ReadingId);
        bench.Add(ReadingEntry.Undo(bench.Unit)!.Value.Fact);
        Assert.Null(ReadingEntry.Undo(bench.Unit));
        Assert.Equal(5, bench.Unit.Journal.Length);
    }

    [Theory]
    [InlineData(0.5, null, null)]
    [InlineData(120.0, 300.0, null)]
    [InlineData(120.0, 20.0, 1.5)]
    public void A_bench_that_cannot_be_is_refused(double? volts, double? celsius, double? throttle)
    {
        var bench = new BenchState(volts, "", "", throttle is { } t ? Bench.Throttles.Add("throttle-left", t) : Bench.Throttles, celsius);
        Assert.NotEmpty(ReadingEntry.Enter(new OnTheBench().Offer("blades"), Shown.Number(4), bench).Refused);
    }
}
