using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Probability;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>
/// The band that the next sound unit's reading lies in: a normal law of unknown mean and spread, the type's generic band standing for
/// one unit of the mean and four of the spread, so that few units are not taken for all (docs/methods/proving.md).
/// </summary>
internal static class OwnBandFit
{
    private const int Fewest = 3;
    private const int FewestToDrop = 5;
    private const double At95 = 1.959964;

    /// <summary>The generic band counts as so many units of the spread.</summary>
    private const double WorthOfSpread = 4;

    /// <summary>Farther from the median than so many robust spreads is left out; 1.4826 makes a normal law's spread of the MAD.</summary>
    private const double MostSpreads = 3.5;

    private const double MostSigma = 6;

    public static OwnBand Of(OwnReading reading)
    {
        var isLog = reading.GenericLow > 0 && reading.History.All(y => y > 0) && reading.New is not <= 0;
        double To(double value) => isLog ? Math.Log(value) : value;
        double Back(double value) => isLog ? Math.Exp(value) : value;
        var (low, high) = (To(reading.GenericLow), To(reading.GenericHigh));
        var (middle, spread) = ((low + high) / 2, (high - low) / (2 * At95));
        var (kept, leftOut) = Kept(reading.History, To, spread);
        if (kept.Count < Fewest)
            return new(
                reading.Id,
                kept.Count,
                leftOut,
                Back(middle),
                reading.GenericLow,
                reading.GenericHigh,
                null,
                null,
                Said(reading, "too few of this kind")
            );
        var (centre, scale, degrees) = Predictive(kept, middle, spread);
        var reach = StudentLaw.At(0.05, degrees) * scale;
        var band = new OwnBand(
            reading.Id,
            kept.Count,
            leftOut,
            Back(centre),
            Back(centre - reach),
            Back(centre + reach),
            null,
            null,
            "not judged"
        );
        if (reading.New is not { } value)
            return band;
        var off = To(value) - centre;
        var chance = StudentLaw.Outside(off / scale, degrees);
        var sigma = Math.Sign(off) * Math.Min(MostSigma, Math.Abs(NormalFunction.At(chance / 2)));
        return band with { ChancePercent = 100 * chance, Sigma = sigma, Verdict = Said(reading, chance < 0.01 ? "unusual" : "usual") };
    }

    private static string Said(OwnReading reading, string word) =>
        reading.New is not { } value ? "not judged"
        : value < reading.GenericLow || value > reading.GenericHigh ? $"{word}, outside the kind's band"
        : word;

    private static (List<double> Kept, ImmutableArray<double> LeftOut) Kept(
        ImmutableArray<double> history,
        Func<double, double> to,
        double spread
    )
    {
        if (history.Length < FewestToDrop)
            return ([.. history.Select(to)], []);
        var median = Median(history.Select(to));
        var most = MostSpreads * Math.Max(1.4826 * Median(history.Select(y => Math.Abs(to(y) - median))), 0.1 * spread);
        bool IsFar(double y) => Math.Abs(to(y) - median) > most;
        return ([.. history.Where(y => !IsFar(y)).Select(to)], [.. history.Where(IsFar)]);
    }

    /// <summary>Student's t of the next unit: where, how wide, with how many degrees of freedom.</summary>
    private static (double Centre, double Scale, double Degrees) Predictive(List<double> kept, double middle, double spread)
    {
        var (n, mean) = (kept.Count, kept.Average());
        var (kappa, degrees) = (1.0 + n, WorthOfSpread + n);
        var centre = (middle + kept.Sum()) / kappa;
        var square =
            (
                (WorthOfSpread * spread * spread / 2)
                + kept.Sum(y => (y - mean) * (y - mean))
                + (n / kappa * (mean - middle) * (mean - middle))
            ) / degrees;
        return (centre, Math.Sqrt(square * (1 + (1 / kappa))), degrees);
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
