using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Which posts are odd: below half a volt or above sixty with nothing connected, or down to less than half under the sheet's own load.</summary>
public class PostRemarkBoundsTests
{
    /// <summary>A primary of 1200 turns without resistance on 120 V gives a tenth of a volt a turn; a resistor stands before the post.</summary>
    private static TypeSheet Sheet(double turns, double before = 1e-3, object? load = null, double supply = 120, string from = "low")
    {
        var source = new
        {
            from = "b-1",
            to = "b-2",
            volts = supply,
        };
        return new SheetDraft()
            .Core("core", "coil", 1e7, 1e5)
            .Winding("coil", "b-1", "b-2", 1200, 1e-4)
            .Winding("low", "low", "far", turns, 1e-4)
            .Resistor("r", "far", "post", before)
            .Reading("post", "ac-volts", [from, "post"], load is null ? new { source } : new { source, loads = new[] { load } })
            .Sheet();
    }

    private static string[] Remarks(TypeSheet sheet) =>
        [.. SheetRemarks.Of(sheet).Where(r => r.Path == "$.readings[0]").Select(r => r.Wrong)];

    private static object Load(double ohms) =>
        new
        {
            from = "low",
            to = "post",
            ohms,
        };

    [Theory]
    [InlineData(4.9, "would show 0.49 V with nothing connected, and a post gives 0.5 to 60 V")]
    [InlineData(5.1, null)]
    [InlineData(599, null)]
    [InlineData(601, "would show 60.1 V with nothing connected, and a post gives 0.5 to 60 V")]
    public void A_post_gives_half_a_volt_to_sixty(double turns, string? remark) =>
        Assert.Equal(remark is null ? [] : [remark], Remarks(Sheet(turns)));

    /// <summary>20 V idle; before the post R, behind it 10 Ω: 20·10/(R + 10) is half at R = 10 Ω and a thousandth at 9990 Ω.</summary>
    [Theory]
    [InlineData(9.9, null)]
    [InlineData(10.2, "drops from 20 V to 9.9 V with its own load, by more than half")]
    [InlineData(9900, "drops from 20 V to 0.0202 V with its own load, by more than half")]
    [InlineData(10100, null)]
    public void Under_its_own_load_it_keeps_half(double before, string? remark) =>
        Assert.Equal(remark is null ? [] : [remark], Remarks(Sheet(200, before, Load(10))));

    /// <summary>Without the load it is looked at idle: a load that takes nearly all away is no reason to call the turns wrong.</summary>
    [Fact]
    public void Its_volts_with_nothing_connected_are_those_without_its_load() => Assert.Empty(Remarks(Sheet(200, 1e5, Load(1))));

    [Fact]
    public void A_reading_on_another_supply_or_at_the_plug_is_not_looked_at()
    {
        Assert.Empty(Remarks(Sheet(4, supply: 12)));
        var plug = Sheet(200) with { };
        var own = plug.Readings[0] with { From = "b-1", To = "b-2" };
        Assert.Empty(Remarks(plug with { Readings = [own] }));
        Assert.Empty(Remarks(plug with { Readings = [own with { To = "post" }] }));
    }

    /// <summary>A post that is dead in one reading and alive in another is in order: its highest volts count, whichever lead is first.</summary>
    [Fact]
    public void Of_several_readings_of_a_post_the_highest_counts()
    {
        var dead = Sheet(200);
        var off = dead.Readings[0] with { Id = "off", From = "post", To = "low", State = dead.Readings[0].State with { Lifted = ["r"] } };
        Assert.Empty(Remarks(dead with { Readings = [off, dead.Readings[0]] }));
        Assert.DoesNotContain(
            SheetRemarks.Of(dead with { Readings = [dead.Readings[0], off] }),
            r => r.Wrong.StartsWith("would show", StringComparison.Ordinal)
        );
        Assert.Single(Remarks(dead with { Readings = [off] }));
    }
}
