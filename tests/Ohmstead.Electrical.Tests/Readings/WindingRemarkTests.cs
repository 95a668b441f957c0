using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Slips of the pen in a winding: ends exchanged, ohms ten times off.</summary>
public class WindingRemarkTests
{
    /// <summary>A primary of 1200 turns on 120 V gives a tenth of a volt a turn; 140 and 50 turns in series are 19 V, or 9 V where the second takes away.</summary>
    private static TypeSheet Sheet(bool isExchanged, double ohms = 1e-4, bool hasLoad = false)
    {
        var source = new
        {
            from = "b-1",
            to = "b-2",
            volts = 120,
        };
        var load = new
        {
            from = "low",
            to = "post",
            ohms = 4,
        };
        return new SheetDraft()
            .Core("core", "coil", 1e7, 1e5)
            .Winding("coil", "b-1", "b-2", 1200, 0.0144)
            .Winding("low", "low", "mid", 140, ohms)
            .Winding("boost", isExchanged ? "post" : "mid", isExchanged ? "mid" : "post", 50, 1e-4)
            .Reading("post", "ac-volts", ["low", "post"], hasLoad ? new { source, loads = new[] { load } } : (object)new { source })
            .Sheet();
    }

    private static Problem[] Remarks(TypeSheet sheet) =>
        [.. SheetRemarks.Of(sheet).Where(r => r.Path.StartsWith("$.elements", StringComparison.Ordinal))];

    [Fact]
    public void A_winding_that_takes_away_is_remarked_on_with_what_the_post_would_show()
    {
        Assert.Empty(Remarks(Sheet(false)));
        var remark = Assert.Single(Remarks(Sheet(true)));
        Assert.Equal(
            "takes away from \"post\": it shows 9 V at most with nothing connected, and 19 V with the ends of \"boost\" exchanged",
            remark.Wrong
        );
        Assert.Equal("\"from\" and \"to\" exchanged?", remark.Right);
    }

    /// <summary>19 V, 4 Ω: with R in the way 19·4/(4 + R) is left. 0.3 Ω take 7 %, 3 Ω take 43 %, 4.1 Ω more than half, which is remarked on as before.</summary>
    [Theory]
    [InlineData(0.3, null)]
    [InlineData(0.9, null)]
    [InlineData(3, "is 3: \"post\" would drop from 19 V to 10.9 V with its own load, by 43 %, and with a tenth of these ohms by 7 %")]
    [InlineData(4.1, null)]
    public void Ohms_ten_times_too_high_are_remarked_on_with_the_drop_under_load(double ohms, string? wrong) =>
        Assert.Equal(
            wrong is null ? [] : [wrong],
            Remarks(Sheet(false, ohms, hasLoad: true)).Where(r => r.Path.EndsWith(".ohms", StringComparison.Ordinal)).Select(r => r.Wrong)
        );

    /// <summary>
    /// By hand: the primary's 1000²/20 is 50,000 and the other's 150²/R. The bounds are four times the primary's copper and 0.15 of it:
    /// R = 0.1125 Ω is just four times, 3 Ω just 0.15.
    /// </summary>
    [Theory]
    [InlineData(20, 0.45, null, null)]
    [InlineData(20, 0.113, null, null)]
    [InlineData(
        20,
        0.112,
        "$.elements[1].ohms",
        "is 0.112: with its turns \"low\" would hold 4 times the copper of the other side, and with 1.12 ohms 0.4 times"
    )]
    [InlineData(
        20,
        0.045,
        "$.elements[1].ohms",
        "is 0.045: with its turns \"low\" would hold 10 times the copper of the other side, and with 0.45 ohms 1 times"
    )]
    [InlineData(
        2,
        0.45,
        "$.elements[0].ohms",
        "is 2: with its turns \"coil\" would hold 10 times the copper of the other side, and with 20 ohms 1 times"
    )]
    [InlineData(20, 2.99, null, null)]
    [InlineData(
        20,
        3.01,
        "$.elements[0].ohms",
        "is 20: with its turns \"coil\" would hold 6.7 times the copper of the other side, and with 200 ohms 0.67 times"
    )]
    [InlineData(20, 30.1, null, null, "ten times the ohms would be no better")]
    [InlineData(20, 0.0112, null, null, "ten times the ohms would be no better")]
    public void Ohms_ten_times_too_low_are_remarked_on_with_the_copper_they_would_be_of(
        double primary,
        double secondary,
        string? path,
        string? wrong,
        string _ = ""
    )
    {
        var sheet = new SheetDraft()
            .Core("core", "coil", 1e7, 1e5)
            .Winding("coil", "b-1", "b-2", 1000, primary)
            .Winding("low", "low", "post", 150, secondary)
            .Sheet();
        Assert.Equal(path is null ? [] : [(path, wrong!)], Remarks(sheet).Select(r => (r.Path, r.Wrong)));
    }
}
