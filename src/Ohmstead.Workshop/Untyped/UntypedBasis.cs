using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Untyped;

/// <summary>All that the sheet of a unit without a type is made from: units with equal ones have the same sheet.</summary>
/// <param name="Plate">What its plate says.</param>
/// <param name="Terminals">The terminals named on the way.</param>
/// <param name="Wires">The wires whose joints were recorded.</param>
/// <param name="Off">What came off, in this order: its id, and what it was called.</param>
public sealed record UntypedBasis(
    PlateRead Plate,
    ImmutableArray<TerminalNamed> Terminals,
    ImmutableArray<SeenWire> Wires,
    ImmutableArray<(string Step, string Title)> Off
)
{
    /// <summary>The basis of a unit's sheet.</summary>
    public static UntypedBasis Of(BenchUnit unit) =>
        new(
            PlateRule.PlateOf(unit),
            UntypedSheet.Terminals(unit),
            SeenWire.All(unit),
            [
                .. unit.All<TakenOff>()
                    .Select(o => (o.Fact.Step, o.Fact.Title ?? "a step without a name"))
                    .DistinctBy(o => o.Step, StringComparer.Ordinal),
            ]
        );

    /// <summary>The posts among the terminals.</summary>
    public ImmutableArray<TerminalNamed> Posts => [.. Terminals.Where(t => t.IsPost)];

    /// <inheritdoc/>
    public bool Equals(UntypedBasis? other) =>
        other is not null
        && Plate == other.Plate
        && Terminals.SequenceEqual(other.Terminals)
        && Wires.SequenceEqual(other.Wires)
        && Off.SequenceEqual(other.Off);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Plate, Terminals.Length, Wires.Length, Off.Length);
}
