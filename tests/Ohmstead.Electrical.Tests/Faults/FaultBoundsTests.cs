using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Faults;

/// <summary>The last size that is taken, what a refusal says, and the ends of the chances.</summary>
public class FaultBoundsTests
{
    private static readonly FaultCatalogue Catalogue = new(new UnitModel(Reference.Twin160));

    [Theory]
    [InlineData("0", true)]
    [InlineData("1e12", true)]
    [InlineData("1.001e12", false)]
    [InlineData("-1e-9", false)]
    [InlineData("Infinity", false)]
    public void A_size_goes_from_nothing_to_a_million_million(string size, bool isTaken)
    {
        Assert.Equal(isTaken, Fault.TryParse($"w-5:resistive={size}", Catalogue, out _, out var hasSize, out var reason));
        Assert.True(hasSize);
        Assert.Equal(isTaken ? "" : $"\"{size}\" is no size; a number from 0 to 1e12 is expected", reason);
    }

    [Fact]
    public void A_name_that_is_no_fault_is_answered_with_one_that_is()
    {
        Assert.False(Fault.TryParse("w-5:torn=3", Catalogue, out _, out var hasSize, out var reason));
        Assert.True(hasSize);
        Assert.StartsWith("\"w-5:torn\" is no fault of this sheet", reason, StringComparison.Ordinal);
        Assert.Contains($"for example {Catalogue.Modes[0].Name}", reason, StringComparison.Ordinal);
        Assert.False(Fault.TryParse("torn", Catalogue, out _, out hasSize, out _));
        Assert.False(hasSize);
    }

    [Fact]
    public void A_size_of_nothing_is_written_only_where_a_size_belongs()
    {
        var (worn, open) = (Catalogue.Find("roller-left:worn")!, Catalogue.Find("pilot:open")!);
        Assert.Equal("roller-left:worn=0", new Fault(worn, 0).ToString());
        Assert.Equal("roller-left:worn=1.235", new Fault(worn, 1.23456).ToString());
        Assert.Equal("pilot:open", new Fault(open, 0).ToString());
        Assert.Equal("pilot:open=2", new Fault(open, 2).ToString());
        Assert.Equal("pilot:open", open.ToString());
    }

    /// <summary>An element with chances takes at most one fault: of n of them no more than n can be expected, and 0.999·n is the most that is asked.</summary>
    [Fact]
    public void More_faults_than_elements_cannot_be_expected()
    {
        var two = new SheetDraft().Wire("a", "x", "y", 1).Wire("b", "y", "z", 1).Unit().Catalogue;
        Assert.Equal(2 * 0.999, two.Chances(two.Odds(50)).Sum(), 1e-6);
        Assert.Equal(0.001, two.Chances(two.Odds(0.001)).Sum(), 1e-9);
        Assert.Equal(1.99, two.Chances(two.Odds(1.99)).Sum(), 1e-6);
    }

    [Fact]
    public void Where_nothing_can_fail_nothing_is_scaled()
    {
        var sound = new SheetDraft().Element("wire", "a", "x", "y", new { ohms = 1, faults = new { open = 0, resistive = 0 } }).Unit();
        Assert.Equal([0.0, 0.0], sound.Catalogue.Odds(2));
        var half = new SheetDraft()
            .Element("wire", "a", "x", "y", new { ohms = 1, faults = new { open = 0, resistive = 0 } })
            .Wire("b", "y", "z", 1)
            .Unit()
            .Catalogue;
        Assert.Equal(0.999, half.Chances(half.Odds(5)).Sum(), 1e-6);
    }

    [Fact]
    public void A_size_range_of_one_value_is_none_to_be_estimated()
    {
        static FaultMode Shorted(double turns) =>
            new SheetDraft().Core("core", "coil", 1000, 1).Winding("coil", "a", "b", turns, 1).Unit().Catalogue.Find("coil:shorted-turns")!;
        Assert.False(Shorted(15).HasSize);
        Assert.True(Shorted(100).HasSize);
        Assert.False(Catalogue.Find("pilot:open")!.HasSize);
        Assert.Equal(0, Catalogue.Find("pilot:open")!.MiddleSize);
        // 1 to 6 turns: the middle is √6 = 2.45, and turns are whole.
        Assert.Equal(2, Shorted(100).MiddleSize);
    }

    [Fact]
    public void A_reversed_winding_is_laid_out_once_and_only_where_taps_or_sliders_hang_on_it()
    {
        var unit = new BenchUnit(Reference.Twin160);
        var spec = Reference.Twin160.FindReading("ohms-left")!;
        var circuits = new FaultedCircuits(unit.Model, spec, spec.State);
        var (tapped, plain, open) = (unit.Faults("main:reversed"), unit.Faults("boost-left:reversed"), unit.Faults("main:open"));
        Assert.Same(circuits.Usual, circuits.For([]));
        Assert.Same(circuits.Usual, circuits.For(plain));
        Assert.Same(circuits.Usual, circuits.For(open));
        Assert.NotSame(circuits.Usual, circuits.For(tapped));
        Assert.Same(circuits.For(tapped), circuits.For([.. plain, .. tapped]));
        Assert.True(tapped[0].ReversesChain(unit.Model));
        Assert.False(plain[0].ReversesChain(unit.Model));
        Assert.False(open[0].ReversesChain(unit.Model));
    }

    [Fact]
    public void A_text_with_three_ends_is_refused_and_one_that_is_read_has_no_reason()
    {
        Assert.Null(EndExchange.Apply(Reference.Twin160, "w-5.to~w-17.to~w-5.from:swap", out var reason));
        Assert.Contains("names no two ends", reason, StringComparison.Ordinal);
        Assert.NotNull(EndExchange.Apply(Reference.Twin160, "w-5.from~w-17.to:swap", out reason));
        Assert.Equal("", reason);
        Assert.Null(EndExchange.Apply(Reference.Twin160, "w-99.from~w-17.to:swap", out reason));
        Assert.NotEqual("", reason);
    }
}
