namespace Ohmstead.Electrical.Tests.Faults;

/// <summary>What each fault mode does to a circuit small enough to work out by hand (docs/formats.md, the table of faults).</summary>
public class FaultEffectTests
{
    private const double OpenOhms = 1e7;

    [Theory]
    [InlineData("wire", 0.004)]
    [InlineData("joint", 0.002)]
    public void A_wire_or_joint_opens_to_10_megohm_or_becomes_resistive(string kind, double ohms)
    {
        var unit = new SheetDraft().Element(kind, "part", "a", "b").Resistor("rest", "b", "c", 10).Unit();
        Assert.Equal(10 + ohms, unit.Read("ohms", ["a", "c"]), 1e-9);
        Assert.Equal(10 + OpenOhms, unit.Read("ohms", ["a", "c"], null, "part:open"), 1e-3);
        Assert.Equal(13, unit.Read("ohms", ["a", "c"], null, "part:resistive=3"), 1e-9);
    }

    [Theory]
    [InlineData("resistive=0.8", 0.8)]
    [InlineData("open", OpenOhms)]
    [InlineData("bypassed", 0.001)]
    public void A_breaker_becomes_resistive_open_or_bypassed(string mode, double ohms) =>
        Assert.Equal(
            ohms,
            new SheetDraft().Element("breaker", "k", "a", "b", new { ohms = 0.035 }).Unit().Read("ohms", ["a", "b"], null, $"k:{mode}"),
            1e-3 * ohms
        );

    [Theory]
    [InlineData("open", OpenOhms)]
    [InlineData("shorted", 0.01)]
    [InlineData("drifted=0.5", 0.7)]
    [InlineData("drifted=2", 2.8)]
    public void A_resistor_opens_shorts_or_drifts_by_a_factor(string mode, double ohms) =>
        Assert.Equal(ohms, new SheetDraft().Resistor("r", "a", "b", 1.4).Unit().Read("ohms", ["a", "b"], null, $"r:{mode}"), 1e-9 * ohms);

    [Fact]
    public void A_lamp_breaks_to_10_megohm_cold_and_lit()
    {
        var unit = new SheetDraft().Element("lamp", "l", "a", "b", new { volts = 14, amps = 0.2 }).Unit();
        Assert.Equal(OpenOhms, unit.Read("ohms", ["a", "b"], null, "l:open"), 1);
        Assert.Equal(
            14 / OpenOhms,
            unit.ReadSource(
                "ac-amps",
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "b",
                        volts = 14,
                    },
                },
                "l:open"
            ),
            1e-12
        );
    }

    [Theory]
    [InlineData("on", "", 0.01)]
    [InlineData("off", "", 1e8)]
    [InlineData("on", "resistive=4", 4)]
    [InlineData("off", "resistive=4", 1e8)]
    [InlineData("on", "stuck-open", 1e8)]
    [InlineData("off", "stuck-open", 1e8)]
    [InlineData("on", "stuck-closed", 0.02)]
    [InlineData("off", "stuck-closed", 0.01)]
    public void A_switch_follows_its_control_until_it_sticks(string position, string mode, double ohms)
    {
        // Its own resistance is 20 mΩ in the last two rows: stuck where it should be open it is 10 mΩ, closed its own.
        var own = mode == "stuck-closed" ? 0.02 : 0.01;
        var unit = new SheetDraft()
            .Selector("s", "off", "on")
            .Element(
                "switch",
                "k",
                "a",
                "b",
                new
                {
                    control = "s",
                    closedIn = new[] { "on" },
                    ohms = own,
                }
            )
            .Unit();
        var controls = new Dictionary<string, string> { ["s"] = position };
        var read = unit.Read("insulation-ohms", ["a", "b"], new { controls }, mode.Length == 0 ? [] : [$"k:{mode}"]);
        Assert.Equal(ohms, read, 1e-9 * ohms);
    }

    [Fact]
    public void Insulation_falls_to_its_value()
    {
        var unit = new SheetDraft().Element("insulation", "i", "a", "b", new { ohms = 3e8 }).Unit();
        Assert.Equal(3e8, unit.Read("insulation-ohms", ["a", "b"]), 1);
        Assert.Equal(2e5, unit.Read("insulation-ohms", ["a", "b"], null, "i:low=2e5"), 1e-3);
        // An ohmmeter shows OL above 20 MΩ and the low path below it.
        Assert.Equal(double.PositiveInfinity, unit.Read("ohms", ["a", "b"]));
        Assert.Equal(2e5, unit.Read("ohms", ["a", "b"], null, "i:low=2e5"), 1e-3);
    }

    [Fact]
    public void A_slider_stands_at_its_turn_and_wears_or_opens()
    {
        var unit = Tapped();
        // Half way from turn 20 to turn 80 of 100 turns and 10 Ω: 5 Ω, and the contact's 0.1 Ω.
        object State(double x) => new { controls = new Dictionary<string, double> { ["throttle"] = x } };
        Assert.Equal(5.1, unit.Read("ohms", ["start", "arm"], State(0.5)), 1e-9);
        Assert.Equal(2.1, unit.Read("ohms", ["start", "arm"]), 1e-9);
        Assert.Equal(8.1, unit.Read("ohms", ["start", "arm"], State(1)), 1e-9);
        Assert.Equal(7, unit.Read("ohms", ["start", "arm"], State(0.5), "shoe:worn=2"), 1e-9);
        Assert.Equal(5 + OpenOhms, unit.Read("ohms", ["start", "arm"], State(0.5), "shoe:open"), 1e-3);
    }

    [Fact]
    public void A_slider_that_bridges_turns_touches_half_a_turn_to_each_side_through_twice_its_resistance()
    {
        var unit = Tapped(bridgesTurns: 1);
        var controls = new Dictionary<string, double> { ["throttle"] = 0.5 };
        // From turn 49.5 a path of 0.2 Ω; on to turn 50.5 another 0.1 Ω and 0.2 Ω: 4.95 + 0.2∥0.3.
        Assert.Equal(4.95 + (0.2 * 0.3 / 0.5), unit.Read("ohms", ["start", "arm"], new { controls }), 1e-9);
        // At the end of the winding nothing is beyond it.
        var atEnd = Tapped(bridgesTurns: 1, toTurn: 100);
        Assert.Equal(
            9.95 + (0.2 * 0.25 / 0.45),
            atEnd.Read("ohms", ["start", "arm"], new { controls = new Dictionary<string, double> { ["throttle"] = 1 } }),
            1e-9
        );
    }

    [Theory]
    [InlineData("", 4, 10)]
    [InlineData("coil:open", OpenOhms + 4, OpenOhms + 10)]
    [InlineData("coil:open=40", OpenOhms + 4, OpenOhms + 10)]
    [InlineData("coil:open=41", 4, OpenOhms + 10)]
    [InlineData("coil:open=39", OpenOhms + 4, OpenOhms + 10)]
    [InlineData("coil:open=100", 4, OpenOhms + 10)]
    public void A_winding_breaks_at_its_start_or_just_below_the_contact_at_the_turn(string fault, double toTap, double toEnd)
    {
        var unit = Tapped();
        string[] faults = fault.Length == 0 ? [] : [fault];
        Assert.Equal(toTap, unit.Read("ohms", ["start", "tap"], null, faults), 1e-9 * toTap);
        Assert.Equal(toEnd, unit.Read("ohms", ["start", "end"], null, faults), 1e-9 * toEnd);
    }

    [Fact]
    public void Shorted_turns_leave_the_path_and_every_tap_counts_fewer()
    {
        var unit = Tapped();
        Assert.Equal(9.5, unit.Read("ohms", ["start", "end"], null, "coil:shorted-turns=5"), 1e-9);
        Assert.Equal(3.5, unit.Read("ohms", ["start", "tap"], null, "coil:shorted-turns=5"), 1e-9);
        Assert.Equal(1.6, unit.Read("ohms", ["start", "arm"], null, "coil:shorted-turns=5"), 1e-9);
        // A tap at or below the shorted turns sits at the start.
        Assert.Equal(0, unit.Read("ohms", ["start", "tap"], null, "coil:shorted-turns=45"), 1e-6);
    }

    [Fact]
    public void Shorted_turns_load_the_core_and_lower_the_volts_of_what_is_left()
    {
        var unit = WithPrimary();
        var state = new
        {
            source = new
            {
                from = "p1",
                to = "p2",
                volts = 100,
            },
        };
        Assert.Equal(10, unit.Read("ac-volts", ["start", "end"], state), 1e-4);
        Assert.Equal(9.5, unit.Read("ac-volts", ["start", "end"], state, "coil:shorted-turns=5"), 1e-4);
        Assert.Equal(3.5, unit.Read("ac-volts", ["start", "tap"], state, "coil:shorted-turns=5"), 1e-4);
        // The loop: 5 turns of a tenth of a volt, 0.5 Ω of copper and 1 mΩ where they touch.
        Assert.Equal(0.25 / 0.501, unit.ReadSource("watts", state, "coil:shorted-turns=5"), 1e-4);
    }

    [Fact]
    public void A_reversed_winding_bucks_where_it_boosted()
    {
        var unit = new SheetDraft()
            .Core("core", "primary", 1e12, 1e9)
            .Winding("primary", "p1", "p2", 1000, 1e-3)
            .Winding("main", "a", "b", 100, 0.1)
            .Winding("boost", "b", "c", 20, 0.1)
            .Unit();
        var state = new
        {
            source = new
            {
                from = "p1",
                to = "p2",
                volts = 100,
            },
        };
        Assert.Equal(12, unit.Read("ac-volts", ["a", "c"], state), 1e-6);
        Assert.Equal(8, unit.Read("ac-volts", ["a", "c"], state, "boost:reversed"), 1e-6);
        Assert.Equal(8, unit.Read("ac-volts", ["a", "c"], state, "main:reversed"), 1e-6);
        Assert.Equal(12, unit.Read("ac-volts", ["a", "c"], state, "main:reversed", "boost:reversed"), 1e-6);
        Assert.Equal(2, unit.Read("ac-volts", ["b", "c"], state, "boost:reversed"), 1e-6);
    }

    [Fact]
    public void A_reversed_tapped_winding_exchanges_its_ends_and_leaves_its_taps()
    {
        var unit = WithPrimary();
        Assert.Equal(6, unit.Read("ohms", ["start", "tap"], null, "coil:reversed"), 1e-9);
        Assert.Equal(4, unit.Read("ohms", ["end", "tap"], null, "coil:reversed"), 1e-9);
        var state = new
        {
            source = new
            {
                from = "p1",
                to = "p2",
                volts = 100,
            },
        };
        Assert.Equal(6, unit.Read("ac-volts", ["start", "tap"], state, "coil:reversed"), 1e-4);
    }

    [Theory]
    [InlineData("", 0.1)]
    [InlineData("disc:high-drop=3", 3)]
    public void A_rectifier_at_one_ampere_drops_its_junction_and_its_series_ohms(string fault, double seriesOhms)
    {
        var (saturationAmps, slopeVolts) = (1e-3, 0.1);
        var unit = new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "a",
                "b",
                new
                {
                    saturationAmps,
                    slopeVolts,
                    seriesOhms = 0.1,
                    leakageOhms = 1e9,
                }
            )
            .Unit();
        var state = new
        {
            source = new
            {
                from = "a",
                to = "b",
                directAmps = 1,
            },
        };
        Assert.Equal(
            (slopeVolts * Math.Log(1 + (1 / saturationAmps))) + seriesOhms,
            unit.Read("dc-volts", ["a", "b"], state, fault.Length == 0 ? [] : [fault]),
            1e-6
        );
    }

    [Theory]
    [InlineData("disc:leaky=5", 5)]
    [InlineData("disc:shorted", 0.02)]
    [InlineData("disc:open", OpenOhms)]
    public void A_rectifier_leaks_shorts_or_opens_in_its_shut_direction(string fault, double ohms)
    {
        var unit = new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "a",
                "b",
                new
                {
                    saturationAmps = 1e-9,
                    slopeVolts = 0.05,
                    seriesOhms = 0.1,
                    leakageOhms = 1e6,
                }
            )
            .Unit();
        // The junction's own saturation current of a nanoampere is in it: 3 V over 10 MΩ are 300 nA.
        Assert.Equal(ohms, unit.Read("ohms", ["b", "a"], null, fault), 5e-3 * ohms);
    }

    [Fact]
    public void A_reversed_rectifier_is_shut_where_it_was_open()
    {
        var unit = new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "a",
                "b",
                new
                {
                    saturationAmps = 1e-9,
                    slopeVolts = 0.05,
                    seriesOhms = 0.1,
                    leakageOhms = 1e6,
                }
            )
            .Unit();
        Assert.Equal(unit.Read("ohms", ["a", "b"]), unit.Read("ohms", ["b", "a"], null, "disc:reversed"), 1e-6);
        Assert.Equal(unit.Read("ohms", ["b", "a"]), unit.Read("ohms", ["a", "b"], null, "disc:reversed"), 1e-3);
        Assert.True(unit.Read("ohms", ["b", "a"]) > 1000 * unit.Read("ohms", ["a", "b"]));
    }

    private static BenchUnit Tapped(int bridgesTurns = 0, double toTurn = 80) =>
        new SheetDraft()
            .Core("core", "coil", 1000, 1)
            .Throttle("throttle")
            .Element("winding", "coil", "start", "end", Coil(bridgesTurns, toTurn))
            .Unit();

    private static BenchUnit WithPrimary() =>
        new SheetDraft()
            .Core("core", "primary", 1e12, 1e9)
            .Throttle("throttle")
            .Winding("primary", "p1", "p2", 1000, 1e-3)
            .Element("winding", "coil", "start", "end", Coil(0, 80))
            .Unit();

    private static object Coil(int bridgesTurns, double toTurn) =>
        new
        {
            core = "core",
            turns = 100,
            ohms = 10,
            taps = new[] { new { turn = 40, to = "tap" } },
            sliders = new[]
            {
                new
                {
                    id = "shoe",
                    control = "throttle",
                    fromTurn = 20,
                    toTurn,
                    to = "arm",
                    contactOhms = 0.1,
                    bridgesTurns,
                },
            },
        };
}
