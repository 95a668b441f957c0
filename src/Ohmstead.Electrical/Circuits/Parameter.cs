namespace Ohmstead.Electrical.Circuits;

/// <summary>A quantity of a sheet that differs from unit to unit: log-normal about its nominal value.</summary>
/// <param name="Index">Index of the element, slider or core that it belongs to.</param>
/// <param name="Path">Where it stands in the sheet, such as <c>elements.primary.ohms</c>.</param>
/// <param name="Nominal">Median among sound units, in the quantity's unit.</param>
/// <param name="Sigma">Standard deviation of its logarithm.</param>
public sealed record Parameter(ParameterKind Kind, int Index, string Path, double Nominal, double Sigma)
{
    /// <summary>How much of the deviation is doubt about the kind's own value: 0 on a sheet whose values are known.</summary>
    public double KindSigma { get; init; }

    /// <summary>Standard deviation of its logarithm among units of the kind, without the doubt about the kind.</summary>
    public double UnitSigma => Math.Sqrt((Sigma * Sigma) - (KindSigma * KindSigma));
}

/// <summary>What a spread parameter is of.</summary>
public enum ParameterKind
{
    /// <summary>Resistance of a wire, joint, resistor, breaker, insulation path or winding.</summary>
    Ohms,

    /// <summary>Turns of a winding, its taps and sliders together.</summary>
    Turns,

    /// <summary>Leakage inductance of a winding.</summary>
    LeakageHenries,

    /// <summary>Contact resistance of a slider.</summary>
    ContactOhms,

    /// <summary>Saturation current of a junction.</summary>
    SaturationAmps,

    /// <summary>Series resistance of a rectifier.</summary>
    SeriesOhms,

    /// <summary>Leakage resistance of a rectifier.</summary>
    LeakageOhms,

    /// <summary>Capacitance of a capacitor.</summary>
    Farads,

    /// <summary>Loss resistance of a core.</summary>
    LossOhms,

    /// <summary>Magnetising current of a core, all points of its table together.</summary>
    Excitation,
}
