namespace Ohmstead.App.Tests.Commands;

/// <summary>rewire: what to read after a rewire, and what it says.</summary>
public sealed class RewireTests
{
    [Fact]
    public void Without_readings_it_says_what_to_read_and_what_that_cannot_tell()
    {
        var answer = Tool.Json("rewire", Tool.Sample);
        Assert.Equal(["mistakes", "verdict", "probable", "take", "untold", "alike"], answer.Fields());
        Assert.Equal("not proved", answer.Text("verdict"));
        Assert.Empty(answer.List("probable"));
        Assert.NotEmpty(answer.List("take"));
        Assert.All(answer.List("take"), t => Assert.Equal(["id", "minutes", "tells"], t.Fields()));
        Assert.Contains(answer.List("untold"), m => m.GetString() == "reversed:primary");
    }

    [Fact]
    public void A_mistake_is_named_in_words_with_its_place_and_the_caution_stands_below()
    {
        var values = Tool.Json("predict", Tool.Sample, "--fault", "boost-left:reversed").List("readings");
        var readings = string.Join(
            ',',
            values.Select(r => $$"""{ "id": "{{r.Text("id")}}", "value": {{r.GetProperty("value").GetRawText()}} }""")
        );
        var file = Tool.File(
            "after.readings.json",
            $$"""{ "ohmstead": "readings/1", "sheet": "twin-160", "supplyVolts": 120, "readings": [{{readings}}] }"""
        );
        var (code, output, error) = Tool.Run("rewire", Tool.Sample, file);
        Assert.True(code == 0, error);
        Assert.Contains("\nWiring mistake\n", output, StringComparison.Ordinal);
        Assert.Contains("the left boost winding is wired backward: swap its two ends", output, StringComparison.Ordinal);
        Assert.Contains("Do not plug it in", output, StringComparison.Ordinal);
        Assert.Contains("never a post", output, StringComparison.Ordinal);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 130, line));
    }
}
