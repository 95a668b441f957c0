using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Shops;

/// <summary>The limits that a shop starts with, beside the published figures they come from or keep to.</summary>
public class UsualLimitTests
{
    private static ShopLimit Get(string id) => Shop.Usual.Limits.Concat(Shop.Usual.TestLimits).Single(l => l.Id == id);

    private static double Rise(char letter) =>
        WindingClass.All.Single(c => c.Title.StartsWith($"Class {letter}", StringComparison.Ordinal)).RiseKelvin;

    /// <remarks>
    /// IEC 61558-1, table 1, from memory: 100, 115, 120 °C by resistance (check value 2.10), in its warmest room of 35 °C, from memory too.
    /// </remarks>
    [Theory]
    [InlineData('A', 100)]
    [InlineData('E', 115)]
    [InlineData('B', 120)]
    public void A_class_rises_to_the_temperature_of_the_standards_table(char letter, double celsius) =>
        Assert.Equal(celsius - 35, Rise(letter));

    /// <remarks>IEC 60085, three pages agree, seen: hottest spot of A, E, B 105, 120, 130 °C (check value 2.8).</remarks>
    [Theory]
    [InlineData('A', 105)]
    [InlineData('E', 120)]
    [InlineData('B', 130)]
    public void In_a_room_of_forty_degrees_no_class_ends_above_its_hottest_spot(char letter, double celsius) =>
        Assert.InRange(Rise(letter) + 40, celsius - 5, celsius);

    /// <remarks>FAA L-830, 4.2.4, seen (check value 2.6).</remarks>
    [Fact]
    public void An_isolating_transformer_has_its_own_limit()
    {
        var own = WindingClass.All[^1];
        Assert.Equal((55, "FAA L-830, 4.2.4"), (own.RiseKelvin, own.Source));
    }

    [Fact]
    public void A_shop_starts_with_the_class_of_old_units() =>
        Assert.Equal((WindingClass.Usual.RiseKelvin, WindingClass.Usual.Source), (Get("rise").Value, Get("rise").Source));

    /// <remarks>
    /// IS 8623, seen: 1,000 Ω for each volt of a test with 500 V or more (check value 8.8); IEC 60204-1, 18.3: 1 MΩ at 500 V, from memory.
    /// IEC 61558-1, 18.2, from memory, unsure of the rows: 2 MΩ (8.9). IEC 60364-6, from memory: 1 MΩ at 500 V (8.10).
    /// </remarks>
    [Fact]
    public void Insulation_is_held_to_the_published_floors()
    {
        Assert.Equal(2e6, Get("insulation").Value);
        Assert.Equal(1e6, Get("insulation-secondary").Value);
        foreach (var limit in new[] { Get("insulation"), Get("insulation-secondary") })
            Assert.True(limit.Value >= 1000 * 500 && limit.Value >= 1e6, limit.Title);
        Assert.Contains("IEC 61558-1, clause 18.2, from memory", Get("insulation").Source, StringComparison.Ordinal);
    }

    /// <remarks>IEC 60950 in a product-safety list, seen: class II 0.25 mA, a grounded household appliance 0.5 mA (check value 8.6).</remarks>
    [Fact]
    public void Touch_current_is_held_to_that_of_a_unit_without_a_ground() =>
        Assert.Equal((0.25, "mA"), (Get("touch-current").Value, Get("touch-current").Unit));

    /// <remarks>UL 1077 and UL 489, from memory: twice the rating, up to 30 A, opens within 2 minutes (check value 6.10).</remarks>
    [Fact]
    public void A_breaker_that_passes_keeps_the_published_two_minutes()
    {
        Assert.InRange(Get("breaker").Value, 30, 120);
        Assert.True(Get("breaker-short").Value < Get("breaker").Value);
    }
}
