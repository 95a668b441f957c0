using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Outlines;

/// <summary>What each block makes, name for name and terminal for terminal (docs/formats.md, "Outline").</summary>
public class OutlineNamesTests
{
    [Fact]
    public void The_outline_of_the_worked_example_has_the_elements_of_its_sheet()
    {
        var drafted = OutlineText.Sheet(OutlineText.Twin);
        Assert.Equal(
            OutlineText.Parts(Reference.Twin160).Order(StringComparer.Ordinal),
            OutlineText.Parts(drafted).Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            Reference.Twin160.Controls.Select(c => (c.Id, c.IsThrottle, string.Join(' ', c.Positions), c.Rest)).Order(),
            drafted.Controls.Select(c => (c.Id, c.IsThrottle, string.Join(' ', c.Positions), c.Rest)).Order()
        );
        foreach (var s in Reference.Twin160.Elements.OfType<Switch>())
            Assert.Equal(s.ClosedIn, drafted.Elements.OfType<Switch>().Single(d => d.Id == s.Id).ClosedIn);
        foreach (var w in Reference.Twin160.Windings)
            Assert.Equal(w.OtherTerminals, drafted.Windings.Single(d => d.Id == w.Id).OtherTerminals);
        Assert.All(drafted.Windings.SelectMany(w => w.Sliders), s => Assert.Equal(1, s.BridgesTurns));
        // Every reading that the worked sheet has for one side is drafted for both.
        Assert.Empty(Reference.Twin160.Readings.Select(r => r.Id).Except(drafted.Readings.Select(r => r.Id)));
    }

    public static TheoryData<string, string, string[]> Blocks() =>
        new()
        {
            {
                "a tap and the start",
                OutlineText.Main,
                [
                    "joint-main joint main-start→lead-a",
                    "w-a wire lead-a→post-a",
                    "joint-tap-b joint tap-b→lead-b",
                    "w-b wire lead-b→post-b",
                    "joint-main-end joint main-end→lead-c",
                    "w-c wire lead-c→post-c",
                    "ins-main-core insulation main-start→iron",
                    "ins-primary-main insulation primary-end→main-end",
                    "ins-primary-core insulation primary-start→iron",
                ]
            },
            {
                "a roller with nothing behind",
                OutlineText.Main + "," + OutlineText.Roller,
                ["joint-tap-c joint tap-c→lead-c", "roller-t slider main→arm-t", "w-arm-t wire arm-t→hub-t", "w-t wire hub-t→post-t"]
            },
            {
                "a breaker behind the throttle and a range lever",
                OutlineText.Main
                    + ","
                    + OutlineText.Roller
                    + """, { "block": "breaker", "in": "throttle" }, { "block": "range", "throttle": "t" }""",
                [
                    "breaker-t breaker hub-t→pivot-t",
                    "range-low-t switch pivot-t→range-out-t",
                    "range-high-t switch pivot-t→extra-t-start",
                    "extra-t winding extra-t-start→extra-t-end",
                    "joint-extra-t joint extra-t-end→range-out-t",
                    "w-t wire range-out-t→post-t",
                ]
            },
            {
                "a breaker in the primary",
                OutlineText.Main + """, { "block": "breaker", "in": "primary" }""",
                ["breaker breaker lug-1→breaker-out", "joint-lug-1 joint breaker-out→primary-start"]
            },
            {
                "a breaker before a post",
                OutlineText.Main + """, { "block": "breaker", "in": "b" }""",
                ["breaker-b breaker lead-b→out-b", "w-b wire out-b→post-b"]
            },
            {
                "a breaker in the common post and a pilot lamp across it",
                OutlineText.Main + """, { "block": "breaker", "in": "common" }, { "block": "pilot", "across": "breaker" }""",
                [
                    "joint-main joint main-start→breaker-in",
                    "breaker breaker breaker-in→breaker-out",
                    "w-a wire breaker-out→post-a",
                    "pilot lamp breaker-in→breaker-out",
                ]
            },
            {
                "a whistle whose boost is further on the winding",
                OutlineText.Main
                    + ","
                    + OutlineText.Roller
                    + """, { "block": "whistle", "throttle": "t", "from": "winding", "steps": 1 }""",
                [
                    "ahead-t slider main→ahead-arm-t",
                    "run-t switch hub-t→feed-t",
                    "kick-t switch ahead-arm-t→disc-t-plate",
                    "disc-t rectifier disc-t-plate→disc-t-stud",
                    "out-t switch disc-t-stud→feed-t",
                ]
            },
            {
                "a whistle without a boost",
                OutlineText.Main + "," + OutlineText.Roller + """, { "block": "whistle", "throttle": "t", "boost": 0 }""",
                ["disc-t rectifier hub-t→disc-t-stud", "ballast-t resistor hub-t→ballast-t-end", "hold-t switch ballast-t-end→disc-t-stud"]
            },
            {
                "a rotary",
                OutlineText.Main + "," + OutlineText.Roller + """, { "block": "direction", "throttle": "t", "kind": "rotary" }""",
                ["rotary-t-a switch hub-t→lead-t", "rotary-t-b switch hub-t→lead-t", "w-t wire lead-t→post-t"]
            },
            {
                "half a bridge",
                OutlineText.Main + "," + OutlineText.Roller + """, { "block": "rectifier", "throttle": "t", "kind": "half" }""",
                ["cell-t rectifier hub-t→plus-t", "w-t-a wire plus-t→post-t-a", "w-t-b wire lead-a→post-t-b"]
            },
            {
                "a cell with a post, and no wire before it",
                OutlineText.Main + """, { "block": "rectifier", "post": "d", "from": "c" }""",
                ["joint-cell-d joint lead-c→plate-d", "cell-d rectifier plate-d→stud-d", "w-d wire stud-d→post-d"]
            },
            {
                "a lamp winding",
                OutlineText.Main + """, { "block": "winding", "id": "glow", "volts": 6.3 }, { "block": "pilot", "across": "glow" }""",
                ["pilot lamp glow-start→glow-end", "ins-main-glow insulation main-end→glow-end"]
            },
            {
                "two windings, one after the other",
                OutlineText.Main + """, { "block": "winding", "id": "more", "from": "c", "posts": { "d": 5 } }""",
                ["joint-more joint more-start→lead-c", "w-c wire lead-c→post-c", "w-d wire lead-d→post-d"]
            },
        };

    [Theory]
    [MemberData(nameof(Blocks))]
    public void A_block_makes_these_parts(string what, string blocks, string[] parts)
    {
        var made = OutlineText.Parts(OutlineText.Sheet(OutlineText.Of(blocks))).ToList();
        Assert.True(parts.All(made.Contains), $"{what}: {string.Join(", ", parts.Except(made))} not among {string.Join("; ", made)}");
        Assert.Equal(made.Distinct(StringComparer.Ordinal).Count(), made.Count);
    }

    [Fact]
    public void What_is_left_out_makes_nothing()
    {
        var made = OutlineText
            .Parts(
                OutlineText.Sheet(
                    OutlineText.Of(
                        OutlineText.Main
                            + ","
                            + OutlineText.Roller
                            + """, { "block": "whistle", "throttle": "t", "from": "winding", "steps": 1 }"""
                    )
                )
            )
            .Select(p => p.Split(' ')[0]);
        Assert.DoesNotContain(
            made,
            p => new[] { "boost", "ballast", "hold", "joint-boost" }.Any(n => p.StartsWith(n, StringComparison.Ordinal))
        );
        Assert.DoesNotContain(
            OutlineText
                .Sheet(
                    OutlineText.Of(
                        OutlineText.Main + "," + OutlineText.Roller + """, { "block": "whistle", "throttle": "t", "boost": 0 }"""
                    )
                )
                .Elements,
            e => e.Id == "kick-t"
        );
        Assert.DoesNotContain(
            OutlineText
                .Sheet(OutlineText.Of(OutlineText.Main + """, { "block": "winding", "id": "aux", "from": "a", "posts": { "z": 8 } }"""))
                .Elements,
            e => e.Id == "ins-main-aux"
        );
    }

    [Fact]
    public void A_direct_current_unit_has_its_bridge_its_reversing_switch_and_its_wire()
    {
        var sheet = OutlineText.Sheet(OutlineText.Direct);
        string[] parts =
        [
            "joint-lug-2 joint lug-2→line-lug",
            "line-100 switch line-lug→primary-100",
            "line-110 switch line-lug→primary-110",
            "line-120 switch line-lug→primary-end",
            "joint-main joint main-start→lead-main",
            "joint-main-end joint main-end→wire-t-feed",
            "rheostat-t winding wire-t-free→wire-t-feed",
            "brush-t slider rheostat-t→arm-t",
            "ins-rheostat-t insulation wire-t-free→iron",
            "cell-t-1 rectifier hub-t→plus-t",
            "cell-t-2 rectifier lead-main→plus-t",
            "cell-t-3 rectifier minus-t→hub-t",
            "cell-t-4 rectifier minus-t→lead-main",
            "ahead-t-1 switch plus-t→lead-t-a",
            "ahead-t-2 switch minus-t→lead-t-b",
            "back-t-1 switch plus-t→lead-t-b",
            "back-t-2 switch minus-t→lead-t-a",
            "w-t-a wire lead-t-a→post-t-a",
            "w-t-b wire lead-t-b→post-t-b",
            "bond wire lead-u→iron",
            "pilot lamp lug-1→breaker-out",
        ];
        Assert.Empty(parts.Except(OutlineText.Parts(sheet)));
        Assert.Equal(
            ("110", "100 110 120"),
            (sheet.Controls.Single(c => c.Id == "line").Rest, string.Join(' ', sheet.Controls.Single(c => c.Id == "line").Positions))
        );
        // At x = 0 the whole wire is in the way: the brush is at the free end.
        var brush = sheet.Windings.Single(w => w.Id == "rheostat-t").Sliders[0];
        Assert.Equal((0, 200, 200), (brush.FromTurn, brush.ToTurn, sheet.Windings.Single(w => w.Id == "rheostat-t").Turns));
        Assert.Equal(
            (0.001, 1),
            (sheet.Cores.Single(c => c.Id == "former-t").LossOhms, sheet.Cores.Single(c => c.Id == "former-t").MagnetisingHenries)
        );
        Assert.Equal(60, sheet.SupplyHertz);
    }

    [Fact]
    public void One_whistle_lever_calls_for_each_throttle_and_steps_are_taps()
    {
        var sheet = OutlineText.Sheet(OutlineText.Mixed);
        Assert.Equal(
            "off one-first one-second two-first two-second",
            string.Join(' ', sheet.Controls.Single(c => c.Id == "whistle").Positions)
        );
        string ClosedIn(string id) => string.Join(' ', sheet.Elements.OfType<Switch>().Single(s => s.Id == id).ClosedIn);
        Assert.Equal("off two-first two-second", ClosedIn("run-one"));
        Assert.Equal("one-first one-second", ClosedIn("kick-one"));
        Assert.Equal("two-first two-second", ClosedIn("out-two"));
        Assert.Equal("one-second two-second", ClosedIn("hold"));
        string[] parts =
        [
            "boost winding boost-start→boost-end",
            "joint-boost joint boost-end→disc-plate",
            "disc rectifier disc-plate→disc-stud",
            "ballast resistor disc-plate→ballast-end",
            "out-one switch disc-stud→feed-one",
            "kick-two switch pivot-two→boost-start",
            "step-two-1 switch tap-two-1→arm-two",
            "step-two-3 switch aux-end→arm-two",
            "breaker-b breaker lead-b→out-b",
            "joint-aux joint aux-start→lead-a",
            "cell-d rectifier plate-d→stud-d",
            "dropper-d resistor stud-d→lead-d",
            "w-d wire lead-d→post-d",
        ];
        Assert.Empty(parts.Except(OutlineText.Parts(sheet)));
        Assert.Single(sheet.Elements, e => e.Id == "w-a");
        Assert.Equal(
            ("1", "1 2 3"),
            (
                sheet.Controls.Single(c => c.Id == "throttle-two").Rest,
                string.Join(' ', sheet.Controls.Single(c => c.Id == "throttle-two").Positions)
            )
        );
        Assert.Equal(50, sheet.SupplyHertz);
    }
}
