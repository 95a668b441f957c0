namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>
/// Closed forms of rectifiers (tests/Reference/published/rectifiers.json) read out of the periodic steady state. A junction
/// here is exponential: "ideal" is a slope of 5 mV at 100 V, whose drop of some 50 mV is put into the tolerance; "constant
/// drop" a junction that reaches the drop at half the peak current, about which the logarithm of a half sine averages.
/// Beside that 0.3 % is allowed for a period of 64 samples, whose corners at the start of conduction fall between samples.
/// </summary>
public class RectifierTests
{
    private const double SlopeVolts = 0.005;
    private const double SaturationAmps = 1e-4;
    private const double Sampling = 0.003;

    private static Published Case(string id) => Published.Case("rectifiers", id);

    [Theory]
    [InlineData("4.1", 100)]
    [InlineData("9.12", 100)]
    [InlineData("4.2", 1)]
    [InlineData("4.6-open", 5)]
    public void A_half_wave_has_the_mean_and_RMS_of_its_closed_form(string id, double scale)
    {
        var p = Case(id);
        var ohms = p.Gives("ohms") ? p.Given("ohms") : 100;
        var (mean, alternating, watts) = HalfWave(scale * p.Given("volts"), ohms, null);
        var within = Sampling + (Drop(scale * p.Given("volts"), ohms) / (scale * p.Given("volts")));
        p.Agrees("meanVolts", mean / scale, within * p.Expected("meanVolts"));
        if (p.Expects("alternatingVolts"))
            p.Agrees("alternatingVolts", alternating / scale, within * p.Expected("alternatingVolts"));
        if (p.Expects("rmsVolts"))
            p.Agrees("rmsVolts", Rms(mean, alternating) / scale, within * p.Expected("rmsVolts"));
        if (p.Expects("ripple"))
            p.Agrees("ripple", alternating / mean, 2 * within * p.Expected("ripple"));
        if (p.Expects("efficiencyPercent"))
            p.Agrees("efficiencyPercent", 100 * mean * mean / ohms / watts, 2 * within * p.Expected("efficiencyPercent"));
        if (p.Expects("amps"))
            p.Agrees("amps", mean / ohms, within * p.Expected("amps"));
    }

    [Fact]
    public void A_bridge_gives_twice_the_mean_of_a_half_wave_with_half_the_current_in_each_arm()
    {
        var p = Case("4.3");
        var (mean, _, arm) = Bridge(p.Given("volts"), p.Given("ohms"));
        // Two junctions in series in every half wave.
        var within = Sampling + (2 * Drop(p.Given("volts"), p.Given("ohms")) / p.Given("volts"));
        p.Agrees("meanVolts", mean, within * p.Expected("meanVolts"));
        p.Agrees("ampsPerDiode", arm, within * p.Expected("ampsPerDiode"));
    }

    [Fact]
    public void Rectified_waves_show_the_parts_that_a_true_RMS_meter_shows_of_them()
    {
        var (halfMean, halfAlternating, _) = HalfWave(100, 100, null);
        var (fullMean, fullAlternating, _) = Bridge(100, 100);
        var (half, full) = (Rms(halfMean, halfAlternating), Rms(fullMean, fullAlternating));
        Case("9.11-half").Agrees("meanVolts", halfMean / half, 0.003);
        Case("9.11-half").Agrees("alternatingVolts", halfAlternating / half, 0.003);
        Case("9.11-full").Agrees("meanVolts", fullMean / full, 0.003);
        Case("9.11-full").Agrees("alternatingVolts", fullAlternating / full, 0.003);
        Case("4.8").Agrees("halfWave", halfMean / half, 0.005);
        Case("4.8").Agrees("fullWave", fullMean / full, 0.005);
        Case("9.13").Agrees("total", Math.Sqrt(Math.Pow(halfMean / half, 2) + Math.Pow(halfAlternating / half, 2)), 0.0005);
        // An average-responding meter would show another figure than ours does.
        Assert.True(Math.Abs((halfAlternating / half) - Case("9.11-half").Misprinted("averageResponding")) > 0.005);
    }

    [Fact]
    public void Direct_current_has_no_alternating_part()
    {
        var unit = HalfWaveUnit(100, null);
        var state = new
        {
            source = new
            {
                from = "line",
                to = "back",
                directAmps = 0.1,
            },
        };
        Case("4.8").Agrees("direct", unit.Read("dc-volts", ["load", "back"], state) / 10, 1e-9);
        Assert.Equal(0, unit.Read("ac-volts", ["load", "back"], state));
    }

    [Theory]
    [InlineData("4.5-5")]
    [InlineData("4.5-12-07")]
    [InlineData("4.5-12-03")]
    public void A_constant_drop_takes_its_part_off_the_half_wave(string id)
    {
        var p = Case(id);
        var (peak, drop) = (p.Given("peakVolts"), p.Given("dropVolts"));
        // About 1 A at the peak. The smallest saturation current a sheet may have makes the steepest junction of this drop.
        var ohms = peak - drop;
        const double saturationAmps = 1e-16;
        var unit = new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "line",
                "load",
                new
                {
                    saturationAmps,
                    slopeVolts = drop / Math.Log(0.5 / saturationAmps),
                    seriesOhms = 0,
                    leakageOhms = 1e9,
                }
            )
            .Resistor("lamp", "load", "back", ohms)
            .Unit();
        var state = new
        {
            source = new
            {
                from = "line",
                to = "back",
                volts = peak / Math.Sqrt(2),
            },
        };
        var (mean, alternating) = (unit.Read("dc-volts", ["load", "back"], state), unit.Read("ac-volts", ["load", "back"], state));
        Assert.True(unit.WasPeriodic);
        // The junction's drop still varies by its slope (2 % of the drop) over the half wave.
        var within = (Sampling * p.Expected("meanVolts")) + (0.02 * drop / 2);
        p.Agrees("meanVolts", mean, within);
        p.Agrees("rmsVolts", Rms(mean, alternating), within + (Sampling * p.Expected("rmsVolts")));
    }

    [Theory]
    [InlineData("4.6-1.5")]
    [InlineData("4.6-1.463")]
    [InlineData("4.7-6")]
    [InlineData("4.7-1.5")]
    public void A_resistance_across_the_rectifier_weakens_the_direct_part(string id)
    {
        var p = Case(id);
        // Scaled to ten times the volts, where the junction's drop is a thousandth.
        const double scale = 10;
        var (mean, alternating, _) = HalfWave(scale * p.Given("volts"), p.Given("ohms"), p.Given("shuntOhms"));
        var within = Sampling + (2 * Drop(scale * p.Given("volts"), p.Given("ohms")) / (scale * p.Given("volts")));
        p.Agrees("meanVolts", mean / scale, within * p.Expected("meanVolts") + 0.0005);
        if (p.Expects("rmsVolts"))
            p.Agrees("rmsVolts", Rms(mean, alternating) / scale, within * p.Expected("rmsVolts"));
    }

    [Fact]
    public void The_leakage_of_a_rectifier_is_the_same_as_a_resistor_across_it()
    {
        var state = new
        {
            source = new
            {
                from = "line",
                to = "back",
                volts = 17,
            },
        };
        BenchUnit Unit(double leakageOhms) =>
            new SheetDraft()
                .Element(
                    "rectifier",
                    "disc",
                    "line",
                    "load",
                    new
                    {
                        saturationAmps = 0.002,
                        slopeVolts = 0.13,
                        seriesOhms = 0.1,
                        leakageOhms,
                    }
                )
                .Resistor("shunt", "line", "load", 3)
                .Resistor("lamp", "load", "back", 6)
                .Unit();
        var (apart, together) = (Unit(4), Unit(12.0 / 7));
        Assert.Equal(
            together.Read("dc-volts", ["load", "back"], state, "shunt:open"),
            apart.Read("dc-volts", ["load", "back"], state),
            1e-5
        );
        Assert.Equal(
            together.Read("ac-volts", ["load", "back"], state, "shunt:open"),
            apart.Read("ac-volts", ["load", "back"], state),
            1e-5
        );
    }

    [Fact]
    public void A_reversed_rectifier_turns_the_mean_around_and_leaves_the_rest()
    {
        var unit = HalfWaveUnit(20, null);
        var state = new
        {
            source = new
            {
                from = "line",
                to = "back",
                volts = 40,
            },
        };
        var (mean, alternating) = (unit.Read("dc-volts", ["load", "back"], state), unit.Read("ac-volts", ["load", "back"], state));
        Assert.Equal(-mean, unit.Read("dc-volts", ["load", "back"], state, "disc:reversed"), 1e-6);
        Assert.Equal(alternating, unit.Read("ac-volts", ["load", "back"], state, "disc:reversed"), 1e-6);
        Assert.Equal(-mean, unit.Read("dc-volts", ["back", "load"], state), 1e-9);
    }

    private static double Rms(double mean, double alternating) => Math.Sqrt((mean * mean) + (alternating * alternating));

    /// <summary>What the junction drops at the peak [V].</summary>
    private static double Drop(double volts, double ohms) => SlopeVolts * Math.Log(1 + (volts * Math.Sqrt(2) / ohms / SaturationAmps));

    private static BenchUnit HalfWaveUnit(double ohms, double? shuntOhms)
    {
        var draft = new SheetDraft()
            .Element(
                "rectifier",
                "disc",
                "line",
                "load",
                new
                {
                    saturationAmps = SaturationAmps,
                    slopeVolts = SlopeVolts,
                    seriesOhms = 0,
                    leakageOhms = 1e9,
                }
            )
            .Resistor("lamp", "load", "back", ohms);
        if (shuntOhms is { } shunt)
            draft.Resistor("ballast", "line", "load", shunt);
        return draft.Unit();
    }

    private static (double Mean, double Alternating, double Watts) HalfWave(double volts, double ohms, double? shuntOhms)
    {
        var unit = HalfWaveUnit(ohms, shuntOhms);
        var state = new
        {
            source = new
            {
                from = "line",
                to = "back",
                volts,
            },
        };
        var result = (
            unit.Read("dc-volts", ["load", "back"], state),
            unit.Read("ac-volts", ["load", "back"], state),
            unit.ReadSource("watts", state)
        );
        Assert.True(unit.WasPeriodic);
        return result;
    }

    private static (double Mean, double Alternating, double ArmAmps) Bridge(double volts, double ohms)
    {
        object Junction() =>
            new
            {
                saturationAmps = SaturationAmps,
                slopeVolts = SlopeVolts,
                seriesOhms = 0,
                leakageOhms = 1e9,
            };
        const double probeOhms = 0.01;
        var unit = new SheetDraft()
            .Element("rectifier", "a", "line", "arm", Junction())
            .Resistor("probe", "arm", "plus", probeOhms)
            .Element("rectifier", "b", "back", "plus", Junction())
            .Element("rectifier", "c", "minus", "line", Junction())
            .Element("rectifier", "d", "minus", "back", Junction())
            .Resistor("lamp", "plus", "minus", ohms)
            .Unit();
        var state = new
        {
            source = new
            {
                from = "line",
                to = "back",
                volts,
            },
        };
        var mean = unit.Read("dc-volts", ["plus", "minus"], state);
        return (mean, unit.Read("ac-volts", ["plus", "minus"], state), unit.Read("dc-volts", ["arm", "plus"], state) / probeOhms);
    }
}
