using System.Collections.Immutable;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Carrying;

/// <summary>
/// What a pair of posts carries for hours, against closed forms on a transformer of 120 V to 20 V that loses nothing but in the parts
/// named: 300 turns to 50, no resistance, a core that draws next to nothing.
/// </summary>
public class OutletLimitTests
{
    private const double Close = 1e-4;

    private static SheetDraft Lossless(double secondaryOhms = 0, object? winding = null) =>
        new SheetDraft()
            .Core("core", "primary", 1e9, 1e6)
            .Winding("primary", "a", "b", 300)
            .Element(
                "winding",
                "secondary",
                "common",
                "top",
                winding
                    ?? new
                    {
                        core = "core",
                        turns = 50,
                        ohms = secondaryOhms,
                    }
            );

    private static OutletLimit Limit(SheetDraft draft, double usableWatts, string from = "common", string to = "post", double throttle = 1)
    {
        var controls = ImmutableDictionary<string, ControlPosition>.Empty.Add("throttle", new ControlPosition(throttle, ""));
        var state = new ReadingState(new SourceSpec("a", "b", 120, 0, 0, 0, 0), controls, [], [], [], 20);
        var spec = new ReadingSpec("post", "", Quantity.AcVolts, from, to, state, 1, ReadingSpec.Closed, [], null, false, "");
        return OutletLimits.Of(new UnitModel(draft.Sheet()), spec, usableWatts)!;
    }

    private static void AssertClose(double expected, double found) => Assert.InRange(found, expected * (1 - Close), expected * (1 + Close));

    /// <summary>20 V and 100 W: 100/20 = 5 A.</summary>
    [Fact]
    public void Without_anything_else_the_core_holds_it_at_watts_over_volts()
    {
        var limit = Limit(Lossless().Wire("w", "top", "post", 0), 100);
        AssertClose(5, limit.Amps);
        AssertClose(20, limit.IdleVolts);
        AssertClose(4, limit.LoadOhms);
        Assert.Equal((HeldBy.Core, "", false, false), (limit.By, limit.Part, limit.IsEstimated, limit.IsProtected));
    }

    /// <summary>A path of r ohms: the watts that reach the load are v²/R with v = 20·R/(R + r); at 100 W and r = 0.4 that is R = 3.159 Ω.</summary>
    [Fact]
    public void The_core_s_watts_are_counted_at_the_volts_that_are_left_under_that_load()
    {
        // R² + (2r − 20²/100)·R + r² = 0 for r = 0.4: R² − 3.2·R + 0.16 = 0.
        var ohms = (3.2 + Math.Sqrt((3.2 * 3.2) - (4 * 0.16))) / 2;
        var limit = Limit(
            Lossless(
                    0,
                    new
                    {
                        core = "core",
                        turns = 50,
                        ohms = 0,
                        mostAmps = 50,
                    }
                )
                .Resistor("r", "top", "post", 0.4),
            100
        );
        AssertClose(ohms, limit.LoadOhms);
        AssertClose(20 * ohms / (ohms + 0.4), limit.LoadedVolts);
        AssertClose(20 / (ohms + 0.4), limit.Amps);
    }

    [Fact]
    public void A_breaker_holds_it_at_its_rated_amps_and_protects_the_post()
    {
        var limit = Limit(Lossless().Element("breaker", "brk", "top", "post", new { ohms = 0.04, ratedAmps = 6 }), 400);
        AssertClose(6, limit.Amps);
        AssertClose(20 - (6 * 0.04), limit.LoadedVolts);
        Assert.Equal((HeldBy.Breaker, "brk", false, true), (limit.By, limit.Part, limit.IsEstimated, limit.IsProtected));
    }

    [Fact]
    public void A_breaker_whose_rating_nobody_knows_protects_nothing() =>
        Assert.False(Limit(Lossless().Element("breaker", "brk", "top", "post", new { ohms = 0.04 }), 100).IsProtected);

    /// <summary>Six times as many turns on the mains side: 0.5 A there is 3 A at the post.</summary>
    [Fact]
    public void A_breaker_in_the_mains_lead_counts_with_the_mains_current()
    {
        var draft = new SheetDraft()
            .Core("core", "primary", 1e9, 1e6)
            .Element("breaker", "brk", "a", "a2", new { ohms = 0, ratedAmps = 0.5 })
            .Winding("primary", "a2", "b", 300)
            .Winding("secondary", "common", "post", 50);
        var limit = Limit(draft, 400);
        AssertClose(3, limit.Amps);
        Assert.Equal((HeldBy.Breaker, "brk", 0.5, true), (limit.By, limit.Part, limit.PartMostAmps, limit.IsProtected));
    }

    /// <summary>A twentieth of 20 V is 1 V; over 0.25 Ω that is 4 A. 19 V are left.</summary>
    [Fact]
    public void A_winding_that_says_nothing_is_taken_to_lose_a_twentieth_of_its_volts()
    {
        var limit = Limit(Lossless(0.25).Wire("w", "top", "post", 0), 400);
        AssertClose(4, limit.Amps);
        AssertClose(19, limit.LoadedVolts);
        Assert.Equal((HeldBy.Winding, "secondary", true, false), (limit.By, limit.Part, limit.IsEstimated, limit.IsProtected));
    }

    /// <summary>0.05·20/0.01 would be 100 A; 200 W over its 20 V are 10 A, and so are they on a tap of 8 V.</summary>
    [Fact]
    public void No_estimate_is_above_usable_watts_over_the_winding_s_volts()
    {
        var tapped = new
        {
            core = "core",
            turns = 50,
            ohms = 0.01,
            taps = new[] { new { turn = 20, to = "post" } },
        };
        var limit = Limit(Lossless(0, tapped), 200);
        AssertClose(10, limit.Amps);
        Assert.Equal((HeldBy.Winding, true), (limit.By, limit.IsEstimated));
    }

    [Fact]
    public void What_the_sheet_says_of_a_winding_takes_the_place_of_the_estimate()
    {
        var limit = Limit(
            Lossless(
                    0,
                    new
                    {
                        core = "core",
                        turns = 50,
                        ohms = 0.25,
                        mostAmps = 3.3,
                    }
                )
                .Wire("w", "top", "post", 0),
            400
        );
        AssertClose(3.3, limit.Amps);
        Assert.Equal((HeldBy.Winding, "secondary", false), (limit.By, limit.Part, limit.IsEstimated));
    }

    /// <summary>0.01 and 0.03 Ω side by side: three quarters go through the first, which bears 3 A; so 4 A in all.</summary>
    [Fact]
    public void Of_two_paths_side_by_side_each_counts_with_its_share()
    {
        var draft = Lossless()
            .Selector("s", "on", "off")
            .Element(
                "switch",
                "one",
                "top",
                "post",
                new
                {
                    control = "s",
                    closedIn = new[] { "on" },
                    ohms = 0.01,
                    mostAmps = 3,
                }
            )
            .Element(
                "switch",
                "two",
                "top",
                "post",
                new
                {
                    control = "s",
                    closedIn = new[] { "on" },
                    ohms = 0.03,
                    mostAmps = 3,
                }
            );
        var limit = Limit(draft, 400);
        AssertClose(4, limit.Amps);
        Assert.Equal((HeldBy.Switch, "one", 3.0), (limit.By, limit.Part, limit.PartMostAmps));
    }

    /// <summary>
    /// An autotransformer, 120 V on 100 turns, the post at turn 50: the upper half carries half of the load's amps and the lower half
    /// the other half, against it. With 2 A for the winding that is 4 A for the load.
    /// </summary>
    [Fact]
    public void A_section_of_an_autotransformer_counts_with_its_own_current()
    {
        var draft = new SheetDraft()
            .Core("core", "main", 1e9, 1e6)
            .Element(
                "winding",
                "main",
                "b",
                "a",
                new
                {
                    core = "core",
                    turns = 100,
                    ohms = 0,
                    mostAmps = 2,
                    taps = new[] { new { turn = 50, to = "post" } },
                }
            );
        var limit = Limit(draft, 1000, "b");
        AssertClose(4, limit.Amps);
        AssertClose(60, limit.LoadedVolts);
        Assert.Equal((HeldBy.Winding, "main"), (limit.By, limit.Part));
    }

    /// <summary>The roller carries the load's amps; what circulates through the two turns it bridges is not the load's.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_roller_holds_it_at_what_the_sheet_says_of_it(int bridges)
    {
        var winding = new
        {
            core = "core",
            turns = 50,
            ohms = 0.001,
            sliders = new[]
            {
                new
                {
                    id = "roller",
                    control = "throttle",
                    fromTurn = 10,
                    toTurn = 45,
                    to = "post",
                    contactOhms = 0.1,
                    bridgesTurns = bridges,
                    mostAmps = 2.5,
                },
            },
        };
        var limit = Limit(Lossless(0, winding).Throttle("throttle"), 400);
        AssertClose(2.5, limit.Amps);
        Assert.Equal((HeldBy.Slider, "roller", false), (limit.By, limit.Part, limit.IsEstimated));
    }

    [Fact]
    public void A_part_outside_the_path_holds_nothing()
    {
        var draft = Lossless()
            .Wire("w", "top", "post", 0)
            .Winding("lamp-winding", "l1", "l2", 15, 1)
            .Element("breaker", "tiny", "l1", "l3", new { ohms = 0.1, ratedAmps = 0.01 })
            .Resistor("r", "l3", "l2", 12);
        var limit = Limit(draft, 100);
        AssertClose(5, limit.Amps);
        Assert.Equal((HeldBy.Core, false), (limit.By, limit.IsProtected));
    }

    /// <summary>A pair behind 50 Ω gives at most 20²/(4·50) = 2 W: it falls to half before 100 W or any part holds it.</summary>
    [Fact]
    public void A_pair_that_falls_to_half_its_volts_first_has_no_limit_to_print()
    {
        var state = new ReadingState(
            new SourceSpec("a", "b", 120, 0, 0, 0, 0),
            ImmutableDictionary<string, ControlPosition>.Empty,
            [],
            [],
            [],
            20
        );
        var spec = new ReadingSpec("post", "", Quantity.AcVolts, "common", "post", state, 1, ReadingSpec.Closed, [], null, false, "");
        Assert.Null(OutletLimits.Of(new UnitModel(Lossless().Resistor("r", "top", "post", 50).Sheet()), spec, 100));
    }

    [Theory]
    [InlineData("mostAmps", "winding")]
    [InlineData("ratedAmps", "breaker")]
    public void Amps_that_are_no_number_above_nought_are_a_problem_of_the_sheet(string field, string kind)
    {
        var json = Lossless().Element("breaker", "brk", "top", "post", new { ohms = 0.04, ratedAmps = 6 }).Json();
        json["elements"]!.AsArray().First(e => e!["kind"]!.GetValue<string>() == kind)![field] = -1;
        var problem = Assert.Single(TypeSheetFile.Read(json.ToJsonString()).Problems);
        Assert.EndsWith(field, problem.Path, StringComparison.Ordinal);
    }
}
