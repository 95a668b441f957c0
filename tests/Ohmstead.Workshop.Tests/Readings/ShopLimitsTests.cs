using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>Of a type sheet's limits and the shop's the stricter binds, and its source is said.</summary>
public class ShopLimitsTests
{
    private static readonly TypeSheet Twin = OnTheBench.SheetOf("demo/twin-175.sheet.json");

    private static Shop With(string id, double value) =>
        OnTheBench.Shop with
        {
            Limits = [new ShopLimit(id, "", value, "", "the shop's own book", "")],
        };

    private static ReadingSpec Of(string id, Shop shop, TypeSheet? sheet = null) => ShopLimits.Bind(sheet ?? Twin, shop).FindReading(id)!;

    [Fact]
    public void A_stricter_shop_binds_every_insulation_reading_from_the_mains_side_and_no_other()
    {
        var strict = With("insulation", 5e6);
        Assert.Equal(5e6, Of("insulation-core", strict).Limits!.Min);
        Assert.Equal("the shop's limit, at least 5.00 MΩ", LimitWords.WithSource(Of("insulation-posts", strict)));
        // From the posts to the core nothing is on the mains side.
        Assert.Equal(Twin.FindReading("insulation-posts-core"), Of("insulation-posts-core", strict));
        Assert.Equal(Twin.FindReading("blades"), Of("blades", strict));
        var bare = Twin with { Readings = [.. Twin.Readings.Select(r => r.Id == "insulation-core" ? r with { Limits = null } : r)] };
        Assert.Equal(5e6, Of("insulation-core", strict, bare).Limits!.Min);
    }

    [Fact]
    public void A_laxer_shop_changes_nothing_and_the_sheet_is_named()
    {
        var lax = Of("insulation-core", With("insulation", 1e6));
        Assert.Equal("the type sheet's limit, at least 2.00 MΩ", LimitWords.WithSource(lax));
        Assert.Same(Twin, ShopLimits.Bind(Twin, OnTheBench.Shop));
    }

    /// <summary>3 MΩ ± (5 % + 20 kΩ) passes a limit of 2 MΩ and fails one of 5 MΩ.</summary>
    [Fact]
    public void The_shops_limit_keeps_a_gate_shut_that_the_sheet_would_open()
    {
        var bench = new OnTheBench().ColdGates().Read("insulation-core", 3e6);
        Assert.True(bench.Offer("lamp-60").IsOpen);
        var shop = OnTheBench.Shop with { Limits = With("insulation", 5e6).Limits };
        var shut = StillShut.Of(bench.Unit, OnTheBench.Sheet, shop).First(s => s.Gate.Id == "insulation-core");
        Assert.Equal(CheckEnd.Failed, shut.End);
        Assert.Contains("failed the shop's limit, at least 5.00 MΩ", shut.Why, StringComparison.Ordinal);
        Assert.DoesNotContain(StillShut.Of(bench.Unit, OnTheBench.Sheet, OnTheBench.Shop), s => s.Gate.Id == "insulation-core");
    }

    [Fact]
    public void Less_than_a_dry_unit_has_passes_and_is_remarked_on()
    {
        var spec = Of("insulation-core", With("insulation-usual", 100e6));
        var band = new Expectation(Quantity.InsulationOhms, 60e6, 20e6, 200e6);
        Meaning Said(double ohms) => Meaning.Of(Shown.Number(ohms), spec, band, Meter.Usual.For(Quantity.InsulationOhms));
        Assert.Equal((Verdict.AlittleOff, "passed, under 100 MΩ"), (Said(50e6).Verdict, Said(50e6).Words));
        Assert.Contains("Dry it slowly", Said(50e6).Next, StringComparison.Ordinal);
        Assert.Equal(new Meaning(Verdict.Normal, "passed"), Said(120e6));
        Assert.Equal(
            "passed",
            Meaning.Of(Shown.OverRange, spec, band with { High = double.PositiveInfinity }, Meter.Usual.For(Quantity.InsulationOhms)).Words
        );
    }

    [Theory]
    [InlineData(175, 125, 60, 105, "the shop's limit; the shop's own book")]
    [InlineData(175, 100, 70, 100, "type sheet")]
    [InlineData(175, 0, 70, 122.5, "the shop's limit; the shop's own book")]
    [InlineData(0, 100, 70, 100, "type sheet")]
    [InlineData(0, 0, 70, 0, "")]
    public void The_usable_watts_are_the_stricter_ones(double printed, double sheet, double percent, double watts, string source)
    {
        var (usable, who) = ShopLimits.UsableWatts(printed, sheet, With("usable", percent));
        Assert.Equal(watts, usable, 1e-9);
        Assert.Equal(source, who);
    }

    [Fact]
    public void What_a_limit_does_here_is_said()
    {
        string Use(string id, double value) => ShopLimits.UseOf(ShopLimits.Bind(Twin, With(id, value)), With(id, value).Limits[0]);
        Assert.Equal("used in 2", Use("insulation", 5e6));
        Assert.Equal("the type sheet is stricter", Use("insulation", 1e6));
        Assert.Equal("not measured here", Use("rise", 65));
        Assert.NotEqual(ShopLimits.InsulationOf(With("insulation", 5e6)), ShopLimits.InsulationOf(With("insulation", 6e6)));
    }
}
