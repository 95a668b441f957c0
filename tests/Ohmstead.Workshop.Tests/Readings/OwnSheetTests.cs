using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

public class OwnSheetTests
{
    private static PartChanged Part(string element, PartChange change, object? part = null) =>
        new(element, change, part is null ? null : JsonSerializer.SerializeToElement(part), "");

    private static double Percent(TypeSheet sheet, string element, string mode) =>
        sheet.Elements.Single(e => e.Id == element).Percents.GetValueOrDefault(mode, double.NaN);

    [Fact]
    public void An_untouched_unit_is_its_type() => Assert.Same(OnTheBench.Sheet, new OnTheBench().Own);

    [Fact]
    public void A_renewed_slider_and_a_rewired_wire_have_other_chances()
    {
        var wire = OnTheBench.Sheet.Elements.First(e => e.Kind == ElementKind.Wire).Id;
        var own = new OnTheBench().Add(Part("roller-left", PartChange.Renewed)).Add(Part(wire, PartChange.Rewired)).Own;
        // docs/formats.md: a tenth of 25 % for a renewed slider; of a rewire: a wire left off in 2 %, cold in 3 %.
        Assert.Equal(2.5, own.Windings.SelectMany(w => w.Sliders).Single(s => s.Id == "roller-left").Percents["worn"]);
        Assert.Equal((2.0, 3.0), (Percent(own, wire, "open"), Percent(own, wire, "resistive")));
    }

    [Fact]
    public void A_diode_in_place_of_a_disc_is_what_the_circuit_has_then()
    {
        var disc = OnTheBench.Sheet.Elements.OfType<Rectifier>().First();
        var diode = new
        {
            id = disc.Id,
            kind = "rectifier",
            from = disc.From,
            to = disc.To,
            saturationAmps = 1e-9,
            slopeVolts = 0.05,
            seriesOhms = 0.02,
            leakageOhms = 1e6,
        };
        var bench = new OnTheBench().Add(Part(disc.Id, PartChange.Replaced, diode));
        Assert.Equal(1e6, bench.Own.Elements.OfType<Rectifier>().Single(r => r.Id == disc.Id).LeakageOhms);
        var once = Percent(bench.Own, disc.Id, "high-drop");
        // Renewed again it is still a new part: its chances are lowered once.
        Assert.Equal(once, Percent(bench.Add(Part(disc.Id, PartChange.Renewed)).Own, disc.Id, "high-drop"));
    }

    [Fact]
    public void What_was_renewed_and_then_removed_is_gone()
    {
        var lamp = OnTheBench.Sheet.Elements.OfType<Lamp>().First().Id;
        var bench = new OnTheBench()
            .Add(Part(lamp, PartChange.Renewed))
            .Add(Part(lamp, PartChange.Rewired))
            .Add(Part(lamp, PartChange.Removed));
        Assert.DoesNotContain(bench.Own.Elements, e => e.Id == lamp);
    }

    [Fact]
    public void A_change_that_makes_no_circuit_is_told_not_thrown()
    {
        var bench = new OnTheBench().Add(Part("no-such-part", PartChange.Renewed));
        var parsed = OwnSheet.Of(bench.Unit, OnTheBench.Sheet);
        Assert.False(parsed.IsSound);
        Assert.Contains("no-such-part", Assert.Single(parsed.Problems).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_taken_back_change_no_longer_counts()
    {
        var bench = new OnTheBench().Add(Part("roller-left", PartChange.Renewed));
        bench.Add(new Corrected(bench.Unit.Last.Id, null));
        Assert.Same(OnTheBench.Sheet, bench.Own);
    }

    /// <summary>Both ends of the primary on one terminal is a winding that nothing feeds; where it is, it may stay.</summary>
    [Fact]
    public void What_makes_no_circuit_is_refused_before_it_is_entered()
    {
        var unit = new OnTheBench().Unit;
        var ends = Workshop.Wiring.WireEnds.Of(OnTheBench.Sheet);
        Assert.Equal("", OwnSheet.WhyNot(unit, OnTheBench.Sheet, Workshop.Wiring.WireEnds.Keep(ends.Take(1), OnTheBench.Sheet)));
        var wrong = new PartChanged("no-such-part", PartChange.Removed, null, "");
        Assert.StartsWith("That makes no circuit: ", OwnSheet.WhyNot(unit, OnTheBench.Sheet, [wrong]), StringComparison.Ordinal);
    }
}
