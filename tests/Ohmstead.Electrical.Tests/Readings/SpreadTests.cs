using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Spread carried from parameters to readings against closed forms of the propagation law.</summary>
public class SpreadTests
{
    private const double Width = 2 * 1.959964;

    /// <summary>
    /// The kind of result of GUM H.2, the other way round: a resistance and a reactance, each with its uncertainty, give an
    /// impedance with its own. The parameters of a unit are independent here, so the published correlation of −0.59 between
    /// the two cannot be put in; the closed form without it is what must come out, and the published u(Z), which needs the
    /// correlation, must not.
    /// </summary>
    [Fact]
    public void An_impedance_takes_its_spread_from_resistance_and_reactance()
    {
        var p = Published.Case("measurement", "9.1");
        var (r, x, ur, ux) = (p.Expected("resistance"), p.Expected("reactance"), p.Expected("resistanceU"), p.Expected("reactanceU"));
        var unit = new SheetDraft()
            .Core("core", "coil", 1e12, 1e9)
            .Element("resistor", "r", "a", "b", new { ohms = r, spread = new { ohms = ur / r } })
            .Element(
                "winding",
                "coil",
                "b",
                "c",
                new
                {
                    core = "core",
                    turns = 1e-3,
                    ohms = 1e-6,
                    leakageHenries = x / (120 * Math.PI),
                    spread = new
                    {
                        ohms = 0,
                        turns = 0,
                        leakageHenries = ux / x,
                    },
                }
            )
            // The core is kept from inducing anything by a loop on it that is worth no reactance.
            .Winding("loop", "d", "e", 1)
            .Unit();
        var volts = p.Given("volts");
        var state = new
        {
            source = new
            {
                from = "a",
                to = "c",
                volts,
            },
            joined = new[] { new[] { "d", "e" } },
        };
        var band = Band(unit, unit.Spec("ac-amps", [], state));
        Assert.Equal(p.Given("milliamps") / 1000, band.Value, 2e-6);
        p.Agrees("ohms", volts / band.Value, 0.005);
        var u = (volts / band.Low - volts / band.High) / Width;
        var independent = Math.Sqrt(Math.Pow(r * ur, 2) + Math.Pow(x * ux, 2)) / Math.Sqrt((r * r) + (x * x));
        Assert.Equal(independent, u, 0.01 * independent);
        Assert.True(Math.Abs(u - p.Expected("ohmsU")) > 0.015);
        var watts = Band(unit, unit.Spec("watts", [], state));
        // P = V²R/Z²: ln P moves by 1 − 2R²/Z² with ln R and by −2X²/Z² with ln X.
        var square = (r * r) + (x * x);
        var relative = Math.Sqrt(Math.Pow((1 - (2 * r * r / square)) * ur / r, 2) + Math.Pow(2 * x * x / square * ux / x, 2));
        Assert.Equal(relative, (watts.High - watts.Low) / Width / watts.Value, 0.02 * relative);
    }

    /// <summary>Two resistances in series share the spread of each; a divider's reading moves with their ratio only.</summary>
    [Fact]
    public void A_divider_takes_its_spread_from_the_ratio()
    {
        var (sigmaA, sigmaB) = (0.08, 0.03);
        var unit = new SheetDraft()
            .Element("resistor", "a", "top", "mid", new { ohms = 30, spread = new { ohms = sigmaA } })
            .Element("resistor", "b", "mid", "low", new { ohms = 10, spread = new { ohms = sigmaB } })
            .Unit();
        var source = new
        {
            from = "top",
            to = "low",
            volts = 10,
        };
        var band = Band(unit, unit.Spec("ac-volts", ["mid", "low"], new { source }));
        Assert.Equal(2.5, band.Value, 1e-9);
        // V = E/(1 + A/B): ln V moves by −A/(A+B) with ln A, by as much the other way with ln B.
        var relative = 0.75 * Math.Sqrt((sigmaA * sigmaA) + (sigmaB * sigmaB));
        Assert.Equal(relative, (band.High - band.Low) / Width / band.Value, 0.01 * relative);
        var series = Band(unit, unit.Spec("ohms", ["top", "low"]));
        Assert.Equal(Math.Sqrt(Math.Pow(30 * sigmaA, 2) + Math.Pow(10 * sigmaB, 2)), (series.High - series.Low) / Width, 0.02);
    }

    [Fact]
    public void A_sheet_without_spread_has_bands_of_no_width()
    {
        var unit = new SheetDraft().Element("resistor", "r", "a", "b", new { ohms = 10, spread = new { ohms = 0 } }).Unit();
        var band = Band(unit, unit.Spec("ohms", ["a", "b"]));
        Assert.Equal((10.0, 10.0), (Math.Round(band.Low, 9), Math.Round(band.High, 9)));
    }

    [Fact]
    public void Each_parameter_is_log_normal_about_its_nominal_value_with_the_usual_spread()
    {
        // The usual spreads are common practice, without a source; an element may set its own.
        var draft = new SheetDraft()
            .Core("core", "coil", 1000, 1)
            .Throttle("t")
            .Element(
                "winding",
                "coil",
                "a",
                "b",
                new
                {
                    core = "core",
                    turns = 100,
                    ohms = 5,
                    leakageHenries = 1e-3,
                    sliders = new[]
                    {
                        new
                        {
                            id = "s",
                            control = "t",
                            fromTurn = 0,
                            toTurn = 90,
                            to = "arm",
                            contactOhms = 0.1,
                        },
                    },
                }
            )
            .Wire("w", "b", "c", 1)
            .Element("joint", "j", "c", "d", new { ohms = 1 })
            .Element("breaker", "k", "d", "e", new { ohms = 1 })
            .Resistor("r", "e", "f", 1)
            .Element("insulation", "i", "f", "g", new { ohms = 1e8 })
            .Element(
                "rectifier",
                "q",
                "g",
                "h",
                new
                {
                    saturationAmps = 1e-3,
                    slopeVolts = 0.1,
                    seriesOhms = 0.1,
                    leakageOhms = 100,
                }
            )
            .Element("lamp", "l", "h", "a", new { volts = 6, amps = 0.1 })
            .Element("resistor", "own", "h", "a", new { ohms = 1, spread = new { ohms = 0.02 } });
        var sigma = draft.Unit().Model.Parameters.ToDictionary(p => p.Path, p => p.Sigma, StringComparer.Ordinal);
        var expected = new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["elements.coil.ohms"] = 0.08,
            ["elements.coil.turns"] = 0.006,
            ["elements.coil.leakageHenries"] = 0.2,
            ["elements.s.contactOhms"] = 0.4,
            ["elements.w.ohms"] = 0.25,
            ["elements.j.ohms"] = 0.25,
            ["elements.k.ohms"] = 0.25,
            ["elements.r.ohms"] = 0.08,
            ["elements.own.ohms"] = 0.02,
            ["elements.i.ohms"] = 0.7,
            ["elements.q.saturationAmps"] = 0.5,
            ["elements.q.seriesOhms"] = 0.3,
            ["elements.q.leakageOhms"] = 0.5,
            ["cores.core.lossOhms"] = 0.10,
            ["cores.core.magnetisingHenries"] = 0.12,
        };
        Assert.Equal(expected.OrderBy(e => e.Key, StringComparer.Ordinal), sigma.OrderBy(e => e.Key, StringComparer.Ordinal));
    }

    private static PredictedReading Band(BenchUnit unit, ReadingSpec spec) => Prediction.Run(unit.Model, [(spec, spec.State)], [])[0];
}
