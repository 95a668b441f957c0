using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>A line voltage beside the usual 114 to 126 V (ANSI C84.1 range A, from memory).</summary>
public class LineRangeTests
{
    [Theory]
    [InlineData(113.9, "below")]
    [InlineData(114, "")]
    [InlineData(126, "")]
    [InlineData(126.1, "above")]
    public void A_line_out_of_the_usual_range_is_said(double volts, string word)
    {
        var words = LineRange.Words(volts, OnTheBench.Sheet with { SupplyVolts = 120, SupplyHertz = 60 });
        Assert.Equal(word.Length > 0, words.Length > 0);
        Assert.Contains(word.Length > 0 ? $"Line voltage {word} the usual 114–126 V" : "", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_line_or_none_is_not_judged()
    {
        Assert.Equal("", LineRange.Words(null, OnTheBench.Sheet));
        Assert.Equal("", LineRange.Words(180, OnTheBench.Sheet with { SupplyVolts = 230, SupplyHertz = 50 }));
        Assert.Equal("", LineRange.Words(12, OnTheBench.Sheet with { SupplyVolts = 24, SupplyHertz = 60 }));
    }
}
