using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>
/// A periodic steady state as another's start: the waves at the junctions, and where cores and lamps came to stand beside the phasor
/// solution. It changes how soon a solution is reached, and not which.
/// </summary>
internal sealed class PeriodicStart
{
    private ReadingCircuit? circuit;
    private int[] junctions = [];
    private bool[] directions = [];
    private int ports;

    /// <summary>Voltages of the junctions at [port·Samples + sample] [V].</summary>
    public double[] Volts { get; private set; } = [];

    /// <summary>Their currents [A].</summary>
    public double[] Amps { get; private set; } = [];

    /// <summary>By how much the voltages of cores and lamps are above the phasor solution's [ln V].</summary>
    public double[] Above { get; private set; } = [];

    /// <summary>By how much what was learned of the Jacobian differs from the phasor solution's, row by row.</summary>
    public double[] Learned { get; private set; } = [];

    /// <summary>Takes the place of what was kept before.</summary>
    public void Begin(ReadingCircuit ofCircuit, UnitValues values, ReadOnlySpan<int> active, int parts)
    {
        (circuit, ports) = (ofCircuit, active.Length);
        if (junctions.Length < ports)
            (junctions, directions) = (new int[ports], new bool[ports]);
        if (Volts.Length < ports * Harmonics.Samples)
            (Volts, Amps) = (new double[ports * Harmonics.Samples], new double[ports * Harmonics.Samples]);
        if (Above.Length < parts)
            (Above, Learned) = (new double[parts], new double[parts * parts]);
        for (var p = 0; p < ports; p++)
            (junctions[p], directions[p]) = (active[p], IsTurned(values, active[p]));
    }

    /// <summary>True where the same junctions conduct in the same direction.</summary>
    public bool Fits(ReadingCircuit other, UnitValues values, ReadOnlySpan<int> active)
    {
        if (!ReferenceEquals(other.Elimination, circuit?.Elimination) || active.Length != ports)
            return false;
        for (var p = 0; p < ports; p++)
            if (active[p] != junctions[p] || IsTurned(values, active[p]) != directions[p])
                return false;
        return true;
    }

    private bool IsTurned(UnitValues values, int junction) => values.Flag[circuit!.Junctions[junction].Element];
}
