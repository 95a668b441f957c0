using System.Text.Json.Nodes;
using CsCheck;
using MathNet.Numerics.Distributions;

namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>A limit, a reading and the meter's error.</summary>
public class VerdictTests
{
    private static JsonObject Asked_(string limit, string values, string error) =>
        Asked.Answer($"\"question\": \"verdict\", \"limit\": {{ {limit} }}, \"values\": [{values}], {error}");

    /// <remarks>JCGM 106 clause 7.4: inputs seen at metrologyrules.com, its answer 0.6626 inside from memory, recomputed (check value 9.3).</remarks>
    [Fact]
    public void A_known_uncertainty_gives_the_published_chance_of_conformity()
    {
        var answer = Asked_("\"min\": 12.5, \"max\": 16.3", "13.6", "\"standardUncertainty\": 1.8");
        Assert.Equal(100 - 66.26, answer.Number("chanceOutsidePercent"), 0.01);
        Assert.False(answer.At("meterFineEnough")!.GetValue<bool>());
    }

    /// <remarks>ILAC-G8:09/2019, from memory (check value 9.4): w = U 2.28 %, w = 1.645u 5.0 %, w = 0 50 %.</remarks>
    [Theory]
    [InlineData(1, 2.275)]
    [InlineData(0.8225, 5.0)]
    [InlineData(0, 50)]
    public void At_the_limit_a_guard_band_lets_through_what_the_guide_says(double guard, double percent) =>
        Assert.Equal(
            percent,
            Asked_("\"max\": 10", "9", FormattableString.Invariant($"\"standardUncertainty\": 0.5, \"guard\": {guard}"))
                .Number("falseAcceptAtLimitPercent"),
            0.01
        );

    /// <remarks>ILAC-G8 cl. 4.2.3 mirrored for a lower limit; figures are common practice, no source (check values 8.11, 9.6).</remarks>
    [Theory]
    [InlineData("2.30", "pass")]
    [InlineData("2.10", "close-pass")]
    [InlineData("1.95", "close-fail")]
    [InlineData("1.80", "fail")]
    public void Four_readings_around_a_lower_limit_have_the_four_words(string value, string word) =>
        Assert.Equal(word, Asked_("\"min\": 2", value, "\"meter\": { \"percent\": 5, \"floor\": 0.03 }").Text("verdict"));

    /// <remarks>GUM 4.3.7: rectangular ±1.5 V is u = 0.866 V (check value 9.5, seen). ±(0.5 % + 3 digits) at 2.000 V: 0.013 V (9.8, seen).</remarks>
    [Theory]
    [InlineData(120.0, 1, 0.3, 1.5)]
    [InlineData(2.0, 0.5, 0.003, 0.013)]
    [InlineData(2.0, 0.08, 0.002, 0.0036)]
    [InlineData(100.0, 1, 0.2, 1.2)]
    public void One_reading_has_the_meters_error_alone(double value, double percent, double floor, double limit)
    {
        var answer = Asked_(
            "\"min\": 0",
            FormattableString.Invariant($"{value}"),
            FormattableString.Invariant($"\"meter\": {{ \"percent\": {percent}, \"floor\": {floor} }}")
        );
        Assert.Equal(limit / Math.Sqrt(3), answer.Number("standardUncertainty"), 1e-9);
        Assert.Equal(2 * limit / Math.Sqrt(3), answer.Number("acceptFrom"), 1e-9);
        Assert.Null(answer.At("acceptTo"));
    }

    [Fact]
    public void Of_two_limits_the_worse_counts()
    {
        Assert.Equal("fail", Asked_("\"min\": 10, \"max\": 20", "25", "\"meter\": { \"percent\": 0, \"floor\": 1 }").Text("verdict"));
        Assert.Equal(
            "close-pass",
            Asked_("\"min\": 10, \"max\": 20", "10.5", "\"meter\": { \"percent\": 0, \"floor\": 1 }").Text("verdict")
        );
        Assert.Equal("pass", Asked_("\"min\": 10, \"max\": 20", "15", "\"meter\": { \"percent\": 0, \"floor\": 1 }").Text("verdict"));
    }

    /// <remarks>By another road: the rectangle cut into strips, each strip's normal chance by Math.NET.</remarks>
    [Fact]
    public void The_chance_outside_is_that_of_a_rectangle_and_a_normal_law_together() =>
        Gen.Select(Gen.Double[-4, 4], Gen.Double[0.02, 2], Gen.Double[0.02, 2])
            .Sample(
                (off, limit, spread) =>
                {
                    var answer = Asked_(
                        "\"min\": 10",
                        FormattableString.Invariant($"{10 + off:R}"),
                        FormattableString.Invariant($"\"knownSpread\": {spread:R}, \"meter\": {{ \"percent\": 0, \"floor\": {limit:R} }}")
                    );
                    const int strips = 4000;
                    var expected = Enumerable
                        .Range(0, strips)
                        .Average(n => Normal.CDF(0, spread, -off - limit + (2 * limit * (n + 0.5) / strips)));
                    Assert.Equal(100 * expected, answer.Number("chanceOutsidePercent"), 1e-4 + (1e-5 * expected));
                },
                iter: 60
            );

    [Fact]
    public void A_rectangle_alone_is_cut_straight() =>
        // 0.3 of ±1 above the least: of the rectangle from −0.7 to 1.3 around it, 0.7 lies below.
        Assert.Equal(35, Asked_("\"min\": 10", "10.3", "\"meter\": { \"percent\": 0, \"floor\": 1 }").Number("chanceOutsidePercent"), 1e-9);

    [Fact]
    public void Three_in_four_readings_scatter_by_the_wider_law()
    {
        // 1, 2, 3, 4: s² = 5/3; of the mean s²/4, times (4 − 1)/(4 − 3) for s being known from four alone: 1.25 (JCGM 101 6.4.9.4, from memory).
        var answer = Asked_("\"min\": 0", "1, 2, 3, 4", "\"meter\": { \"percent\": 0, \"floor\": 0 }");
        Assert.Equal(Math.Sqrt(1.25), answer.Number("standardUncertainty"), 1e-9);
    }

    [Fact]
    public void A_known_spread_falls_with_the_root_of_the_count() =>
        Assert.Equal(
            0.3 / Math.Sqrt(2),
            Asked_("\"min\": 0", "1, 2", "\"knownSpread\": 0.3, \"meter\": { \"percent\": 0, \"floor\": 0 }").Number("standardUncertainty"),
            1e-9
        );

    [Theory]
    [InlineData("\"min\": 2", 20, "pass")]
    [InlineData("\"min\": 30", 20, "not judged")]
    [InlineData("\"max\": 2", 20, "fail")]
    [InlineData("\"max\": 30", 20, "not judged")]
    [InlineData("\"min\": 1, \"max\": 30", 20, "not judged")]
    public void Over_range_says_what_lies_below_it(string limit, double above, string word)
    {
        var answer = Asked_(limit, "\"OL\"", FormattableString.Invariant($"\"overRangeAbove\": {above}"));
        Assert.Equal(("OL", word), (answer.Text("value"), answer.Text("verdict")));
        Assert.Null(answer.At("chanceOutsidePercent"));
    }

    /// <remarks>
    /// IEC 60990 by service notes: 0.35 V peak is 0.7 mA on 500 Ω, 1.0 V is 2.0 mA, 35 V peak is 70 mA (check value 8.1, seen). ANSI/UL 101, from memory: 1494.6 Ω at 60 Hz
    /// (8.4): 0.5 MIU, the old limit of UL 8750 cl. 8.7.1 and ANSI C101 (8.3, seen), is 0.7473 V.
    /// </remarks>
    [Theory]
    [InlineData("weighted-500-ohm", 0.35, 0.7)]
    [InlineData("weighted-500-ohm", 1.0, 2.0)]
    [InlineData("weighted-500-ohm", 35, 70)]
    [InlineData("1500-ohm-0.15-uF", 0.7473, 0.5)]
    [InlineData("1500-ohm", 0.75, 0.5)]
    public void Volts_across_a_network_are_so_many_milliamps(string network, double volts, double milliamps)
    {
        var answer = Touch(network, volts, "");
        Assert.Equal(milliamps, answer.Number("milliamps[0]"), 5e-5);
        Assert.Equal(milliamps, answer.Number("value"), 5e-5);
    }

    /// <remarks>ANSI/UL 101, from memory: 1500 Ω beside 0.15 µF has its corner at 707 Hz (check value 8.4): there │Z│ is 1500/√2.</remarks>
    [Fact]
    public void At_its_corner_the_network_of_two_has_lost_a_part_in_root_two() =>
        Assert.Equal(0.5 * Math.Sqrt(2), Touch("1500-ohm-0.15-uF", 0.75, "", hertz: 707).Number("value"), 5e-4);

    [Fact]
    public void The_worse_way_of_the_plug_counts() =>
        Assert.Equal(2 * 0.4, Touch("weighted-500-ohm", 0.1, "", other: 0.4).Number("value"), 1e-12);

    [Fact]
    public void Without_a_proved_earth_touch_current_is_not_judged() =>
        Assert.Equal("not judged", Touch("1500-ohm", 0.01, ", \"earthProved\": false").Text("verdict"));

    private static JsonObject Touch(string network, double volts, string more, double other = 0, double hertz = 60) =>
        Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"verdict\", \"limit\": {{ \"max\": 5, \"unit\": \"mA\" }}, \"meter\": {{ \"percent\": 1, \"floor\": 0.001 }}, \"touch\": {{ \"volts\": [{volts:R}, {other:R}], \"network\": \"{network}\", \"hertz\": {hertz}{more} }}"
            )
        );

    [Fact]
    public void No_verdict_certifies() =>
        Assert.Equal(
            "tests recorded; no certification",
            Asked_("\"min\": 1", "2", "\"meter\": { \"percent\": 1, \"floor\": 0 }").At("outside")!.AsArray()[^1]!.GetValue<string>()
        );

    [Fact]
    public void The_limit_is_printed_with_its_source_edition_and_clause()
    {
        var answer = Asked_(
            "\"min\": 2, \"unit\": \"MΩ\", \"source\": \"IEC 61558-1\", \"edition\": \"from memory\", \"clause\": \"18.2\"",
            "5",
            "\"meter\": { \"percent\": 5, \"floor\": 0.03 }"
        );
        Assert.Equal(("IEC 61558-1", "18.2"), (answer.Text("limit.source"), answer.Text("limit.clause")));
        Assert.Contains(answer.At("words")!.AsArray(), w => w!.GetValue<string>() == "Limit: IEC 61558-1, from memory, 18.2.");
    }

    [Theory]
    [InlineData("\"limit\": { \"min\": 2, \"max\": 2 }, \"values\": [3], \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.limit.min")]
    [InlineData("\"limit\": { \"unit\": \"V\" }, \"values\": [3], \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.limit.min")]
    [InlineData("\"limit\": { \"min\": 2 }, \"values\": [3, 4], \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.values")]
    [InlineData("\"limit\": { \"min\": 2 }, \"values\": [3, 4, 5], \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.values")]
    [InlineData("\"limit\": { \"min\": 2 }, \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.values")]
    [InlineData("\"limit\": { \"min\": 2 }, \"values\": [3]", "$.meter")]
    [InlineData("\"limit\": { \"min\": 2 }, \"values\": [\"OL\"]", "$.overRangeAbove")]
    [InlineData("\"limit\": { \"min\": 2 }, \"values\": [3, \"OL\", 4, 5], \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.values[1]")]
    [InlineData("\"values\": [3], \"meter\": { \"percent\": 1, \"floor\": 0 }", "$.limit")]
    [InlineData(
        "\"limit\": { \"max\": 2 }, \"touch\": { \"volts\": [1], \"network\": \"1500-ohm\" }, \"meter\": { \"percent\": 1, \"floor\": 0 }",
        "$.touch.volts"
    )]
    [InlineData(
        "\"limit\": { \"max\": 2 }, \"touch\": { \"volts\": [1, 2], \"network\": \"2000-ohm\" }, \"meter\": { \"percent\": 1, \"floor\": 0 }",
        "$.touch.network"
    )]
    public void What_cannot_be_judged_is_refused_where_it_stands(string fields, string path) =>
        Assert.Equal([path], Asked.Refused($"\"question\": \"verdict\", {fields}"));
}
