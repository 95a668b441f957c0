using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>Fuses, breakers and wires on a short against published values (tests/Reference/published/protection.json, check values 6.1–6.18).</summary>
public class ProtectionValuesTests
{
    private static TheoryData<string> Ids(params string[] begins) =>
        [.. begins.SelectMany(b => Published.All("protection", b)).Select(p => p.Id)];

    public static TheoryData<string> Gates => Ids("6.1-", "6.2-", "6.3-", "6.4-", "6.5-", "6.6-", "6.7-", "6.10-");

    public static TheoryData<string> Bands => Ids("6.8-");

    public static TheoryData<string> Conductors => Ids("6.11-");

    public static TheoryData<string> Factors => Ids("6.12-");

    [Theory]
    [MemberData(nameof(Gates))]
    public void A_fuse_or_breaker_opens_between_its_published_times(string id)
    {
        var p = Published.Case("protection", id);
        var row = Protector.Of(p.Word("family"), p.Given("ratedAmps"))!;
        if (p.Expects("leastSeconds"))
            p.Agrees("leastSeconds", row.EarliestSeconds(p.Given("times")), 1e-9);
        if (p.Expects("mostSeconds"))
            p.Agrees("mostSeconds", row.LatestSeconds(p.Given("times")), 1e-9);
        Assert.True(row.EarliestSeconds(p.Given("times")) <= row.LatestSeconds(p.Given("times")));
    }

    /// <remarks>6.8: 0.1 s is from memory (IEC 60898). Of curve D one manual prints 10 to 15 times: we take 20.</remarks>
    [Theory]
    [MemberData(nameof(Bands))]
    public void A_miniature_breaker_opens_at_once_above_its_magnetic_band(string id)
    {
        var p = Published.Case("protection", id);
        var row = Protector.Of(p.Word("family"), p.Given("ratedAmps"))!;
        Assert.Equal(0.1, row.LatestSeconds(p.Expected("toTimes")));
        Assert.True(row.LatestSeconds(0.99 * p.Expected("toTimes")) > 1);
        Assert.Equal(0.1, row.EarliestSeconds(p.Expected("fromTimes")));
        if (p.IsMisprinted)
            Assert.NotEqual(0.1, row.LatestSeconds(p.Misprinted("toTimes")));
    }

    [Fact]
    public void Between_two_gates_the_nearer_side_holds_and_up_to_its_rating_it_carries()
    {
        var row = Protector.Of("iec-quick", 2)!;
        Assert.Equal((2.0, 0.3), (row.LatestSeconds(3.9), row.LatestSeconds(9.9)));
        Assert.Equal((double.PositiveInfinity, 3600.0, 0.05), (row.EarliestSeconds(1), row.EarliestSeconds(1.2), row.EarliestSeconds(2.5)));
        Assert.Equal(double.PositiveInfinity, row.LatestSeconds(2));
        Assert.Null(Protector.Of("iec-time-lag", 8));
    }

    /// <remarks>6.9: SAE J553 summaries, seen: auto-reset, held open while powered, manual.</remarks>
    [Fact]
    public void Of_the_three_types_of_thermal_breaker_the_third_is_reset_by_hand()
    {
        Assert.Equal([1, 2, 3], ResetType.All.Select(t => t.Number));
        Assert.Contains("by itself", ResetType.All[0].Does, StringComparison.Ordinal);
        Assert.Contains("while it has power", ResetType.All[1].Does, StringComparison.Ordinal);
        Assert.Contains("by hand", ResetType.All[2].Does, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Conductors))]
    public void The_least_conductor_is_as_published(string id)
    {
        var p = Published.Case("protection", id);
        p.Agrees("square", WireHeat.LeastSquare(p.Given("amps"), p.Given("seconds"), p.Given("k")), 0.005);
    }

    [Theory]
    [MemberData(nameof(Factors))]
    public void The_factor_of_copper_follows_from_its_temperatures(string id)
    {
        var p = Published.Case("protection", id);
        p.Agrees("k", WireHeat.K(true, p.Given("start"), p.Given("end")), 0.05);
        p.Agrees("tabled", WireHeat.K(true, p.Given("start"), p.Given("end")), 0.25);
    }

    /// <remarks>148 and 228 of IEC 60949: 148·√ln((160 + 228)/(70 + 228)) = 76.0, as tabled for aluminum in PVC (from memory: 76).</remarks>
    [Fact]
    public void The_factor_of_aluminum_is_its_own() => Assert.Equal(76, WireHeat.K(false, 70, 160), 0.1);

    /// <remarks>6.13, seen and wrong: a page gives 159 for 30 to 500 °C; that belongs to 30 to 200 °C.</remarks>
    [Fact]
    public void The_factor_of_a_page_for_a_glowing_wire_is_not_ours()
    {
        var p = Published.Case("protection", "6.13");
        var ours = WireHeat.K(true, p.Given("start"), p.Given("end"));
        p.Agrees("k", ours, 0.5);
        Assert.True(ours - p.Misprinted("k") > 60);
        Assert.Equal(p.Misprinted("k"), WireHeat.K(true, 30, 200), 0.25);
    }

    private const double CircularMil = 0.000506707479;

    /// <remarks>6.14, seen and wrong: the page takes 234 − Ta and gets 178 A. With 234 + Ta it is 168.9 A.</remarks>
    [Fact]
    public void The_melting_amps_of_a_page_are_not_ours()
    {
        var p = Published.Case("protection", "6.14");
        var ours = WireHeat.MeltAmps(p.Given("circularMils") * CircularMil, p.Given("seconds"), p.Given("celsius"));
        p.Agrees("amps", ours, 0.1);
        Assert.True(p.Misprinted("amps") - ours > 8);
        var theirs = p.Given("circularMils") * Math.Sqrt(Math.Log10(((1083 - 25) / (234.0 - 25)) + 1) / (33 * 5));
        Assert.Equal(p.Misprinted("amps"), theirs, 0.5);
    }

    /// <remarks>6.15, seen and wrong in the same way: 2.26 s, where the page’s own terms give 2.50 s.</remarks>
    [Fact]
    public void The_melting_time_of_that_page_is_not_ours()
    {
        var p = Published.Case("protection", "6.15");
        var ours = WireHeat.MeltSeconds(p.Given("circularMils") * CircularMil, p.Given("amps"), p.Given("celsius"));
        p.Agrees("seconds", ours, 0.005);
        Assert.True(p.Misprinted("seconds") - ours > 0.2);
    }

    [Fact]
    public void A_bare_wire_melts_at_its_published_amps()
    {
        var p = Published.Case("protection", "6.16");
        var millimetres = p.Given("inches") * 25.4;
        p.Agrees("amps", WireHeat.FusingAmps(Math.PI / 4 * millimetres * millimetres), 0.2);
    }

    /// <remarks>
    /// 6.17: (I/A)²t = 0.0297·log₁₀(…) of cables, 1/33 of Onderdonk, A in circular mils. Ours is 226² in the same measure; the three agree
    /// within 2 %, which is what a factor is worth.
    /// </remarks>
    [Fact]
    public void Three_laws_of_a_wire_on_a_short_agree_within_two_percent()
    {
        var p = Published.Case("protection", "6.17");
        var k = WireHeat.K(true, 75, 250);
        var ours = k * k * CircularMil * CircularMil / Math.Log10((250 + 234.5) / (75 + 234.5));
        p.Agrees("constant", ours, 0.02 * p.Expected("constant"));
        p.Agrees("onderdonk", ours, 0.005 * p.Expected("onderdonk"));
    }

    [Fact]
    public void A_cord_bears_a_short_as_long_as_worked_out()
    {
        var p = Published.Case("protection", "6.18");
        p.Agrees("seconds", WireHeat.Seconds(p.Given("square"), p.Given("amps"), p.Given("k")), 0.005);
        // By gauge and temperatures the question finds the same.
        var answer = Asked.Answer("\"question\": \"fuse\", \"loadAmps\": 5, \"shortAmps\": 60, \"wire\": { \"gaugeAwg\": 18 }");
        p.Agrees("seconds", answer.Number("wireSeconds"), 0.01);
        Assert.Equal(Cord.AreaOf(18), p.Given("square"), 0.001);
    }
}
