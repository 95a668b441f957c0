using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Faults;

/// <summary>The fault modes of a sheet and their chances before any reading (docs/formats.md: its tables are common practice, no source).</summary>
public class FaultCatalogueTests
{
    private static readonly FaultCatalogue Catalogue = new(new UnitModel(Reference.Twin160));

    /// <summary>Kind, mode, percent, smallest and largest size of the fault table in docs/formats.md; 0 where there is no size.</summary>
    [Theory]
    [InlineData("wire", "open", 0.5, 0, 0)]
    [InlineData("wire", "resistive", 1.5, 0.4, 30)]
    [InlineData("joint", "open", 0.5, 0, 0)]
    [InlineData("joint", "resistive", 3, 0.4, 30)]
    [InlineData("winding", "open", 1, 0, 0)]
    [InlineData("winding", "shorted-turns", 1.5, 0.01, 0.06)]
    [InlineData("winding", "reversed", 0.5, 0, 0)]
    [InlineData("slider", "worn", 25, 0.6, 15)]
    [InlineData("slider", "open", 4, 0, 0)]
    [InlineData("breaker", "resistive", 10, 0.3, 5)]
    [InlineData("breaker", "open", 3, 0, 0)]
    [InlineData("breaker", "bypassed", 4, 0, 0)]
    [InlineData("rectifier", "high-drop", 30, 1, 8)]
    [InlineData("rectifier", "leaky", 20, 2, 15)]
    [InlineData("rectifier", "shorted", 6, 0, 0)]
    [InlineData("rectifier", "open", 8, 0, 0)]
    [InlineData("rectifier", "reversed", 2, 0, 0)]
    [InlineData("resistor", "open", 6, 0, 0)]
    [InlineData("resistor", "shorted", 2, 0, 0)]
    [InlineData("resistor", "drifted", 4, 0.4, 2.5)]
    [InlineData("capacitor", "open", 4, 0, 0)]
    [InlineData("capacitor", "leaky", 8, 1e3, 1e6)]
    [InlineData("capacitor", "shorted", 3, 0, 0)]
    [InlineData("lamp", "open", 10, 0, 0)]
    [InlineData("switch", "resistive", 12, 0.5, 20)]
    [InlineData("switch", "stuck-open", 4, 0, 0)]
    [InlineData("switch", "stuck-closed", 3, 0, 0)]
    [InlineData("insulation", "low", 5, 5e3, 1e6)]
    public void A_mode_has_the_chance_and_range_that_are_documented(string kind, string mode, double percent, double min, double max)
    {
        var spec = ElementKinds.All.Single(k => k.Word() == kind).Faults().Single(m => m.Mode == mode);
        Assert.Equal((percent, min, max), (spec.Percent, spec.Min, spec.Max));
        Assert.Equal(max > 0, spec.Size != SizeKind.None);
    }

    [Fact]
    public void There_is_no_mode_beside_those_28() => Assert.Equal(28, ElementKinds.All.Sum(k => k.Faults().Length));

    [Fact]
    public void Every_element_and_slider_of_the_sheet_is_listed_in_its_order()
    {
        var expected = Reference.Twin160.Elements.SelectMany(e => e is Winding w ? w.Sliders.Select(s => s.Id).Prepend(e.Id) : [e.Id]);
        Assert.Equal(expected, Catalogue.Modes.Select(m => m.Element).Distinct());
        Assert.Equal(Enumerable.Range(0, Catalogue.Modes.Length), Catalogue.Modes.Select(m => m.Number));
    }

    [Fact]
    public void The_modes_of_one_element_share_its_odds()
    {
        // P(mode) = o/(1 + Σo), o = p/(1 − p), for a disc of 30, 20, 6, 8 and 2 %.
        double[] odds = [0.3 / 0.7, 0.2 / 0.8, 0.06 / 0.94, 0.08 / 0.92, 0.02 / 0.98];
        var disc = new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "a",
                "b",
                new
                {
                    saturationAmps = 1e-3,
                    slopeVolts = 0.1,
                    seriesOhms = 0.1,
                    leakageOhms = 100,
                }
            )
            .Unit()
            .Catalogue;
        var chances = disc.Chances(disc.Odds(null));
        for (var n = 0; n < odds.Length; n++)
            Assert.Equal(odds[n] / (1 + odds.Sum()), chances[n], 1e-12);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    [InlineData(5)]
    public void Expected_faults_scale_all_odds_by_one_factor_until_the_chances_add_up(double expected)
    {
        var (plain, scaled) = (Catalogue.Odds(null), Catalogue.Odds(expected));
        Assert.Equal(expected, Catalogue.Chances(scaled).Sum(), 1e-6);
        var factor = scaled[0] / plain[0];
        for (var n = 0; n < plain.Length; n++)
            Assert.Equal(factor, scaled[n] / plain[n], 1e-9 * factor);
    }

    [Fact]
    public void A_sheet_may_set_its_own_chance()
    {
        var modes = new SheetDraft().Element("wire", "cord", "a", "b", new { ohms = 1, faults = new { open = 45 } }).Unit().Catalogue.Modes;
        Assert.Equal([45.0, 1.5], modes.Select(m => m.Percent));
    }

    [Theory]
    [InlineData(384, 4, 23)]
    [InlineData(60, 1, 3)]
    [InlineData(15, 1, 1)]
    [InlineData(100, 1, 6)]
    public void Shorted_turns_are_whole_and_between_one_and_six_percent(double turns, double min, double max)
    {
        var mode = new SheetDraft()
            .Core("core", "coil", 1000, 1)
            .Winding("coil", "a", "b", turns, 1)
            .Unit()
            .Catalogue.Find("coil:shorted-turns")!;
        Assert.Equal((min, max), (mode.Min, mode.Max));
        for (var k = 0; k <= 20; k++)
            Assert.Equal(Math.Round(mode.SizeAt(k / 20.0)), mode.SizeAt(k / 20.0));
    }

    [Fact]
    public void A_size_lies_evenly_on_a_logarithmic_scale()
    {
        var mode = Catalogue.Find("roller-left:worn")!;
        Assert.Equal(0.6, mode.SizeAt(0), 1e-12);
        Assert.Equal(15, mode.SizeAt(1), 1e-12);
        Assert.Equal(3, mode.SizeAt(0.5), 1e-12);
        Assert.Equal(3, mode.MiddleSize, 1e-12);
    }

    [Theory]
    [InlineData("roller-left:worn=2.5", 2.5, true)]
    [InlineData("roller-left:worn", 3, false)]
    [InlineData("primary:open", 0, false)]
    [InlineData("main:shorted-turns=2", 2, true)]
    public void A_fault_is_read_as_it_is_written(string text, double size, bool given)
    {
        Assert.True(Fault.TryParse(text, Catalogue, out var fault, out var hasSize, out _));
        Assert.Equal((size, given), (Math.Round(fault.Size, 9), hasSize));
    }

    [Theory]
    [InlineData("roller-left:torn")]
    [InlineData("roller-left")]
    [InlineData("worn")]
    [InlineData("")]
    [InlineData("roller-left:worn=")]
    [InlineData("roller-left:worn=2,5")]
    [InlineData("roller-left:worn=NaN")]
    [InlineData("roller-left:worn=-1")]
    [InlineData("roller-left:worn=1e300")]
    [InlineData("Roller-left:worn")]
    public void What_is_no_fault_is_refused_with_a_reason(string text)
    {
        Assert.False(Fault.TryParse(text, Catalogue, out _, out _, out var reason));
        Assert.NotEmpty(reason);
    }
}
