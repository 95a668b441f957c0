using System.Collections.Concurrent;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// Readings in which a rectifier conducts, as they were solved: a search comes back to the same unit, and each wave costs as much as ten
/// readings without one. What is found here is what solving would give, to the last digit. Shared by threads; also by searches on sheets
/// that differ in nothing but spreads, with the same readings in the same order.
/// </summary>
internal sealed class SolvedWaves
{
    private readonly ConcurrentDictionary<(ulong, ulong), Solution> known = new();

    /// <summary>What stands for a reading of a unit: 128 bits of all its numbers, so that no two units that are ever asked for share one.</summary>
    /// <param name="circuit">As its faults lay it out; they change nothing else but numbers.</param>
    public static (ulong, ulong) KeyOf(int reading, ReadingCircuit circuit, UnitValues values)
    {
        var key = new WaveKey();
        key.Add((ulong)reading);
        foreach (var isReversed in circuit.ReversedChains)
            key.Add(isReversed ? 1UL : 2UL);
        values.AddTo(ref key);
        return key.Ends;
    }

    /// <summary>A solution that was kept; null for none.</summary>
    public Solution? Find((ulong, ulong) key) => known.TryGetValue(key, out var solved) ? solved : null;

    /// <summary>Keeps a solution.</summary>
    public void Keep((ulong, ulong) key, Solution solved) => known[key] = solved;
}
