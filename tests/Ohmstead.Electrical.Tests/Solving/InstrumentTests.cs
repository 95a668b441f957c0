namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>What the instruments for direct current drive and show, by closed forms (docs/formats.md, readings).</summary>
public class InstrumentTests
{
    private const double Saturation = 1e-4;
    private const double Slope = 0.1;

    [Fact]
    public void An_ohmmeter_drives_one_milliampere_through_a_junction()
    {
        // v = Vs·ln(1 + i/Is) at 1 mA, shown as v/i; with 0.5 Ω in series. The leakage of 1 GΩ takes nothing.
        var expected = (Slope * Math.Log(1 + (1e-3 / Saturation)) / 1e-3) + 0.5;
        Assert.Equal(expected, Junction(1e9).Read("ohms", ["a", "b"]), 1e-3);
    }

    [Fact]
    public void An_ohmmeter_stops_at_3_volts()
    {
        // Backwards the junction takes at most its saturation current, and the leakage of 1 MΩ the rest: at 3 V 100 µA and 3 µA.
        var expected = 3 / ((Saturation * (1 - Math.Exp(-3 / Slope))) + 3e-6);
        Assert.Equal(expected, Junction(1e6).Read("ohms", ["b", "a"]), 1e-4 * expected);
    }

    [Theory]
    [InlineData(2999, 2999)]
    [InlineData(3001, 3001)]
    [InlineData(5e5, 5e5)]
    [InlineData(1.99e7, 1.99e7)]
    [InlineData(2.01e7, double.PositiveInfinity)]
    public void A_resistance_reads_itself_below_and_above_the_voltage_limit_and_OL_above_20_megohm(double ohms, double shown) =>
        Assert.Equal(shown, new SheetDraft().Resistor("r", "a", "b", ohms).Unit().Read("ohms", ["a", "b"]), 1e-6 * ohms);

    [Theory]
    [InlineData(9.9e8, 9.9e8)]
    [InlineData(1.01e9, double.PositiveInfinity)]
    public void An_insulation_tester_shows_OL_above_a_gigaohm(double ohms, double shown) =>
        Assert.Equal(
            shown,
            new SheetDraft().Element("insulation", "i", "a", "b", new { ohms }).Unit().Read("insulation-ohms", ["a", "b"]),
            1e-6 * ohms
        );

    [Fact]
    public void An_insulation_tester_sees_windings_as_resistance_and_rectifiers_as_their_leakage()
    {
        var unit = new SheetDraft()
            .Core("core", "coil", 1000, 1)
            .Winding("coil", "a", "b", 100, 40)
            .Element(
                "rectifier",
                "disc",
                "b",
                "c",
                new
                {
                    saturationAmps = Saturation,
                    slopeVolts = Slope,
                    seriesOhms = 0.5,
                    leakageOhms = 300,
                }
            )
            .Unit();
        Assert.Equal(340, unit.Read("insulation-ohms", ["a", "c"]), 1e-6);
        Assert.Equal(340, unit.Read("insulation-ohms", ["c", "a"]), 1e-6);
    }

    [Fact]
    public void Across_a_gap_an_ohmmeter_shows_OL_and_a_voltmeter_nothing()
    {
        var unit = new SheetDraft().Resistor("r", "a", "b", 10).Resistor("other", "c", "d", 10).Unit();
        var source = new
        {
            from = "a",
            to = "b",
            volts = 10,
        };
        Assert.Equal(double.PositiveInfinity, unit.Read("ohms", ["a", "c"]));
        Assert.Equal(double.PositiveInfinity, unit.Read("insulation-ohms", ["a", "c"]));
        Assert.Equal(0, unit.Read("ac-volts", ["a", "c"], new { source }));
        Assert.Equal(0, unit.Read("ac-volts", ["c", "d"], new { source }));
        Assert.Equal(
            0,
            unit.Read(
                "dc-volts",
                ["a", "c"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "b",
                        directAmps = 1,
                    },
                }
            )
        );
    }

    [Theory]
    [InlineData(0.5, 10, 5)]
    [InlineData(2, 10, 20)]
    [InlineData(2, 20, 30)]
    [InlineData(2, 1e6, 30)]
    public void A_direct_current_source_drives_its_current_up_to_30_volts(double amps, double ohms, double volts)
    {
        var unit = new SheetDraft().Resistor("r", "a", "b", ohms).Unit();
        Assert.Equal(
            volts,
            unit.Read(
                "dc-volts",
                ["a", "b"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "b",
                        directAmps = amps,
                    },
                }
            ),
            1e-9
        );
        Assert.Equal(
            -volts,
            unit.Read(
                "dc-volts",
                ["b", "a"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "b",
                        directAmps = amps,
                    },
                }
            ),
            1e-9
        );
    }

    [Fact]
    public void Four_wire_work_sees_the_part_between_the_probes_alone()
    {
        var unit = new SheetDraft()
            .Wire("lead", "a", "b", 0.2)
            .Element("joint", "joint", "b", "c", new { ohms = 0.0123 })
            .Wire("back", "c", "d", 0.3)
            .Unit();
        Assert.Equal(
            0.0123,
            unit.Read(
                "dc-volts",
                ["b", "c"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "d",
                        directAmps = 1,
                    },
                }
            ),
            1e-9
        );
    }

    [Fact]
    public void At_direct_current_a_core_induces_nothing()
    {
        var unit = new SheetDraft().Core("core", "one", 1000, 1).Winding("one", "a", "b", 100, 4).Winding("two", "c", "d", 100, 4).Unit();
        var state = new
        {
            source = new
            {
                from = "a",
                to = "b",
                directAmps = 1,
            },
        };
        Assert.Equal(4, unit.Read("dc-volts", ["a", "b"], state), 1e-9);
        Assert.Equal(0, unit.Read("dc-volts", ["c", "d"], state));
    }

    private static BenchUnit Junction(double leakageOhms) =>
        new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "a",
                "b",
                new
                {
                    saturationAmps = Saturation,
                    slopeVolts = Slope,
                    seriesOhms = 0.5,
                    leakageOhms,
                }
            )
            .Unit();
}
