using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>
/// One way in which a bench or a sheet may differ from what is noted, as the variances that it adds to what the readings may show.
/// The matching bench adds nothing.
/// </summary>
/// <param name="About">What is wrong with it; null for the matching bench.</param>
/// <param name="Chance">Before any reading.</param>
/// <param name="Variances">By parameter: its variance over the sheet's.</param>
/// <param name="Commons">Factors that parameters have in common: by parameter, what one deviation of it is in the sheet's deviations.</param>
/// <param name="Shared">What readings have in common: by reading, what one deviation of it is on the meter's scale.</param>
/// <param name="ErrorVariance">Variance of the meter's error over the stated one.</param>
internal sealed record AssumedBench(
    DoubtAbout? About,
    double Chance,
    double[] Variances,
    double[][] Commons,
    double[][] Shared,
    double ErrorVariance
)
{
    /// <summary>A quantity that the meter shows within its stated error all the same; null for none.</summary>
    public Quantity? Sound { get; init; }

    /// <summary>Variance of the meter's error on a quantity over the stated one.</summary>
    public double ErrorVarianceOn(Quantity quantity) => quantity == Sound ? 1 : ErrorVariance;

    /// <summary>How a reading moves for one deviation of each parameter, each common factor and each thing that readings share.</summary>
    /// <param name="slopes">Readings × parameters, for one deviation of the sheet.</param>
    public double[] Movements(double[] slopes, int reading)
    {
        var count = Variances.Length;
        var own = slopes.AsSpan(reading * count, count);
        var all = new double[count + Commons.Length + Shared.Length];
        for (var p = 0; p < count; p++)
            all[p] = own[p] * Math.Sqrt(Variances[p]);
        for (var n = 0; n < Commons.Length; n++)
            all[count + n] = Readings.Vectors.Dot(own, Commons[n]);
        for (var n = 0; n < Shared.Length; n++)
            all[count + Commons.Length + n] = Shared[n][reading];
        return all;
    }

    /// <summary>Deviation of a parameter, all that moves it taken together [the sheet's deviations].</summary>
    public double DeviationOf(int parameter) => Math.Sqrt(Variances[parameter] + Commons.Sum(c => c[parameter] * c[parameter]));
}
