namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>Scratch of <see cref="OverRangeReadings"/>: slope and curvature of each reading's log chance.</summary>
internal sealed class OverRangeWork
{
    public double[] Slope { get; private set; } = [];

    public double[] Curvature { get; private set; } = [];

    public bool[] IsLeftOut { get; private set; } = [];

    public void Reset(int size)
    {
        if (Slope.Length < size)
            (Slope, Curvature, IsLeftOut) = (new double[size], new double[size], new bool[size]);
    }
}
