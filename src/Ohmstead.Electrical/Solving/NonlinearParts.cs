using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Solving;

/// <summary>The laws of tungsten lamps and magnetising currents as admittances that depend on a voltage.</summary>
internal static class NonlinearParts
{
    /// <summary>
    /// Conductance of a tungsten lamp [S] at a voltage [V RMS] and its logarithmic slope d ln G / d ln V.
    /// I = amps·(V/volts)^0.55 (key lamp-rerating), but never less than a tenth of the rated resistance.
    /// </summary>
    public static (double Siemens, double Slope) Lamp(in LampPlace lamp, double acrossVolts)
    {
        var rated = lamp.Amps / lamp.Volts;
        var ratio = Math.Max(acrossVolts, 1e-12) / lamp.Volts;
        var siemens = rated * Math.Pow(ratio, -0.45);
        return siemens < 10 * rated ? (siemens, -0.45) : (10 * rated, 0);
    }

    /// <summary>
    /// Magnetising susceptance I/V [S] of a core at an induced voltage of its reference winding [V RMS] and its logarithmic
    /// slope d ln(I/V) / d ln V.
    /// </summary>
    public static (double Siemens, double Slope) Magnetising(Core core, double factor, double omegaRadPerSecond, double inducedVolts)
    {
        if (core.MagnetisingHenries > 0)
            return (1 / (omegaRadPerSecond * core.MagnetisingHenries * factor), 0);
        var points = core.Excitation;
        var n = 1;
        while (n < points.Length - 1 && inducedVolts > points[n].Volts)
            n++;
        var (v0, i0) = points[n - 1];
        var (v1, i1) = points[n];
        var rise = (i1 - i0) / (v1 - v0);
        if (n == 1)
            return (factor * rise, 0);
        var amps = i0 + (rise * (inducedVolts - v0));
        return (factor * amps / inducedVolts, (rise * inducedVolts / amps) - 1);
    }
}
