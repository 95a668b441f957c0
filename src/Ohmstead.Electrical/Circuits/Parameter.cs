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
