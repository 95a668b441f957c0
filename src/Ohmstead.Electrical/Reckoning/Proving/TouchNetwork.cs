using System.Collections.Immutable;
using System.Numerics;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// The weighted network that stands for a person (key iec-60990; 1500 Ω from memory): 1500 Ω with 0.22 µF across it, in series with 500 Ω;
/// across the 500 Ω, 10 kΩ and 0.022 µF, and U2 is read on that capacitor.
/// </summary>
public static class TouchNetwork
{
    private const double SkinOhms = 1500;
    private const double SkinFarads = 0.22e-6;
    private const double BodyOhms = 500;
    private const double FilterOhms = 10e3;
    private const double FilterFarads = 0.022e-6;

    /// <summary>Where the skin’s capacitor begins to pass more than its resistor [Hz].</summary>
    public static double SkinHertz => 1 / (2 * Math.PI * SkinOhms * SkinFarads);

    /// <summary>Where the filter has taken off 3 dB [Hz].</summary>
    public static double FilterHertz => 1 / (2 * Math.PI * FilterOhms * FilterFarads);

    /// <summary>Ohms of the whole to a current, the filter’s own left out (below 5 %) [Ω].</summary>
    public static double Ohms(double hertz) => (BodyOhms + (SkinOhms / new Complex(1, hertz / SkinHertz))).Magnitude;

    /// <summary>U2 over U1: what the filter leaves of the volts across the 500 Ω.</summary>
    public static double FilterShare(double hertz) => 1 / new Complex(1, hertz / FilterHertz).Magnitude;

    /// <summary>To build one, for a person.</summary>
    public const string Parts =
        "To build it: 1.5 kΩ with 0.22 µF across it, then 500 Ω to ground. Across the 500 Ω, 10 kΩ and 0.022 µF in series. Read the volts on the 0.022 µF.";

    /// <summary>Lines of more than this get the capacitors for 240 V [V].</summary>
    private const double HighLine = 150;

    /// <summary>
    /// What the parts must stand where something joins the unit to the line: 120² V²/1500 Ω are 9.6 W. Of a higher line they would be 35 W
    /// and more, which no such resistor bears for long.
    /// </summary>
    public static ImmutableArray<string> Ratings(double supplyVolts) =>
        [
            supplyVolts > HighLine
                ? "Use resistors of 10 W and capacitors of 500 V AC."
                : "Use resistors of 10 W and capacitors of 250 V AC.",
            "Look at them after a high reading.",
            .. supplyVolts > HighLine
                ?
                [
                    FormattableString.Invariant(
                        $"A joint to the line puts {supplyVolts * supplyVolts / SkinOhms:0} W on 1.5 kΩ: on a high reading, plug out at once."
                    ),
                ]
                : ImmutableArray<string>.Empty,
        ];
}
