namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>A capacitor, sound and faulted, against closed forms of its reactance 1/(ωC).</summary>
public class CapacitorTests
{
    private const double Farads = 2e-5,
        Ohms = 100;

    private static readonly double Reactance = 1 / (2 * Math.PI * 60 * Farads);

    private static readonly object Mains = new
    {
        source = new
        {
            from = "a",
            to = "c",
            volts = 24,
        },
    };

    private static BenchUnit Unit() =>
        new SheetDraft().Resistor("r", "a", "b", Ohms).Element("capacitor", "cap", "b", "c", new { farads = Farads }).Unit();

    /// <summary>In series with R its share is X/√(R² + X²) of the volts, and the current V/√(R² + X²) makes V²R/(R² + X²) watts.</summary>
    [Fact]
    public void It_takes_its_share_of_alternating_volts_and_no_power()
    {
        var z = double.Hypot(Ohms, Reactance);
        Assert.Equal(24 * Reactance / z, Unit().Read("ac-volts", ["b", "c"], Mains), 1e-9);
        Assert.Equal(24 / z, Unit().ReadSource("ac-amps", Mains), 1e-9);
        Assert.Equal(24 * 24 * Ohms / (z * z), Unit().ReadSource("watts", Mains), 1e-9);
    }

    [Fact]
    public void It_is_open_to_direct_current() => Assert.Equal(double.PositiveInfinity, Unit().Read("ohms", ["a", "c"]));

    [Theory]
    [InlineData("cap:shorted", Ohms + 0.01)]
    [InlineData("cap:leaky=5000", Ohms + 5000)]
    [InlineData("cap:open", double.PositiveInfinity)]
    public void An_ohmmeter_sees_what_leaks(string fault, double expected) =>
        Assert.Equal(expected, Unit().Read("ohms", ["a", "c"], null, fault), 1e-9 * Ohms);

    /// <summary>Open is 10 MΩ in series with it: the resistor has no volts. Leaky is a resistance beside it.</summary>
    [Fact]
    public void With_alternating_current_open_and_leaky_are_no_short()
    {
        Assert.Equal(24, Unit().Read("ac-volts", ["b", "c"], Mains, "cap:open"), 1e-3);
        Assert.Equal(24 * Ohms / 1e7, Unit().Read("ac-volts", ["a", "b"], Mains, "cap:open"), 1e-8);
        var beside = 1 / new System.Numerics.Complex(1 / 150.0, 1 / Reactance);
        Assert.Equal(24 * (beside / (beside + Ohms)).Magnitude, Unit().Read("ac-volts", ["b", "c"], Mains, "cap:leaky=150"), 1e-9);
    }

    /// <summary>At resonance ω²LC = 1 the volts across coil and capacitor cancel, and R takes all of the source's.</summary>
    [Fact]
    public void It_and_a_coil_cancel_at_resonance()
    {
        var henries = Reactance / (2 * Math.PI * 60);
        var state = new
        {
            source = new
            {
                from = "a",
                to = "d",
                volts = 24,
            },
            loads = new[]
            {
                new
                {
                    from = "c",
                    to = "d",
                    ohms = 1e-3,
                    henries,
                },
            },
        };
        var unit = new SheetDraft()
            .Resistor("r", "a", "b", Ohms)
            .Element("capacitor", "cap", "b", "c", new { farads = Farads })
            .Resistor("far", "c", "d", 1e9)
            .Unit();
        Assert.Equal(24, unit.Read("ac-volts", ["a", "b"], state), 1e-3);
        Assert.Equal(24 * Reactance / Ohms, unit.Read("ac-volts", ["b", "c"], state), 1e-2);
    }

    /// <summary>
    /// A large filter behind a diode holds nearly the peak; its ripple is a triangle of I·T/C from top to bottom, and a triangle's RMS is
    /// that over 2√3.
    /// </summary>
    [Fact]
    public void A_filter_holds_the_peak_and_its_ripple_is_a_saw()
    {
        var unit = new SheetDraft()
            .Element(
                "rectifier",
                "diode",
                "a",
                "b",
                new
                {
                    saturationAmps = 1e-9,
                    slopeVolts = 0.045,
                    seriesOhms = 0.05,
                    leakageOhms = 2e6,
                }
            )
            .Element("capacitor", "cap", "b", "c", new { farads = 2e-3 })
            .Unit();
        var state = new
        {
            source = new
            {
                from = "a",
                to = "c",
                volts = 12,
            },
            loads = new[]
            {
                new
                {
                    from = "b",
                    to = "c",
                    ohms = 200,
                },
            },
        };
        var mean = unit.Read("dc-volts", ["b", "c"], state);
        Assert.InRange(mean, (12 * Math.Sqrt(2)) - 1.6, (12 * Math.Sqrt(2)) - 0.8);
        var ripple = mean / 200 / 60 / 2e-3 / (2 * Math.Sqrt(3));
        Assert.InRange(unit.Read("ac-volts", ["b", "c"], state), 0.85 * ripple, 1.02 * ripple);
    }
}
