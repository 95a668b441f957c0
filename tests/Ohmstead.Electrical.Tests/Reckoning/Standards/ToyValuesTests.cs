using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>What open standards say of toys and model railroads (tests/Reference/published/toys.json, check values 7.1–7.13).</summary>
public class ToyValuesTests
{
    public static TheoryData<string> Figures => [.. Published.All("toys").Where(p => p.Gives("standard")).Select(p => p.Id)];

    private static JsonObject Row(Published p, double value)
    {
        var rest = p.Gives("gauge") ? FormattableString.Invariant($", \"trackMillimetres\": {p.Given("gauge")}") : "";
        var answer = Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"standards\", \"current\": \"{(p.Gives("dc") ? "dc" : "ac")}\", \"{p.Word("field")}\": {value}{rest}"
            )
        );
        return Assert.Single(
            answer["rows"]!.AsArray().Select(r => r!.AsObject()),
            r => r.Text("source") == p.Word("standard") && (p.Id != "7.10" || r.Number("least") > 0)
        );
    }

    [Theory]
    [MemberData(nameof(Figures))]
    public void A_figure_stands_beside_what_the_standard_says(string id)
    {
        var p = Published.Case("toys", id);
        foreach (var (end, beyond) in new[] { ("least", 0.99), ("most", 1.01) })
            if (p.Expects(end))
            {
                var row = Row(p, p.Expected(end));
                p.Agrees(end, row.Number(end), 1e-9);
                Assert.True(row["within"]!.GetValue<bool>());
                Assert.False(Row(p, beyond * p.Expected(end))["within"]!.GetValue<bool>());
            }
            else
                Assert.Null(Row(p, 1)[end]);
    }

    [Fact]
    public void More_than_a_fifth_over_its_plate_is_outside()
    {
        var p = Published.Case("toys", "7.3");
        JsonNode Row(double watts) =>
            Assert.Single(
                Asked.Answer(
                    FormattableString.Invariant(
                        $"\"question\": \"standards\", \"inputWatts\": {watts}, \"plateWatts\": {p.Given("plateWatts")}"
                    )
                )["rows"]!.AsArray()
            )!;
        p.Agrees("most", Row(100).Number("most"), 1e-9);
        Assert.True(Row(120)["within"]!.GetValue<bool>());
        Assert.False(Row(121)["within"]!.GetValue<bool>());
    }

    /// <remarks>Thirty volts RMS of a sine: the limit is given as a peak too.</remarks>
    [Fact]
    public void The_limit_of_toys_is_the_same_as_a_peak()
    {
        var p = Published.Case("toys", "7.4-peak");
        p.Agrees("peak", HighVolts.DcOf(p.Given("rms")), 0.05);
        Assert.Contains(ToyRule.All, r => r.Source == "UL 696, scope" && r.Most == p.Given("rms"));
    }

    [Fact]
    public void Digital_control_adds_two_volts_to_those_of_DC()
    {
        var p = Published.Case("toys", "7.12");
        var answer = Asked.Answer(
            FormattableString.Invariant($"\"question\": \"standards\", \"current\": \"dc\", \"trackVolts\": {p.Given("dc")}")
        );
        p.Agrees("digital", answer.Number("digitalVolts"), 1e-9);
        Assert.Contains(answer["words"]!.AsArray(), w => w!.GetValue<string>().Contains("right-hand rail", StringComparison.Ordinal));
    }

    /// <remarks>7.13: club pages; copper by the law of gauges.</remarks>
    [Fact]
    public void Club_wire_is_tabled_by_its_copper()
    {
        var p = Published.Case("toys", "7.13");
        double Least(string says) =>
            Assert.Single(ToyRule.All, r => r.Source == "club pages" && r.Says.Contains(says, StringComparison.Ordinal)).Least!.Value;
        Assert.Equal(Cord.AreaOf((int)p.Expected("bus")), Least("14 AWG"), 0.005);
        Assert.Equal(Cord.AreaOf((int)p.Expected("smallBus")), Least("18 AWG"), 0.002);
        Assert.Equal(Cord.AreaOf((int)p.Expected("feeder")), Least("24 AWG"), 0.0005);
    }

    private static JsonObject Of(string figures) => Asked.Answer($"\"question\": \"standards\", {figures}");

    /// <remarks>24 V AC (check value 7.1). Volts that were given count before those of the track.</remarks>
    [Theory]
    [InlineData("\"trackVolts\": 40")]
    [InlineData("\"accessoryVolts\": 40")]
    [InlineData("\"trackVolts\": 18, \"accessoryVolts\": 40")]
    [InlineData("\"volts\": 40, \"trackVolts\": 18")]
    public void Volts_of_a_track_or_of_lamps_are_volts_of_a_post_and_a_breach_says_limit_and_value(string figures) =>
        Assert.StartsWith(
            "Outside what is asked of new toys: a toy transformer made today: at most 24 V AC, here 40 (EN 61558-2-7, as cited); ",
            Of(figures)["words"]![0]!.GetValue<string>(),
            StringComparison.Ordinal
        );

    [Fact]
    public void Too_little_is_said_with_its_least() =>
        Assert.Contains(
            "at least 12 V, here 10 (NMRA S-9)",
            Of("\"current\": \"dc\", \"trackVolts\": 10")["words"]![0]!.GetValue<string>(),
            StringComparison.Ordinal
        );

    [Fact]
    public void Without_a_figure_nothing_is_answered() =>
        Assert.Equal(["$.volts"], Asked.Refused("\"question\": \"standards\", \"trackMillimetres\": 32"));

    [Fact]
    public void A_row_of_one_gauge_is_left_out_where_the_gauge_is_not_known() =>
        Assert.Equal(
            ["EN 61558-2-7, as cited", "Directive 2009/48/EC, annex II", "NMRA S-9"],
            Asked.Answer("\"question\": \"standards\", \"current\": \"dc\", \"trackVolts\": 12")["rows"]!
                .AsArray()
                .Select(r => r!.Text("source"))
        );
}
