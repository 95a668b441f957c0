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

    /// <remarks>28 AWG has 0.0810 mm²: 55 A for (115·0.081/55)² = 0.029 s; a slow fuse of 4 A may take 0.3 s.</remarks>
    [Fact]
    public void A_thin_wire_is_hot_before_a_slow_fuse_opens()
    {
        var answer = Asked.Answer(Usual.Replace("\"gaugeAwg\": 18", "\"gaugeAwg\": 28", StringComparison.Ordinal));
        Assert.Equal(0.0287, answer.Number("wireSeconds"), 0.0002);
        Assert.True(Of(answer, "iec-quick")!["guards"]!.GetValue<bool>());
        Assert.False(Of(answer, "iec-time-lag")!["guards"]!.GetValue<bool>());
    }

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
