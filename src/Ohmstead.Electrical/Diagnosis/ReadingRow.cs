namespace Ohmstead.Electrical.Diagnosis;

/// <summary>What is known of one reading in one state, before anything is read: the sound unit and each fault alone.</summary>
/// <param name="slopes">By parameter: movement for one standard deviation.</param>
/// <param name="curves">By mode: displacement at the points of its size; null where it moves nothing.</param>
internal sealed class ReadingRow(double[] slopes, double[]?[] curves)
{
    /// <summary>The sound unit's reading on the meter's scale.</summary>
    public double Sound { get; set; }

    public double[] Slopes { get; } = slopes;

    /// <summary>Shift of the mean by curvature.</summary>
    public double Shift { get; set; }

    public double[]?[] Curves { get; } = curves;
}
