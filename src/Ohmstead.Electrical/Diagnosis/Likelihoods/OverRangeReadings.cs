using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>
/// The readings that showed OL. Each is one yes or no: the path is above the meter's range, decided before the meter's error.
/// Its chance is a probit of the predicted value against that limit, on the logarithmic end of the meter's scale.
/// </summary>
internal sealed class OverRangeReadings
{
    /// <summary>
    /// Chance that the breaks of this unit are wider than the model has them. A break of 10 MΩ, half of an ohmmeter's range, is a
    /// convention; in a real unit it may be anything. It is one chance for all readings, as one break may stand behind them all.
    /// </summary>
    private const double WideBreaks = 1.0 / 12;

    /// <summary>Factor of a wide break's resistance over the model's, at the middle, and its deviation [ln Ω].</summary>
    private const double WideFactor = 4;
    private const double WideDeviation = 0.3;

    /// <summary>Deviation of the limit itself [ln Ω]: the meter's own.</summary>
    private const double LimitDeviation = 0.01;

    /// <summary>
    /// Cost of an OL that nothing explains, for each e-fold below the limit [nat]: too little to count as evidence, enough to tell
    /// a search which faults lift the reading.
    /// </summary>
    private const double CostOfDistance = 0.1;

    private readonly int[] places;
    private readonly double[] limits;
    private readonly double[] folds;
    private readonly bool[] canBeWide;
    private readonly double logWrong;
    private readonly AssumedBench bench;

    /// <param name="places">The readings that showed OL.</param>
    /// <param name="logWrong">Log chance that a reading is wrong altogether and shows just this.</param>
    public OverRangeReadings(ReadingSet set, IEnumerable<int> places, double logWrong, AssumedBench bench)
    {
        (this.places, this.logWrong, this.bench) = ([.. places], logWrong, bench);
        limits = [.. this.places.Select(set.OverRangeOnScale)];
        folds = [.. this.places.Select((r, k) => limits[k] - set.Errors[r].ToScale(set.Errors[r].FromScale(limits[k]) / Math.E))];
        canBeWide = [.. this.places.Select(r => set.SpecOf(r).Quantity == Quantity.Ohms)];
    }

    public ReadOnlySpan<int> Places => places;

    /// <summary>Log chance of all of them; what each one pulls is left in <paramref name="work"/>.</summary>
    public double LogChance(ReadOnlySpan<double> predicted, Spread spread, OverRangeWork work)
    {
        work.Reset(places.Length);
        if (places.Length == 0)
            return 0;
        var usual = Math.Log(1 - WideBreaks) + LogChance(predicted, spread, work, false);
        var wide = Math.Log(WideBreaks) + LogChance(predicted, spread, work, true);
        if (wide < usual)
            LogChance(predicted, spread, work, false);
        return Vectors.LogSum([usual, wide]);
    }

    private double LogChance(ReadOnlySpan<double> predicted, Spread spread, OverRangeWork work, bool isWide)
    {
        var log = 0.0;
        for (var k = 0; k < places.Length; k++)
        {
            var isWider = isWide && canBeWide[k];
            var at = predicted[places[k]] + spread.Shift[places[k]] + (isWider ? Math.Log(WideFactor) * folds[k] : 0);
            var row = bench.Movements(spread.Slopes, places[k]);
            var deviation = (isWider ? WideDeviation : LimitDeviation) * folds[k];
            var sigma = Math.Sqrt(Vectors.Dot(row, row) + (deviation * deviation));
            log += Weigh(k, (at - limits[k]) / sigma, sigma, predicted[places[k]], work);
        }
        return log;
    }

    private double Weigh(int k, double x, double sigma, double predicted, OverRangeWork work)
    {
        var above = NormalLaw.Below(x);
        var wrong = Math.Exp(logWrong - (CostOfDistance * Math.Max(0, limits[k] - predicted) / folds[k]));
        var right = above / (above + wrong);
        // d ln Φ(x)/dx = φ/Φ = λ, and −d² = λ·(λ + x); as far as the reading is not taken as wrong.
        var ratio = above > 1e-300 ? NormalLaw.Density(x) / above : 0;
        work.Slope[k] = right * ratio / sigma;
        work.Curvature[k] = right * ratio * (ratio + x) / (sigma * sigma);
        work.IsLeftOut[k] = right < 0.5;
        return Math.Log(above + wrong);
    }

    /// <summary>Log chance of one of them by itself, at a prediction of some variance.</summary>
    public double LogChanceOf(int place, double centre, double variance)
    {
        var k = Array.IndexOf(places, place);
        double Above(double at, double deviation) =>
            NormalLaw.Below((at - limits[k]) / Math.Sqrt(variance + (deviation * deviation * folds[k] * folds[k])));
        var usual = Above(centre, LimitDeviation);
        var wide = canBeWide[k] ? Above(centre + (Math.Log(WideFactor) * folds[k]), WideDeviation) : usual;
        return Math.Log(((1 - WideBreaks) * usual) + (WideBreaks * wide) + Math.Exp(logWrong));
    }

    /// <summary>True when a prediction is so high that OL may come of it, with wide breaks.</summary>
    public bool IsLifted(int place, double predicted)
    {
        var k = Array.IndexOf(places, place);
        return predicted > limits[k] - (folds[k] * (Math.Log(WideFactor) + (2 * WideDeviation)));
    }
}
