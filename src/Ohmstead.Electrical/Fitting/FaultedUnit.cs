using System.Collections.Immutable;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Fitting;

/// <summary>The readings of a unit, with what is probably wrong with it: what stands once that is in place tells the kind's values.</summary>
internal sealed record FaultedUnit(UnitReadings Readings)
{
    /// <summary>The faults taken as there. A size is where it probably is, and left free about that.</summary>
    public ImmutableArray<Fault> Faults { get; init; } = [];

    /// <summary>Faults that may be there or not: the readings that they move are believed the less.</summary>
    public ImmutableArray<(Fault Fault, double Probability)> Doubtful { get; init; } = [];

    /// <summary>Readings, by id, that nothing explains.</summary>
    public ImmutableHashSet<string> SetAside { get; init; } = [];
}
