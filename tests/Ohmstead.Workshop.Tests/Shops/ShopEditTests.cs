using System.Text.Json;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Shops;

public class ShopEditTests
{
    private static readonly Shop Shop = Shop.Usual;

    [Fact]
    public void The_usual_shop_written_and_read_is_the_same_text_again()
    {
        var text = JsonSerializer.Serialize(Shop, FactText.Options);
        Assert.Equal(text, JsonSerializer.Serialize(JsonSerializer.Deserialize<Shop>(text, FactText.Options), FactText.Options));
    }

    [Fact]
    public void Every_limit_has_a_source_and_every_meter_reads_every_quantity()
    {
        Assert.All(Shop.Limits, l => Assert.NotEmpty(l.Source));
        Assert.All(Shop.Meters, m => Assert.All(ShopEdit.Quantities, q => Assert.True(m.Errors.ContainsKey(q.Name))));
    }

    [Theory]
    [InlineData("62,5", 62.5)]
    [InlineData(" 2e6 ", 2e6)]
    public void Numbers_are_read_with_point_or_comma(string text, double value) => Assert.Equal((value, ""), ShopEdit.Number(text, 0, 1e9));

    /// <summary>As with a reading: half a kilo-ohm or half a megohm is asked, not guessed.</summary>
    [Theory]
    [InlineData("500,000", "500.000 or 500000")]
    [InlineData("1 234", "without them")]
    [InlineData("1.234,5", "without them")]
    public void A_comma_that_may_stand_for_thousands_is_asked_about(string text, string asked)
    {
        var (value, problem) = ShopEdit.Number(text, 0, 1e9);
        Assert.Equal(0, value);
        Assert.Contains(asked, problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("a lot")]
    [InlineData("-1")]
    [InlineData("NaN")]
    [InlineData("1e99")]
    public void What_is_no_number_in_range_says_what_would_be(string text) =>
        Assert.Contains("0", ShopEdit.Number(text, 0, 1e9).Problem, StringComparison.Ordinal);

    /// <summary>Two megohms is 2 in its field, not 2000000, whose zeros nobody counts.</summary>
    [Fact]
    public void An_insulation_limit_is_entered_in_megohms_and_kept_in_ohms()
    {
        var at = Shop.Limits.ToList().FindIndex(l => l.Id == "insulation");
        Assert.Equal(("2", "MΩ"), (ShopEdit.Show(Shop.Limits[at]), Shop.Limits[at].EnteredIn));
        Assert.Equal(5.5e6, ShopEdit.LimitValue(Shop, at, "5,5").Shop!.Limits[at].Value);
        Assert.Equal("Must be 0 to 1000000.", ShopEdit.LimitValue(Shop, at, "2000001").Problem);
        var current = Shop.Limits.ToList().FindIndex(l => l.Id == "touch-current");
        Assert.Equal(0.5, ShopEdit.LimitValue(Shop, current, "0.5").Shop!.Limits[current].Value);
    }

    [Fact]
    public void A_meter_without_any_error_is_refused()
    {
        var exact = Shop.WithMeter(0, m => m with { Errors = m.Errors.SetItem("watts", new ShopMeterError(0.8, 0, 0, 0)) });
        Assert.Contains(
            "cannot both be 0",
            ShopEdit.MeterError(exact, 0, "watts", (e, v) => e with { Percent = v }, "0", 0, 50).Problem,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_ohms_of_a_lamp_follow_from_its_volts_and_amps()
    {
        var at = Shop.Loads.Length;
        var shop = Shop.AddLoad(isLamp: true).WithLoad(at, l => l with { Volts = 12, Amps = 2 });
        Assert.Equal(6, shop.Loads[at].Ohms);
    }

    [Fact]
    public void What_is_added_has_an_id_of_its_own()
    {
        var shop = Shop.AddMeter().AddMeter().AddLoad(false).AddLoad(false).AddItem().AddItem();
        Assert.Equal(shop.Meters.Length, shop.Meters.Select(m => m.Id).Distinct().Count());
        Assert.Equal(shop.Loads.Length, shop.Loads.Select(l => l.Id).Distinct().Count());
        Assert.Equal(shop.LookOver.Length, shop.LookOver.Select(i => i.Id).Distinct().Count());
    }
}
