namespace Ohmstead.Electrical.Diagnosis;

/// <summary>What is known of one reading in one state, before anything is read: the sound unit and each fault alone.</summary>
/// <param name="Sound">The sound unit's reading on the meter's scale.</param>
/// <param name="Slopes">By parameter: movement for one standard deviation.</param>
/// <param name="Shift">Shift of the mean by curvature.</param>
/// <param name="Curves">By mode: displacement at the points of its size; null where it moves nothing.</param>
internal sealed record ReadingRow(double Sound, double[] Slopes, double Shift, double[]?[] Curves);
