using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>How far the numbers of a readings file may go (docs/formats.md): the last that is taken and the first that is not.</summary>
public class ReadingsBoundsTests
{
    private static bool IsSound(string fields) =>
        ReadingsFile.Read($$"""{ "ohmstead": "readings/1", "sheet": "twin-160", {{fields}} }""", Reference.Twin160).IsSound;

    private static string Reading(string field) =>
        $$"""
            "readings": [{ "id": "left-load", "value": 1, {{field}} }]
            """;

    [Theory]
    [InlineData("\"supplyVolts\": {0}, \"readings\": []", "1", "0.9")]
    [InlineData("\"supplyVolts\": {0}, \"readings\": []", "1000", "1001")]
    [InlineData("\"expectedFaults\": {0}, \"readings\": []", "1e-6", "0.9e-6")]
    [InlineData("\"expectedFaults\": {0}, \"readings\": []", "1000", "1001")]
    public void The_file(string field, string last, string first) =>
        Bounds(v => field.Replace("{0}", v, StringComparison.Ordinal), last, first);

    [Theory]
    [InlineData("percent", "50", "50.1")]
    [InlineData("percent", "0", "-0.1")]
    [InlineData("floor", "1e9", "1.1e9")]
    [InlineData("floor", "0", "-0.1")]
    [InlineData("shared", "1", "1.1")]
    [InlineData("shared", "0", "-0.1")]
    [InlineData("leadOhms", "100", "101")]
    [InlineData("leadOhms", "0", "-0.1")]
    public void A_meter(string field, string last, string first) =>
        Bounds(v => "\"readings\": [], \"meter\": { \"ohms\": { \"" + field + "\": " + v + " } }", last, first);

    [Theory]
    [InlineData("celsius", "250", "251")]
    [InlineData("celsius", "-60", "-61")]
    [InlineData("supplyVolts", "1000", "1001")]
    [InlineData("supplyVolts", "1e-3", "0.9e-3")]
    public void A_reading(string field, string last, string first) => Bounds(v => Reading($"\"{field}\": {v}"), last, first);

    [Theory]
    [InlineData("1e15", "1.1e15")]
    [InlineData("-1e15", "-1.1e15")]
    public void A_value_and_one_that_it_jumps_to(string last, string first)
    {
        Bounds(v => "\"readings\": [{ \"id\": \"blades\", \"value\": " + v + " }]", last, first);
        Bounds(v => "\"readings\": [{ \"id\": \"blades\", \"value\": { \"jumps\": [" + v + "] } }]", last, first);
    }

    [Fact]
    public void It_jumps_between_twenty_values_at_most()
    {
        static string Jumps(int count) =>
            "\"readings\": [{ \"id\": \"blades\", \"value\": { \"jumps\": ["
            + string.Join(", ", Enumerable.Range(0, count).Select(n => n == 1 ? "\"OL\"" : "1"))
            + "] } }]";
        Assert.True(IsSound(Jumps(20)));
        Assert.False(IsSound(Jumps(21)));
        Assert.False(IsSound("\"readings\": [{ \"id\": \"blades\", \"value\": { \"jumps\": [\"open\"] } }]"));
    }

    [Fact]
    public void A_meter_has_an_error()
    {
        Assert.False(IsSound("\"readings\": [], \"meter\": { \"ohms\": { \"percent\": 0, \"floor\": 0 } }"));
        Assert.True(IsSound("\"readings\": [], \"meter\": { \"ohms\": { \"percent\": 0, \"floor\": 0.1 } }"));
        Assert.True(IsSound("\"readings\": [], \"meter\": { \"ohms\": { \"percent\": 1, \"floor\": 0 } }"));
    }

    /// <summary>What counts as low is what a class 2 supply may give at most, and what a toy may be fed with.</summary>
    /// <remarks>UL 1585: 30 V RMS; UL 696: 30 V RMS, 42.4 V peak; scopes seen (check values 7.6, 7.4).</remarks>
    [Fact]
    public void A_low_supply_is_no_higher_than_that_of_the_published_scopes()
    {
        Assert.Equal(30, SourceSpec.MostLowVolts);
        Assert.Equal(42.4, SourceSpec.MostLowVolts * Math.Sqrt(2), 0.05);
    }

    /// <summary>A low supply of exactly 30 V is still one.</summary>
    [Fact]
    public void A_reading_on_a_low_supply_is_never_put_on_mains()
    {
        static string Low(double volts) =>
            FormattableString.Invariant($"\"readings\": [{{ \"id\": \"low-17\", \"value\": 1, \"supplyVolts\": {volts} }}]");
        Assert.True(IsSound(Low(30)));
        Assert.False(IsSound(Low(30.1)));
    }

    private static void Bounds(Func<string, string> with, string last, string first)
    {
        Assert.True(IsSound(with(last)), with(last));
        Assert.False(IsSound(with(first)), with(first));
    }
}
