using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning.Deciding;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Cords against published tables (tests/Reference/published/cords.json).</summary>
public class CordTests
{
    private const string Usual = "\"question\": \"cord\", \"metres\": 1.8, \"amps\": 1.5, \"supplyVolts\": 120";

    private static JsonObject Cord(string rest) => Asked.Answer($"{Usual}, {rest}");

    public static TheoryData<string> Gauges => [.. Published.All("cords", "1.2-").Select(p => p.Id)];

    public static TheoryData<string> Ampacities => [.. Published.All("cords", "5.1-").Select(p => p.Id)];

    public static TheoryData<string> Watts => [.. Published.All("cords", "5.4-").Select(p => p.Id)];

    public static TheoryData<string> Ambients => [.. Published.All("cords", "5.3-").Select(p => p.Id)];

    public static TheoryData<string> Drops => [.. Published.All("cords", "5.6").Concat(Published.All("cords", "5.7")).Select(p => p.Id)];

    [Theory]
    [MemberData(nameof(Gauges))]
    public void A_gauge_is_as_thick_as_published(string id)
    {
        var p = Published.Case("cords", id);
        p.Agrees(
            "inches",
            Math.Sqrt(4 * Ohmstead.Electrical.Reckoning.Deciding.Cord.AreaOf((int)p.Given("gaugeAwg")) / Math.PI) / 25.4,
            1e-4
        );
    }

    [Theory]
    [MemberData(nameof(Ampacities))]
    public void A_cord_of_the_table_carries_its_amps_at_thirty_degrees(string id)
    {
        var p = Published.Case("cords", id);
        p.Agrees("amps", Cord(FormattableString.Invariant($"\"gaugeAwg\": {p.Given("gaugeAwg")}")).Number("ampacityAmps"), 1e-9);
    }

    [Theory]
    [MemberData(nameof(Watts))]
    public void A_cord_carries_its_published_watts_and_no_more(string id)
    {
        var p = Published.Case("cords", id);
        string Why(double watts) =>
            string.Join(
                ", ",
                Asked.Answer(
                    FormattableString.Invariant(
                        $"\"question\": \"cord\", \"metres\": 1.8, \"supplyVolts\": {p.Given("volts")}, \"amps\": {watts / p.Given("volts"):R}, \"gaugeAwg\": {p.Given("gaugeAwg")}"
                    )
                )["why"]!.AsArray()
            );
        Assert.Equal(("", "too thin"), (Why(p.Expected("watts")), Why(1.01 * p.Expected("watts"))));
    }

    [Theory]
    [MemberData(nameof(Ambients))]
    public void Warmth_around_it_takes_its_part_of_the_amps(string id)
    {
        var p = Published.Case("cords", id);
        var amps = Cord(FormattableString.Invariant($"\"gaugeAwg\": 18, \"ambientCelsius\": {p.Given("ambientCelsius")}"))
            .Number("ampacityAmps");
        p.Agrees("factor", amps / 10, 0.005);
    }

    [Theory]
    [MemberData(nameof(Drops))]
    public void A_cord_drops_what_was_worked_out(string id)
    {
        var p = Published.Case("cords", id);
        var answer = Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"cord\", \"gaugeAwg\": {p.Given("gaugeAwg")}, \"metres\": {p.Given("feet") * 0.3048}, \"amps\": {p.Given("amps")}, \"supplyVolts\": 120, \"conductorCelsius\": 75"
            )
        );
        // Three digits are printed, from a table of three digits.
        p.Agrees("dropVolts", answer.Number("dropVolts"), 0.005 * p.Expected("dropVolts"));
        p.Agrees("dropPercent", answer.Number("dropPercent"), 0.005 * p.Expected("dropPercent"));
        Assert.Equal(answer.Number("dropVolts") * p.Given("amps"), answer.Number("cordWatts"), 1e-9);
        Assert.Equal(answer.Number("cordWatts") / (p.Given("feet") * 0.3048), answer.Number("wattsPerMetre"), 1e-9);
        Assert.Equal(answer.Number("dropVolts") / p.Given("amps"), answer.Number("loopOhms"), 1e-9);
    }

    [Theory]
    [InlineData("\"gaugeAwg\": 18", "")]
    [InlineData("\"gaugeAwg\": 20", "rating unknown")]
    [InlineData("\"gaugeAwg\": 20, \"ratedAmps\": 1.4", "too thin")]
    [InlineData("\"gaugeAwg\": 18, \"ratedAmps\": 1.4", "too thin")]
    [InlineData("\"squareMillimetres\": 0.5", "rating unknown")]
    [InlineData("\"squareMillimetres\": 0.5, \"ratedAmps\": 3", "")]
    [InlineData("\"gaugeAwg\": 18, \"ambientCelsius\": 61", "too thin")]
    [InlineData("\"gaugeAwg\": 18, \"ambientCelsius\": 61, \"insulationCelsius\": 105", "")]
    [InlineData("\"gaugeAwg\": 18, \"eyeletMillimetres\": 1.1", "eyelet")]
    [InlineData("\"gaugeAwg\": 18, \"eyeletMillimetres\": 1.1, \"packing\": 0.9", "")]
    [InlineData("\"gaugeAwg\": 18, \"outsideMillimetres\": 6.1, \"grommetMillimetres\": 6", "grommet")]
    [InlineData("\"gaugeAwg\": 18, \"outsideMillimetres\": 6, \"grommetMillimetres\": 6", "")]
    [InlineData("\"gaugeAwg\": 18, \"outsideMillimetres\": 6.1", "")]
    [InlineData("\"gaugeAwg\": 18, \"relief\": \"none\"", "no strain relief")]
    [InlineData("\"gaugeAwg\": 18, \"relief\": \"not looked at\", \"polarised\": true", "")]
    [InlineData(
        "\"squareMillimetres\": 4, \"eyeletMillimetres\": 1, \"outsideMillimetres\": 9, \"grommetMillimetres\": 8, \"relief\": \"none\"",
        "rating unknown, eyelet, grommet, no strain relief"
    )]
    public void What_speaks_against_it_is_named_in_order(string rest, string why)
    {
        var answer = Cord(rest);
        Assert.Equal(why, string.Join(", ", answer["why"]!.AsArray()));
        Assert.Equal(why.Length == 0, answer["fit"]!.GetValue<bool>());
    }

    /// <remarks>Strands of 1 mm² that fill three quarters: a circle of 4/3 mm².</remarks>
    [Fact]
    public void The_strands_fill_their_share_of_the_eyelet()
    {
        var answer = Cord("\"squareMillimetres\": 1, \"eyeletMillimetres\": 1.5");
        var strands = answer.Number("strandsMillimetres");
        Assert.Equal(4.0 / 3, Math.PI * strands * strands / 4, 1e-12);
        Assert.Equal(1.5 - strands, answer.Number("eyeletSpareMillimetres"), 1e-12);
    }

    [Fact]
    public void What_is_not_known_is_null() =>
        Assert.Equal((null, null), (Cord("\"gaugeAwg\": 22")["ampacityAmps"], Cord("\"gaugeAwg\": 18")["eyeletSpareMillimetres"]));

    [Theory]
    [InlineData("\"metres\": 1", "$.gaugeAwg")]
    [InlineData("\"gaugeAwg\": 18.5", "$.gaugeAwg")]
    [InlineData("\"gaugeAwg\": 9", "$.gaugeAwg")]
    [InlineData("\"gaugeAwg\": 18, \"insulationCelsius\": 30", "$.insulationCelsius")]
    [InlineData("\"gaugeAwg\": 18, \"relief\": \"tape\"", "$.relief")]
    public void What_cannot_be_is_refused(string rest, string path)
    {
        var metres = rest.Contains("metres", StringComparison.Ordinal) ? "" : "\"metres\": 1, ";
        Assert.Equal([path], Asked.Refused($"\"question\": \"cord\", {metres}\"amps\": 1, \"supplyVolts\": 120, {rest}"));
    }
}
