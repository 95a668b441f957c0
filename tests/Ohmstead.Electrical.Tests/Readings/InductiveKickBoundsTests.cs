using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>
/// From which energy on a kick is named, what the source's thirty volts leave of its current, and which of two cores counts. Closed forms:
/// L = L₀·(n/n₀)², E = ½·L·I²; 3 H on 300 turns, so 0.03 H on 30.
/// </summary>
public class InductiveKickBoundsTests
{
    private static SheetDraft Draft(double before = 1e-3) =>
        new SheetDraft()
            .Core("core", "primary", 1300, 3)
            .Winding("primary", "blade-1", "blade-2", 300, 3)
            .Winding("main", "common", "end", 30, 0.1)
            .Resistor("before", "end", "post", before);

    private static object Fed(string from, string to, double amps, params string[] lifted) =>
        new
        {
            source = new
            {
                from,
                to,
                directAmps = amps,
            },
            lifted,
        };

    private static InductiveKick? Kick(SheetDraft draft)
    {
        var sheet = draft.Sheet();
        return InductiveKick.Of(new UnitModel(sheet), sheet.Readings[^1], sheet.Readings[^1].State);
    }

    /// <summary>A millionth of a joule: √(2·10⁻⁶/0.03) = 8.165 mA.</summary>
    [Theory]
    [InlineData(8.1e-3, false)]
    [InlineData(8.2e-3, true)]
    public void Less_than_a_millionth_of_a_joule_is_none(double amps, bool isOne) =>
        Assert.Equal(isOne, Kick(Draft().Reading("r", "dc-volts", ["common", "end"], Fed("common", "end", amps))) is not null);

    /// <summary>1 A through R and the winding's 0.1 Ω; beyond 29.9 Ω no more than 30 V/(R + 0.1) flows.</summary>
    [Theory]
    [InlineData(20, 1)]
    [InlineData(29.5, 1)]
    [InlineData(59.9, 0.5)]
    [InlineData(299.9, 0.1)]
    public void Thirty_volts_limit_the_current(double before, double amps) =>
        Assert.Equal(
            0.03 * amps * amps / 2,
            Kick(Draft(before).Reading("r", "dc-volts", ["common", "end"], Fed("common", "post", 1)))!.Joules,
            1e-4 * amps * amps
        );

    /// <summary>A core of half a henry, or of a thousandth, is one of a fixed inductance as well.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.001)]
    public void A_small_inductance_counts_as_it_is(double henries)
    {
        var draft = new SheetDraft()
            .Core("core", "primary", 1300, henries)
            .Winding("primary", "blade-1", "blade-2", 300, 1e-3)
            .Reading("r", "dc-volts", ["blade-1", "blade-2"], Fed("blade-1", "blade-2", 2));
        Assert.Equal(henries, Kick(draft)!.Henries, henries * 1e-3);
    }

    /// <summary>Of two cores that the current links the one that stores more is named, and the reference winding may be lifted.</summary>
    [Fact]
    public void Of_two_cores_the_one_that_stores_more_counts()
    {
        SheetDraft Two(double otherTurns) =>
            Draft()
                .Core("other", "alone", 1e4, 3)
                .Winding("alone", "x", "y", 300, 1, core: "other")
                .Winding("more", "post", "far", otherTurns, 0.1, core: "other")
                .Reading("r", "dc-volts", ["common", "far"], Fed("common", "far", 1, "alone", "primary"));
        Assert.Equal(0.03, Kick(Two(10))!.Henries, 1e-4);
        Assert.Equal(3 * Math.Pow(60 / 300.0, 2), Kick(Two(60))!.Henries, 1e-3);
    }

    /// <summary>The loads take nothing from it: the current that was driven through the winding is what breaks.</summary>
    [Fact]
    public void A_load_beside_the_winding_does_not_count()
    {
        var loaded = new
        {
            source = new
            {
                from = "common",
                to = "end",
                directAmps = 1.0,
            },
            loads = new[]
            {
                new
                {
                    from = "blade-1",
                    to = "blade-2",
                    ohms = 1e-3,
                },
            },
        };
        Assert.Equal(0.03, Kick(Draft().Reading("r", "dc-volts", ["common", "end"], loaded))!.Henries, 1e-4);
    }
}
