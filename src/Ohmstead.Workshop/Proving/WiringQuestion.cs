using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Proving;

/// <summary>All that a wiring check is weighed from: equal questions have the same answer.</summary>
/// <param name="Circuit">The unit as it is planned.</param>
/// <param name="Readings">What was read since a wire was last moved.</param>
/// <param name="WrongEnds">Ends recorded on other terminals than planned.</param>
public sealed record WiringQuestion(CircuitKey Circuit, UnitReadings Readings, RewireChances Chances, ImmutableArray<WrongEnd> WrongEnds)
{
    /// <summary>The answer.</summary>
    /// <param name="planned">The sheet of the unit as it is planned.</param>
    /// <param name="progress">Told the share done [0..1], from any thread.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public RewireResult Answer(TypeSheet planned, Action<double>? progress = null, CancellationToken cancellation = default) =>
        RewireCheck.Run(planned, Readings, Chances, [.. WrongEnds.Select(w => w.AsSeen)], progress, cancellation);

    /// <inheritdoc/>
    public bool Equals(WiringQuestion? other) =>
        other is not null
        && Circuit.Equals(other.Circuit)
        && Readings.Equals(other.Readings)
        && Chances == other.Chances
        && WrongEnds.SequenceEqual(other.WrongEnds);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Circuit, Readings, Chances, WrongEnds.Length);
}
