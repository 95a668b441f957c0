using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>A reading's circuit laid out for every way round of the tapped windings that a set of faults asks for.</summary>
public sealed class FaultedCircuits
{
    private readonly Layouts layouts;
    private readonly int place;

    /// <summary>Lays out the usual circuit.</summary>
    public FaultedCircuits(UnitModel model, ReadingSpec spec, ReadingState state)
        : this(new Layouts(model, [spec], state), 0) { }

    private FaultedCircuits(Layouts layouts, int place) => (this.layouts, this.place) = (layouts, place);

    /// <summary>Readings in one state with alternating current: one circuit for all, so that one solution has them all.</summary>
    internal static IEnumerable<FaultedCircuits> Together(UnitModel model, ImmutableArray<ReadingSpec> specs, ReadingState state)
    {
        var shared = new Layouts(model, specs, state);
        return specs.Select((_, place) => new FaultedCircuits(shared, place));
    }

    /// <summary>The circuit without exchanged ends.</summary>
    public ReadingCircuit Usual => layouts.Usual[place];

    /// <summary>The circuit for a set of faults.</summary>
    public ReadingCircuit For(ReadOnlySpan<Fault> faults) => layouts.For(faults)[place];

    /// <summary>The circuits of readings in one state, by reading.</summary>
    private sealed class Layouts(UnitModel model, ImmutableArray<ReadingSpec> specs, ReadingState state)
    {
        private readonly Dictionary<string, ImmutableArray<ReadingCircuit>> reversed = new(StringComparer.Ordinal);
        private readonly Lock gate = new();

        public ImmutableArray<ReadingCircuit> Usual { get; } =
            CircuitBuilder.Build(model, specs, state, new bool[model.Sheet.Elements.Length]);

        public ImmutableArray<ReadingCircuit> For(ReadOnlySpan<Fault> faults)
        {
            bool[]? flags = null;
            foreach (var f in faults)
                if (f.ReversesChain(model))
                    foreach (var n in f.ReversedChains(model))
                        (flags ??= new bool[model.Sheet.Elements.Length])[n] = true;
            if (flags is null)
                return Usual;
            var key = string.Concat(flags.Select(b => b ? '1' : '0'));
            lock (gate)
            {
                if (!reversed.TryGetValue(key, out var circuits))
                    reversed[key] = circuits = CircuitBuilder.Build(model, specs, state, flags);
                return circuits;
            }
        }
    }
}
