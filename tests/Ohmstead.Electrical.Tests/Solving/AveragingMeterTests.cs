using System.Numerics;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>
/// What a meter shows that rectifies, averages and is scaled for a sine: π/(2√2)·mean|v − mean v|. Closed forms derived here.
/// </summary>
public class AveragingMeterTests
{
    private static readonly double Scale = Math.PI / (2 * Math.Sqrt(2));

    [Fact]
    public void A_sine_is_shown_as_its_RMS_and_its_phase_does_not_matter()
    {
        for (var n = 0; n < 16; n++)
        {
            var phasors = new Complex[Harmonics.Highest];
            phasors[0] = 5;
            phasors[1] = Complex.FromPolarCoordinates(12, n * 0.4);
            Assert.Equal(12, Harmonics.SineScaledAverage(phasors), 12 * 1e-4);
        }
    }

    [Fact]
    public void A_square_wave_is_shown_11_percent_above_its_RMS()
    {
        // ±10 V: the harmonic k, odd, has the amplitude 4·10/(πk), in sine phase: −j/√2 as a phasor. 15 of them ripple by 1 %.
        var phasors = new Complex[Harmonics.Highest];
        for (var k = 1; k < phasors.Length; k += 2)
            phasors[k] = new Complex(0, -40 / (Math.PI * k * Math.Sqrt(2)));
        Assert.Equal(10 * Scale, Harmonics.SineScaledAverage(phasors), 0.015 * 10);
    }

    [Fact]
    public void A_half_wave_without_its_mean_is_shown_by_its_closed_form()
    {
        // Of a peak of 1 the mean is m = 1/π. The part above m lies between α and π − α, sin α = m; above and below are equal,
        // so mean|v − m| = 2·(2·cos α − m·(π − 2α))/(2π).
        var m = 1 / Math.PI;
        var alpha = Math.Asin(m);
        var shown = Scale * ((2 * Math.Cos(alpha)) - (m * (Math.PI - (2 * alpha)))) / Math.PI;
        var trueRms = Math.Sqrt(0.25 - (m * m));
        Assert.Equal(1.0106, shown / trueRms, 1e-4);

        var peak = 100 * Math.Sqrt(2);
        var read = Rectified(1, isAveraging: true);
        Assert.Equal(shown * peak, read, 0.003 * peak);
        Assert.Equal(shown / trueRms, read / Rectified(1, isAveraging: false), 0.003);
    }

    [Fact]
    public void A_full_wave_without_its_mean_is_shown_by_its_closed_form()
    {
        // |sin| has the mean m = 2/π and repeats after π: mean|v − m| = 2·(2·cos α − m·(π − 2α))/π with sin α = m.
        var m = 2 / Math.PI;
        var alpha = Math.Asin(m);
        var shown = Scale * 2 * ((2 * Math.Cos(alpha)) - (m * (Math.PI - (2 * alpha)))) / Math.PI;
        var trueRms = Math.Sqrt(0.5 - (m * m));
        Assert.True(shown < trueRms, "a full wave reads low");

        var read = Rectified(2, isAveraging: true);
        Assert.Equal(shown * 100 * Math.Sqrt(2), read, 0.005 * 100);
        Assert.Equal(shown / trueRms, read / Rectified(2, isAveraging: false), 0.005);
    }

    [Fact]
    public void Where_nothing_rectifies_both_meters_show_the_same()
    {
        foreach (var id in new[] { "left-full", "left-load", "low-17" })
        {
            var averaging = new BenchUnit(Reference.Twin160) { HasAveragingMeter = true };
            Assert.Equal(new BenchUnit(Reference.Twin160).ReadListed(id), averaging.ReadListed(id), 1e-9);
            Assert.False(averaging.WasPeriodic);
        }
    }

    /// <summary>100 V behind one rectifier, or a bridge of four, into 100 Ω; a slope of 5 mV makes them nearly ideal.</summary>
    private static double Rectified(int pulses, bool isAveraging)
    {
        var junction = new
        {
            saturationAmps = 1e-4,
            slopeVolts = 0.005,
            seriesOhms = 1e-4,
            leakageOhms = 1e9,
        };
        var draft = new SheetDraft().Resistor("load", "plus", "minus", 100);
        draft =
            pulses == 1
                ? draft.Element("rectifier", "d", "line", "plus", junction).Wire("return", "minus", "back", 1e-6)
                : draft
                    .Element("rectifier", "d1", "line", "plus", junction)
                    .Element("rectifier", "d2", "back", "plus", junction)
                    .Element("rectifier", "d3", "minus", "line", junction)
                    .Element("rectifier", "d4", "minus", "back", junction);
        var unit = new BenchUnit(draft.Sheet()) { HasAveragingMeter = isAveraging };
        return unit.Read(
            "ac-volts",
            ["plus", "minus"],
            new
            {
                source = new
                {
                    from = "line",
                    to = "back",
                    volts = 100,
                },
            }
        );
    }
}
