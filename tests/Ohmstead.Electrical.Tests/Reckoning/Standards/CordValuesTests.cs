using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>Cords, extension cords, plugs and the line against published values (tests/Reference/published/cords.json, check values 5.2–5.9).</summary>
public class CordValuesTests
{
    public static TheoryData<string> Three => [.. Published.All("cords", "5.2-").Select(p => p.Id)];

    public static TheoryData<string> Extensions => [.. Published.All("cords", "5.5-").Select(p => p.Id)];

    private static string Cord(Published p, double amps, double feet, string rest) =>
        FormattableString.Invariant(
            $"\"question\": \"cord\", \"gaugeAwg\": {p.Given("gaugeAwg")}, \"amps\": {amps}, \"metres\": {feet * 0.3048:R}, \"supplyVolts\": 120, {rest}"
        );

    [Theory]
    [MemberData(nameof(Three))]
    public void A_cord_with_three_conductors_in_use_carries_less(string id)
    {
        var p = Published.Case("cords", id);
        p.Agrees("amps", Asked.Answer(Cord(p, 1, 6, "\"conductors\": 3")).Number("ampacityAmps"), 1e-9);
        Assert.True(Asked.Answer(Cord(p, 1, 6, "\"conductors\": 2")).Number("ampacityAmps") > p.Expected("amps"));
    }

    [Theory]
    [MemberData(nameof(Extensions))]
    public void An_extension_cord_may_be_as_long_as_tabled_and_no_longer(string id)
    {
        var p = Published.Case("cords", id);
        (double Feet, string Why) Of(double feet)
        {
            var answer = Asked.Answer(Cord(p, p.Given("amps"), feet, "\"extension\": true, \"ratedAmps\": 20"));
            return (answer.Number("extensionFeet"), string.Join(", ", answer["why"]!.AsArray()));
        }
        p.Agrees("feet", Of(10).Feet, 1e-9);
        Assert.Equal(("", "too long"), (Of(p.Expected("feet")).Why, Of(p.Expected("feet") + 1).Why));
    }

    /// <remarks>12 AWG may be 100 ft for 15 A, 14 AWG 50 ft (check value 5.5): 10 AWG and 4 mm² are thicker than 12, 2.5 mm² only than 14.</remarks>
    [Theory]
    [InlineData("\"gaugeAwg\": 10", 100)]
    [InlineData("\"squareMillimetres\": 4", 100)]
    [InlineData("\"squareMillimetres\": 2.5", 50)]
    public void A_cord_between_the_rows_counts_as_the_next_thinner_one(string copper, double feet)
    {
        var answer = Asked.Answer(
            $"\"question\": \"cord\", {copper}, \"amps\": 15, \"metres\": 15, \"supplyVolts\": 120, \"extension\": true, \"ratedAmps\": 30"
        );
        Assert.Equal(feet, answer.Number("extensionFeet"));
        Assert.Empty(answer["why"]!.AsArray());
    }

    [Fact]
    public void An_extension_cord_that_no_table_has_is_too_long_at_any_length()
    {
        var answer = Asked.Answer(Cord(Published.Case("cords", "5.5-16-13"), 14, 6, "\"extension\": true, \"ratedAmps\": 20"));
        Assert.Equal("too long", string.Join(", ", answer["why"]!.AsArray()));
        Assert.False(answer.ContainsKey("extensionFeet"));
    }

    [Fact]
    public void One_blade_of_a_polarized_plug_is_wider()
    {
        var p = Published.Case("cords", "5.8");
        p.Agrees("wideInches", PlugBlades.WideInches, 1e-9);
        p.Agrees("narrowInches", PlugBlades.NarrowInches, 1e-9);
        Assert.Contains("5/16 in against 1/4 in", PlugBlades.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_lies_within_five_percent()
    {
        var p = Published.Case("cords", "5.9");
        Assert.Equal(SupplyRange.NominalVolts, p.Given("volts"));
        p.Agrees("low", SupplyRange.Low, 1e-9);
        p.Agrees("high", SupplyRange.High, 1e-9);
    }
}
