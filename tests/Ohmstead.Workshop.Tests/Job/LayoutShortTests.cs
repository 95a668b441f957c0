using System.Collections.Immutable;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Job;

/// <summary>A dead short at the owner’s wire, and what standards say of the post; gates and limits are held in the core’s tests.</summary>
public class LayoutShortTests
{
    private static readonly Outlet Rail = new(
        "Post u – post a",
        "",
        new OutletLimit(18, 17, 8, 2, HeldBy.Breaker, "b", 8, false, true),
        "its breaker",
        OnTheBench.Sheet.Readings[0] with
        {
            From = "u",
            To = "a",
            Quantity = Quantity.AcVolts,
        }
    );

    private static LayoutBudget Budget(LayoutWire? wire, double sourceOhms = 0.25) =>
        LayoutBudget.Of(
            new(200, 136, "type sheet"),
            [new(Rail, 18, sourceOhms, false)],
            new([new("u", "a", [new LayoutItem("motor", 2), new LayoutItem("lamp", 4)], wire)])
        )!;

    /// <remarks>
    /// 20 ft of 18 AWG each way are 0.2554 Ω of copper at 20 °C: 18 V over 0.5054 Ω drive 35.6 A, 8.9 times the 4 A fuse. The gate at 4 times gives 0.3 s. The
    /// wire bears it for (115·0.823/35.6)² = 7.06 s.
    /// </remarks>
    [Fact]
    public void The_fuse_opens_before_the_wire_is_too_hot()
    {
        var found = LayoutShort.Of(Budget(new(18, 20)).Posts[0])!;
        Assert.Equal(35.6, found.Question.ShortAmps, 0.1);
        Assert.Equal("On a dead short, about 36 A, a 4 A quick fuse (F) opens within 0.3 s. The wire takes that for 7.06 s.", found.Words);
        Assert.Equal(4, found.Answer.RatedAmps);
    }

    /// <remarks>100 ft of 22 AWG: 3.2 Ω drive 5 A only, 1.3 times the 4 A fuse: no gate says that it opens.</remarks>
    [Fact]
    public void Where_the_wire_keeps_the_short_small_no_fuse_is_sure_to_open() =>
        Assert.Contains("no fuse is sure to open", LayoutShort.Of(Budget(new(22, 100)).Posts[0])!.Words, StringComparison.Ordinal);

    [Fact]
    public void Of_a_wire_that_nobody_named_nothing_is_said() => Assert.Null(LayoutShort.Of(Budget(null).Posts[0]));

    /// <remarks>The wire bears the short of 36 A for 7.06 s. Where no fuse was found, no breaker of the same amps is one either.</remarks>
    [Fact]
    public void A_breaker_in_its_place_is_reset_by_hand_and_opens_in_time()
    {
        var breaker = LayoutShort.Of(Budget(new(18, 20)).Posts[0])!.Breaker;
        Assert.Contains("reset by hand", breaker, StringComparison.Ordinal);
        Assert.Contains("of the same amps; its own sheet must say that it opens within 7.0", breaker, StringComparison.Ordinal);
        Assert.Equal("", LayoutShort.Of(Budget(new(22, 100)).Posts[0])!.Breaker);
    }

    /// <remarks>20 ft of 22 AWG are 0.646 Ω: 18 V over 0.896 Ω drive 20 A, which a 4 A fuse opens in time; but 22 AWG carries 3 A only.</remarks>
    [Fact]
    public void A_wire_that_does_not_carry_the_fuse_is_too_thin_for_the_load() =>
        Assert.Equal("This wire is too thin for this load: use 18 AWG.", LayoutShort.Of(Budget(new(22, 20)).Posts[0])!.Words);

    /// <remarks>Of 7.2 A for the whole unit, rounded down to half an ampere: 7 A; the path alone would carry 7.5 A.</remarks>
    [Theory]
    [InlineData(7.2, "7.2 A", "7 A")]
    [InlineData(double.PositiveInfinity, "7.5 A", "7.5 A")]
    [InlineData(0.57, "0.57 A", "0.5 A")]
    public void A_fuse_outside_is_rated_for_no_more_than_the_unit_carries(double unitAmps, string most, string fuse)
    {
        var rail = Rail with { Limit = Rail.Limit with { Amps = 7.5, IsProtected = false }, UnitAmps = unitAmps };
        Assert.Equal((most, fuse), (rail.Most, rail.FuseOutside));
        Assert.Contains($"at most {fuse} in", rail.Outside, StringComparison.Ordinal);
    }

    private static ImmutableArray<string> Standards(bool isTrack, double? gauge)
    {
        var budget = Budget(null);
        return LayoutStandards.Of(budget, budget.Posts[0], OnTheBench.Sheet with { SupplyHertz = 60 }, isTrack, gauge);
    }

    /// <remarks>Check values 7.1, 7.7, 7.9: 24 V AC, nominal 16 V on the track; accessories of gauge O 14–16 V.</remarks>
    [Fact]
    public void The_post_stands_beside_what_standards_say_of_new_ones()
    {
        Assert.Contains("A toy transformer made today: at most 24 V AC. Here 18 V AC. (EN 61558-2-7, as cited)", Standards(true, null));
        Assert.Contains("AC trains, nominal: 16 V. Here 18 V: more. (NEM 640 (1988))", Standards(true, null));
        Assert.DoesNotContain(Standards(false, null), l => l.Contains("NEM 611", StringComparison.Ordinal));
        Assert.Contains("Lamps and accessories, nominal: 14–16 V. Here 18 V: more. (NEM 611 (2017))", Standards(false, 32));
        Assert.Contains(
            Standards(false, 45),
            l => l.StartsWith("Lamps and accessories, nominal: 14–18 V. Here 18 V. (", StringComparison.Ordinal)
        );
    }
}
