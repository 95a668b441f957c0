using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Circuits;

/// <summary>
/// The circuit of one reading: the unit's elements in one state of its controls, with what feeds and loads it, as branches
/// between numbered nodes, and the order in which its nodes are eliminated. Immutable; the numbers come from <see cref="UnitValues"/>.
/// </summary>
public sealed class ReadingCircuit
{
    private ReadingSpec spec = null!;
    private int place;

    internal UnitModel Model { get; init; } = null!;
    internal ReadingSpec Spec
    {
        get => spec;
        init => spec = value;
    }

    internal ReadingState State { get; init; } = null!;
    internal ImmutableArray<Branch> Branches { get; init; }
    internal ImmutableArray<LampPlace> Lamps { get; init; }
    internal ImmutableArray<JunctionPlace> Junctions { get; init; }

    /// <summary>The node that the source drives, or the first probe of an ohmmeter.</summary>
    internal int Drive { get; init; }

    /// <summary>The node against which the source drives.</summary>
    internal int Ground { get; init; }

    /// <summary>The probes of every reading that is taken in this state; −1 where the quantity is read at the source.</summary>
    internal ImmutableArray<(int A, int B)> Probes { get; init; } = [];

    /// <summary>Which of them this reading's are.</summary>
    internal int ProbePlace => place;

    /// <summary>The probes; −1 when the quantity is read at the source.</summary>
    internal (int A, int B) Probe => Probes[place];

    /// <summary>True for a reading with direct current.</summary>
    internal bool IsDirect { get; init; }

    /// <summary>True where impedances rise and fall with frequency, so that none is read off its neighbours.</summary>
    internal bool NeedsEveryHarmonic { get; init; }

    /// <summary>Copper resistance at the state's temperature relative to 20 °C.</summary>
    internal double CopperFactor { get; init; }

    /// <summary>By element: a winding with taps or sliders whose ends are exchanged in this circuit.</summary>
    internal bool[] ReversedChains { get; init; } = [];

    internal Elimination Elimination { get; init; } = null!;

    /// <summary>The windings that are in the circuit, by element.</summary>
    internal ImmutableArray<int> Windings { get; init; }

    /// <summary>The turns of a winding as the sheet gives them, to which taps and contacts refer.</summary>
    internal double NominalTurns(int element) => ((Winding)Model.Sheet.Elements[element]).Turns;

    /// <summary>Parts of windings whose two ends are strapped together: loops that only the core sees.</summary>
    internal ImmutableArray<Branch> Loops { get; init; } = [];

    /// <summary>The same circuit, as another of its readings reads it.</summary>
    internal ReadingCircuit ReadAs(ReadingSpec reading, int probePlace)
    {
        var other = (ReadingCircuit)MemberwiseClone();
        (other.spec, other.place) = (reading, probePlace);
        return other;
    }

    /// <summary>The reading.</summary>
    public ReadingSpec Reading => Spec;

    /// <summary>The conditions it is solved for.</summary>
    public ReadingState Conditions => State;
}
