using Ohmstead.Electrical.Circuits;

namespace Ohmstead.Electrical.Solving;

/// <summary>The junctions of a circuit that conduct: those whose peak voltage exceeds a twentieth of their slope voltage.</summary>
internal sealed class ConductingJunctions
{
    private const double LeastShare = 0.05;

    private int[] numbers = [];
    private bool[] conducts = [];
    private ReadingCircuit circuit = null!;
    private UnitValues values = null!;

    public ConductingJunctions() => IsLinear = junction => !conducts[junction];

    public int Count { get; private set; }

    /// <summary>Their numbers in the circuit; the place is that of the port.</summary>
    public ReadOnlySpan<int> Numbers => numbers.AsSpan(0, Count);

    /// <summary>By junction of the circuit: true where it does not conduct.</summary>
    public Func<int, bool> IsLinear { get; }

    /// <summary>Finds them by the phasor solution.</summary>
    public void Find(ReadingCircuit forCircuit, UnitValues withValues, PhasorSolver phasor)
    {
        (circuit, values) = (forCircuit, withValues);
        var count = circuit.Junctions.Length;
        if (numbers.Length < count)
            (numbers, conducts) = (new int[count], new bool[count]);
        Count = 0;
        var rows = circuit.Elimination.Rows;
        for (var n = 0; n < count; n++)
        {
            var j = circuit.Junctions[n];
            conducts[n] = false;
            Add(n, PhasorSolver.Between(phasor.Unknowns, rows[j.A], rows[j.B], phasor.SourceVolts).Magnitude * Math.Sqrt(2));
        }
    }

    /// <summary>Adds those that the others' currents wake.</summary>
    /// <param name="squares">By junction: the square of its voltage, all harmonics added up [V²].</param>
    /// <returns>True where there are any.</returns>
    public bool Wake(ReadOnlySpan<double> squares)
    {
        var before = Count;
        // Where mean and harmonics add up this is more than the peak; a junction too many costs only time.
        for (var n = 0; n < circuit.Junctions.Length; n++)
            if (!conducts[n])
                Add(n, Math.Sqrt(2 * squares[n]));
        return Count > before;
    }

    private void Add(int junction, double peakVolts)
    {
        if (peakVolts > LeastShare * circuit.Junctions[junction].SlopeVolts)
            (conducts[junction], numbers[Count++]) = (true, junction);
    }

    /// <summary>The port of an element's junction; −1 where it does not conduct.</summary>
    public int PortOf(int element)
    {
        for (var p = 0; p < Count; p++)
            if (circuit.Junctions[numbers[p]].Element == element)
                return p;
        return -1;
    }

    /// <summary>Rows of a port, in the direction in which it conducts.</summary>
    public (int A, int B) RowsOf(int port)
    {
        var j = circuit.Junctions[numbers[port]];
        var rows = circuit.Elimination.Rows;
        return values.Flag[j.Element] ? (rows[j.B], rows[j.A]) : (rows[j.A], rows[j.B]);
    }
}
