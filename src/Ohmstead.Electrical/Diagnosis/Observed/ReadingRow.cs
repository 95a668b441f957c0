namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>
/// What is known of one reading in one state, before anything is read: the sound unit and each fault alone. It is filled piece
/// by piece, by one diagnosis at a time.
/// </summary>
internal sealed class ReadingRow(int parameters, int modes)
{
    /// <summary>The sound unit's reading on the meter's scale; not a number until it is known.</summary>
    public double Sound { get; set; } = double.NaN;

    /// <summary>By parameter: movement for one standard deviation.</summary>
    public double[] Slopes { get; } = new double[parameters];

    /// <summary>Shift of the mean by curvature; not a number until it and the slopes are known.</summary>
    public double Shift { get; set; } = double.NaN;

    /// <summary>By mode: displacement at the points of its size; null where it moves nothing, or is not known.</summary>
    public double[]?[] Curves { get; } = new double[modes][];

    /// <summary>By mode: true when its curve is known.</summary>
    public bool[] IsKnown { get; } = new bool[modes];

    /// <summary>True when nothing is left to work out.</summary>
    public bool IsWhole => !double.IsNaN(Sound) && !double.IsNaN(Shift) && !IsKnown.Contains(false);

    /// <summary>The row as if some modes moved nothing.</summary>
    public ReadingRow Without(IEnumerable<int> cut)
    {
        var row = new ReadingRow(Slopes.Length, Curves.Length) { Sound = Sound, Shift = Shift };
        Slopes.CopyTo(row.Slopes, 0);
        Curves.CopyTo(row.Curves, 0);
        foreach (var m in cut)
            row.Curves[m] = null;
        return row;
    }
}
