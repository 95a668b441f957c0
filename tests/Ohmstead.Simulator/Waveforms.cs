namespace Ohmstead.Simulator;

/// <summary>
/// Waveforms that ngspice wrote with wrdata, and their means over the last cycle. (The .meas command of ngspice 39
/// leaves out the step that straddles the start of its window: 1 % of a mean that is small beside the ripple.)
/// </summary>
internal sealed class Waveforms
{
    private readonly double[] time;
    private readonly double[][] columns;

    public Waveforms(string file, int wanted)
    {
        double[][] rows =
        [
            .. File.ReadLines(file).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Fields.Parse).ToArray()),
        ];
        if (rows.Length < 2 || rows[0].Length != wanted + 1)
            throw new SpiceFailure("the waveforms are incomplete");
        time = [.. rows.Select(row => row[0])];
        columns = [.. Enumerable.Range(1, wanted).Select(n => rows.Select(row => row[n]).ToArray())];
    }

    public double End => time[^1];

    public double Last(int column) => columns[column][^1];

    /// <summary>The greatest of a column over the last period.</summary>
    public double Most(int column, double period) => columns[column].Where((_, n) => time[n] >= time[^1] - period).Max();

    /// <summary>The least of a column over the last period.</summary>
    public double Least(int column, double period) => columns[column].Where((_, n) => time[n] >= time[^1] - period).Min();

    public double Mean(int column, double period) => Mean(columns[column], period);

    public double Rms(int column, double period) => Math.Sqrt(Mean([.. columns[column].Select(v => v * v)], period));

    public double MeanProduct(int one, int other, double period) => Mean([.. columns[one].Zip(columns[other], (a, b) => a * b)], period);

    /// <summary>By trapezia over the last period, the step that straddles its start cut linearly.</summary>
    private double Mean(double[] values, double period)
    {
        double start = time[^1] - period;
        double sum = 0;
        for (int n = time.Length - 1; n > 0 && time[n] > start; n--)
        {
            double step = time[n] - time[n - 1];
            double used = Math.Min(step, time[n] - start);
            double before = values[n] + (values[n - 1] - values[n]) * used / step;
            sum += used * (values[n] + before) / 2;
        }
        return sum / period;
    }
}
