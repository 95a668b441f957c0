namespace Ohmstead.Electrical.Outlines;

/// <summary>A number with the doubt about it: log-normal about its median.</summary>
/// <param name="Value">Median, in the unit of what it is.</param>
/// <param name="Doubt">Relative standard deviation of the kind's value about it.</param>
public sealed record Figure(double Value, double Doubt, Origin Origin)
{
    /// <summary>What comes of it by a formula, with the doubt of the formula beside its own: only what is assumed stays so.</summary>
    public Figure Derived(double value, double doubt) =>
        new(value, double.Hypot(Doubt, doubt), Origin == Origin.Assumed ? Origin.Assumed : Origin.Derived);
}

/// <summary>Where a number comes from.</summary>
public enum Origin
{
    /// <summary>The outline says it.</summary>
    Stated,

    /// <summary>Readings took at least half of the variance that it had.</summary>
    Measured,

    /// <summary>A formula gives it from what is stated.</summary>
    Derived,

    /// <summary>Common practice, or a field that was left out.</summary>
    Assumed,
}

/// <summary>A number of a drafted sheet, and where it comes from.</summary>
/// <param name="Path">Where it stands, as of a fitted value: <c>elements.primary.ohms</c>.</param>
/// <param name="RelativeError">Relative standard deviation of the kind's value about it.</param>
/// <param name="From">The readings that it was taken from.</param>
public sealed record DraftedValue(
    string Path,
    double Value,
    double RelativeError,
    Origin Origin,
    System.Collections.Immutable.ImmutableArray<string> From
);
