using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Faults;

/// <summary>A reading's circuit laid out for every way round of the tapped windings that a set of faults asks for.</summary>
public sealed class FaultedCircuits
{
    private readonly UnitModel model;
    private readonly TypeSheets.ReadingSpec spec;
    private readonly TypeSheets.ReadingState state;
    private readonly ReadingCircuit usual;
    private readonly Dictionary<string, ReadingCircuit> reversed = new(StringComparer.Ordinal);
    private readonly Lock gate = new();

    /// <summary>Lays out the usual circuit.</summary>
    public FaultedCircuits(UnitModel model, TypeSheets.ReadingSpec spec, TypeSheets.ReadingState state)
    {
        (this.model, this.spec, this.state) = (model, spec, state);
        usual = CircuitBuilder.Build(model, spec, state, new bool[model.Sheet.Elements.Length]);
    }

    /// <summary>The circuit without exchanged ends.</summary>
    public ReadingCircuit Usual => usual;

    /// <summary>The circuit for a set of faults.</summary>
    public ReadingCircuit For(ReadOnlySpan<Fault> faults)
    {
        bool[]? flags = null;
        foreach (var f in faults)
            if (f.ReversesChain(model))
                (flags ??= new bool[model.Sheet.Elements.Length])[f.Mode.Target] = true;
        if (flags is null)
            return usual;
        var key = string.Concat(flags.Select(b => b ? '1' : '0'));
        lock (gate)
        {
            if (!reversed.TryGetValue(key, out var circuit))
                reversed[key] = circuit = CircuitBuilder.Build(model, spec, state, flags);
            return circuit;
        }
    }
}
