using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Tests.Wiring;

/// <summary>No mains on a unit whose wires were moved before the check stands; job reference, "Rewire check before power".</summary>
public class WiringCheckTests
{
    private static OnTheBench Rewired() =>
        new OnTheBench().Add(new PartChanged("boost-left", PartChange.Rewired, null, "")).ColdGates().Read("lamp-60", 105);

    [Fact]
    public void A_moved_wire_shuts_the_mains_and_leaves_the_low_readings_open()
    {
        Assert.True(Rewired().Offer("left-full").WaitsForCheck);
        Assert.False(Rewired().Offer("left-full").IsOpen);
        Assert.False(Rewired().Offer("low-17").WaitsForCheck);
    }

    /// <summary>A new cord on the wrong lug is the mistake that kills; a roller is riveted (common practice, no source).</summary>
    [Theory]
    [InlineData("roller-left", false)]
    [InlineData("pilot", false)]
    [InlineData("cord-1", true)]
    [InlineData("disc-left", true)]
    public void What_is_soldered_when_it_is_renewed_asks_for_the_check(string part, bool asks)
    {
        var sheet = OnTheBench.Sheet;
        Assert.True(
            sheet.Elements.Any(e => e.Id == part) || sheet.Elements.OfType<Winding>().Any(w => w.Sliders.Any(s => s.Id == part)),
            part
        );
        var bench = new OnTheBench().Add(new PartChanged(part, PartChange.Renewed, null, "")).ColdGates().Read("lamp-60", 105);
        Assert.Equal(asks, bench.Offer("left-full").WaitsForCheck);
        Assert.Equal(
            asks,
            CardOf.Make(bench.Add(new StageClosed(Stage.LookOver, true, "")).Unit, sheet, Shop.Usual).Next.Action == NextAction.CheckWiring
        );
    }

    [Fact]
    public void A_supply_measured_before_the_wire_was_moved_does_not_count()
    {
        var bench = Rewired().Add(new SupplyStated(12, 0, "J."));
        Assert.Equal(12, WiringCheck.Supply(bench.Unit, OnTheBench.Sheet)!.AcVolts);
        bench.Add(new PartChanged("w-5", PartChange.Rewired, null, ""));
        Assert.Null(WiringCheck.Supply(bench.Unit, OnTheBench.Sheet));
    }

    [Fact]
    public void The_check_opens_it_and_falls_with_any_cold_reading_or_wire_after_it()
    {
        var bench = Rewired();
        bench.Add(new RewireChecked(WiringCheck.MarkOf(bench.Unit, OnTheBench.Sheet), "J.", ""));
        Assert.True(bench.Offer("left-full").IsOpen);
        Assert.True(bench.Read("left-full", 17.3).Offer("left-load").IsOpen);
        Assert.False(bench.Read("ohms-17", 9.0).Offer("left-load").IsOpen);
        bench.Add(ReadingEntry.Undo(bench.Unit)!.Value.Fact);
        Assert.True(bench.Offer("left-load").IsOpen);
        Assert.True(bench.Add(new PartChanged("w-5", PartChange.Rewired, null, "")).Offer("left-load").WaitsForCheck);
    }

    [Theory]
    [InlineData("12.3", "0.05", "")]
    [InlineData("12,3", "-0,05", "")]
    [InlineData("120", "0", "over 30 V nothing may go onto the plug")]
    [InlineData("0.1", "12", "It gives DC")]
    [InlineData("13.4", "12", "It gives DC")]
    [InlineData("3", "0", "too little")]
    [InlineData("24", "0", "About 12 V")]
    [InlineData("twelve", "0", "is not a number")]
    [InlineData("12", "", "On DC")]
    public void Only_a_low_alternating_supply_is_taken(string ac, string dc, string problem)
    {
        var taken = LowSupply.State(ac, dc, "J. Example", 12);
        Assert.Equal(problem.Length == 0, taken.Fact is SupplyStated);
        Assert.Contains(problem, taken.Refused, StringComparison.Ordinal);
        Assert.NotEmpty(LowSupply.State("12", "0", " ", 12).Refused);
    }

    /// <summary>What a sheet's readings ask for is what the supply step asks for and lets in.</summary>
    [Theory]
    [InlineData("step-230", 24)]
    [InlineData("twin-175", 12)]
    public void The_supply_that_is_asked_for_is_let_in(string name, double volts)
    {
        var sheet = OnTheBench.SheetOf($"demo/{name}.sheet.json");
        Assert.Equal(volts, LowSupply.WantedVolts(sheet));
        var typed = volts.ToString(System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains($"About {typed} V AC", LowSupply.Rules(volts)[0], StringComparison.Ordinal);
        Assert.All(
            sheet.Readings.Where(r => r.State.Source is { IsDirect: false, Volts: <= 30 }),
            r =>
                Assert.NotNull(
                    LowSupply
                        .State(r.State.Source!.Volts.ToString(System.Globalization.CultureInfo.InvariantCulture), "0", "J.", volts)
                        .Fact
                )
        );
    }

    [Fact]
    public void Every_mistake_of_the_sheet_is_said_with_its_place()
    {
        var all = MistakeList.Of(OnTheBench.Sheet);
        Assert.All(all, m => Assert.DoesNotMatch(@"[a-z]-\d|[a-z]{2,}-[a-z]|\.(from|to)\b|~|>", MistakeWords.Of(m, OnTheBench.Sheet)));
        string Said(string id) => MistakeWords.Of(all.Single(m => m.Id == id), OnTheBench.Sheet);
        Assert.Equal("the left boost winding is wired backward: swap its two ends", Said("reversed:boost-left"));
        Assert.EndsWith("is on breaker in: move it to lug 1", Said("moved:cord-1.to>breaker-in"), StringComparison.Ordinal);
        Assert.Equal("the breaker is left out: put it back in line, between breaker in and breaker out", Said("bypassed:breaker"));
        Assert.Equal("wired as planned", MistakeWords.Of([], OnTheBench.Sheet));
    }
}
