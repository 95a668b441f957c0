using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>Which fuse or breaker carries the load and opens on a short in time; the gates themselves are held in Standards.</summary>
public class FuseChoiceTests
{
    private const string Usual = "\"question\": \"fuse\", \"loadAmps\": 3.3, \"shortAmps\": 55, \"wire\": { \"gaugeAwg\": 18 }";

    private static JsonNode? Of(JsonObject answer, string family) =>
        answer["fuses"]!.AsArray().FirstOrDefault(f => f!.Text("family") == family);

    /// <remarks>1.2·3.3 = 3.96 A: 4 A. 55 A are 13.75 times that: within 20 ms by the gate at 10 times. 18 AWG bears 55 A for (115·0.823/55)² = 2.96 s.</remarks>
    [Fact]
    public void The_least_rating_above_the_load_is_taken_and_opens_before_the_wire_is_too_hot()
    {
        var answer = Asked.Answer(Usual);
        Assert.Equal(("iec-quick", 4.0), (answer.Text("family"), answer.Number("ratedAmps")));
        Assert.Equal(0.02, Of(answer, "iec-quick")!.Number("opensWithinSeconds"));
        Assert.Equal(2.96, answer.Number("wireSeconds"), 0.01);
        Assert.Equal(answer.Number("wireSeconds") * 55 * 55, answer.Number("wireAmpsSquaredSeconds"), 1e-6);
        // An American fast fuse says no more than 2 minutes: that guards nothing here.
        Assert.False(Of(answer, "us-fast")!["guards"]!.GetValue<bool>());
    }

    /// <remarks>15 A are 3.75 times 4 A. By the gates at 4 times a quick fuse bears that for 10 ms only, a slow one for 150 ms.</remarks>
    [Fact]
    public void A_rush_at_switching_on_is_borne_or_the_fuse_is_not_taken()
    {
        var answer = Asked.Answer($"{Usual}, \"rush\": {{ \"amps\": 15, \"seconds\": 0.1 }}");
        Assert.False(Of(answer, "iec-quick")!["bearsRush"]!.GetValue<bool>());
        Assert.True(Of(answer, "iec-time-lag")!["bearsRush"]!.GetValue<bool>());
        Assert.Equal("iec-time-lag", answer.Text("family"));
    }

    /// <remarks>
    /// 22 AWG has 0.3255 mm²: 100 A for (115·0.3255/100)² = 0.140 s; a slow fuse of 2 A may take 0.3 s, a quick one 0.02 s. 2.1·2 A is less
    /// than 1.45 times the 3 A that it carries.
    /// </remarks>
    [Fact]
    public void A_thin_wire_is_hot_before_a_slow_fuse_opens()
    {
        var answer = Asked.Answer(Wire("1.6", "100", "\"gaugeAwg\": 22"));
        Assert.Equal(0.1403, answer.Number("wireSeconds"), 0.001);
        Assert.True(Of(answer, "iec-quick")!["guards"]!.GetValue<bool>());
        Assert.False(Of(answer, "iec-time-lag")!["guards"]!.GetValue<bool>());
    }

    private static string Wire(string load, string shorted, string wire) =>
        $"\"question\": \"fuse\", \"loadAmps\": {load}, \"shortAmps\": {shorted}, \"wire\": {{ {wire} }}";

    private static string[] Words(JsonObject answer) => [.. answer["words"]!.AsArray().Select(w => w!.GetValue<string>())];

    /// <remarks>
    /// 22 AWG carries 3 A (common practice, no source), and a quick fuse of 10 A opens 60 A within 0.3 s, which it bears for 0.39 s. A quick
    /// fuse of 10 A may carry 21 A for half an hour: more than 1.45 times the 10 A of 18 AWG and the 13 A of 16, not the 18 A of 14 AWG.
    /// </remarks>
    [Theory]
    [InlineData("\"gaugeAwg\": 22", null)]
    [InlineData("\"squareMillimetres\": 0.33", null)]
    [InlineData("\"gaugeAwg\": 18", null)]
    [InlineData("\"gaugeAwg\": 16", null)]
    [InlineData("\"squareMillimetres\": 2.0", null)]
    [InlineData("\"gaugeAwg\": 14", 10.0)]
    [InlineData("\"squareMillimetres\": 2.1", 10.0)]
    [InlineData("\"squareMillimetres\": 2.1, \"metal\": \"aluminium\"", null)]
    public void A_fuse_is_no_larger_than_what_its_wire_carries(string wire, double? rated)
    {
        var answer = Asked.Answer($"{Wire("8", "60", wire)}, \"families\": [\"iec-quick\", \"us-fast\"]");
        Assert.Equal(rated, (double?)answer["ratedAmps"]);
        if (rated is null)
            Assert.Equal(
                [$"This wire is too thin for this load: use {(wire.Contains("alum", StringComparison.Ordinal) ? "12" : "14")} AWG."],
                Words(answer)
            );
    }

    /// <remarks>A rush of 200 A is more than any gate of a quick fuse bears. No quick fuse is rated above 10 A.</remarks>
    [Fact]
    public void Three_reasons_have_three_sentences_and_none_speaks_of_a_breaker()
    {
        string Of(string rest) => Assert.Single(Words(Asked.Answer($"{Usual}, {rest}")));
        Assert.Equal(
            "Each fuse that guards this wire opens at switch-on.",
            Of("\"families\": [\"iec-quick\"], \"rush\": { \"amps\": 200, \"seconds\": 0.1 }")
        );
        Assert.Equal(
            "No fuse of this list is rated for 3.96 A or more. Split the load over two wires, each with its own fuse.",
            Of("\"ratingsAmps\": [1, 2, 3]")
        );
        Assert.Equal(
            "On a dead short, 55 A, no fuse is sure to open in the 2.96 s that the wire bears it. Use thicker wire.",
            Of("\"families\": [\"us-fast\"]")
        );
    }

    /// <remarks>18 AWG bears 55 A for 2.96 s.</remarks>
    [Fact]
    public void A_breaker_in_place_of_the_fuse_opens_as_soon_as_the_wire_needs_it() =>
        Assert.StartsWith(
            "A breaker in place of it: of the same amps; its own sheet must say that it opens within 2.96 s at 55 A. Type 3 is reset by hand",
            Words(Asked.Answer(Usual))[1],
            StringComparison.Ordinal
        );

    [Fact]
    public void Where_nothing_guards_the_wire_nothing_is_taken()
    {
        var answer = Asked.Answer($"{Usual}, \"families\": [\"us-fast\"]");
        Assert.Null(answer["family"]);
        Assert.Null(answer["ratedAmps"]);
        Assert.Contains("thicker wire", answer["words"]![0]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"shortAmps\": 55", "\"shortAmps\": 3", "$.shortAmps")]
    [InlineData("\"gaugeAwg\": 18", "\"gaugeAwg\": 18, \"endCelsius\": 60", "$.wire.endCelsius")]
    [InlineData("\"loadAmps\": 3.3", "\"loadAmps\": 3.3, \"families\": [\"foil\"]", "$.families[0]")]
    public void What_cannot_be_is_refused(string from, string to, string path) =>
        Assert.Equal([path], Asked.Refused(Usual.Replace(from, to, StringComparison.Ordinal)));
}
