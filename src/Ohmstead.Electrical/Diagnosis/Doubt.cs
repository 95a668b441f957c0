using System.Collections.Immutable;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Something wrong with the bench or the sheet rather than with a part.</summary>
/// <param name="About">What is doubted.</param>
/// <param name="Probability">[0.5..1]; below a half nothing is said.</param>
/// <param name="Value">The figure, in the unit that <see cref="DoubtAbout"/> names.</param>
/// <param name="Readings">Readings that it concerns, those that say most of it first.</param>
/// <param name="Parameters">Of a doubt about the unit: what lies off, as <c>main.ohms</c>, the farthest first.</param>
public sealed record Doubt(
    DoubtAbout About,
    double Probability,
    double Value,
    ImmutableArray<string> Readings,
    ImmutableArray<string> Parameters
);

/// <summary>What can be wrong with a bench, and the unit of its figure.</summary>
public enum DoubtAbout
{
    /// <summary>The line stood at this, not as noted [V].</summary>
    Line,

    /// <summary>This much resistance of the test leads was not taken off [Ω].</summary>
    Leads,

    /// <summary>The meter errs by about this many of its stated limits.</summary>
    Meter,

    /// <summary>Another batch or make: figures of the whole type lie off, the worst by this many of its deviations.</summary>
    Unit,

    /// <summary>Core or winding take this much more than in a sound unit, and no listed fault explains it [W].</summary>
    Internal,

    /// <summary>The readings speak against this sheet by this much [nat]: perhaps another type.</summary>
    Kind,
}
