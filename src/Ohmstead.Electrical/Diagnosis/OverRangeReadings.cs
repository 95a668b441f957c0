using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// The readings that showed OL. Each is one yes or no: the path is above the meter's range, decided before the meter's error.
/// Its chance is a probit of the predicted value against that limit, on the logarithmic end of the meter's scale.
/// </summary>
internal sealed class OverRangeReadings
{
    /// <summary>
    /// Deviation of the limit [ln Ω]. What a break measures is a convention of the model, 10 MΩ, half of the ohmmeter's range; in
    /// a real unit it may be anything. With this a single break shows OL once in twelve times, so that it is found.
    /// </summary>
    private const double LimitDeviation = 0.5;

    /// <summary>
    /// Cost of an OL that nothing explains, for each e-fold below the limit [nat]: too little to count as evidence, enough to tell
    /// a search which faults lift the reading.
    /// </summary>
    private const double CostOfDistance = 0.1;

    private readonly int[] places;
    private readonly double[] limits;
    private readonly double[] widths;
    private readonly double logWrong;
    private readonly int parameters;

    /// <param name="places">The readings that showed OL.</param>
    /// <param name="logWrong">Log chance that a reading is wrong altogether and shows just this.</param>
    public OverRangeReadings(ReadingSet set, IEnumerable<int> places, double logWrong)
    {
        (this.places, this.logWrong, parameters) = ([.. places], logWrong, set.Model.Parameters.Length);
        limits = [.. this.places.Select(set.OverRangeOnScale)];
        widths =
        [
            .. this.places.Select(
                (r, k) =>
                    limits[k] - set.Errors[r].ToScale(Math.Exp(-LimitDeviation) * set.Errors[r].FromScale(limits[k]))
            ),
        ];
    }

    public ReadOnlySpan<int> Places => places;

    /// <summary>Log chance of all of them; what each one pulls is left in <paramref name="work"/>.</summary>
    public double LogChance(ReadOnlySpan<double> predicted, Spread spread, OverRangeWork work)
    {
        work.Reset(places.Length);
        var log = 0.0;
        for (var k = 0; k < places.Length; k++)
        {
            var row = spread.Slopes.AsSpan(places[k] * parameters, parameters);
            var sigma = Math.Sqrt(Vectors.Dot(row, row) + (widths[k] * widths[k]));
            var x = (predicted[places[k]] + spread.Shift[places[k]] - limits[k]) / sigma;
            var above = NormalLaw.Below(x);
            var folds = Math.Max(0, limits[k] - predicted[places[k]]) * LimitDeviation / widths[k];
            var wrong = Math.Exp(logWrong - (CostOfDistance * folds));
            log += Math.Log(above + wrong);
            var right = above / (above + wrong);
            // d ln Φ(x)/dx = φ/Φ = λ, and −d² = λ·(λ + x); as far as the reading is not taken as wrong.
            var ratio = above > 1e-300 ? Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI) / above : 0;
            (work.Slope[k], work.Curvature[k], work.IsLeftOut[k]) = (
                right * ratio / sigma,
                right * ratio * (ratio + x) / (sigma * sigma),
                right < 0.5
            );
        }
        return log;
    }

    /// <summary>True when a displacement lifts the reading to where OL is no surprise.</summary>
    public bool IsLifted(int place, double predicted)
    {
        var k = Array.IndexOf(places, place);
        return predicted > limits[k] - (2 * widths[k]);
    }
}

/// <summary>Scratch of <see cref="OverRangeReadings.LogChance"/>: slope and curvature of each reading's log chance.</summary>
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
