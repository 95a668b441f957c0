using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Likelihoods;

/// <summary>
/// How a reading is noted wrongly: a decimal point, a prefix, a sign, or anything. Each of the former puts the value at one place, so
/// it speaks louder for a slip than one that lies anywhere. The chances are common practice, no source.
/// </summary>
internal sealed class WrongReadings
{
    /// <summary>Where a reading that is wrong altogether may lie [limits of the meter's error].</summary>
    internal const double ScaleWidth = 300;

    /// <summary>Of wrong readings, the share that may lie anywhere.</summary>
    internal const double Anywhere = 0.5;

    /// <summary>The others: what was noted is so many times what was meant, and their share.</summary>
    internal static readonly ImmutableArray<(SlipKind Kind, double Times, double Share)> Points =
    [
        (SlipKind.TimesTen, 10, 0.16),
        (SlipKind.Tenth, 0.1, 0.16),
        (SlipKind.TimesThousand, 1000, 0.03),
        (SlipKind.Thousandth, 0.001, 0.03),
        (SlipKind.Sign, -1, 0.03),
    ];

    private readonly double[] moves;
    private readonly double[] weights;
    private readonly double[] nearest;

    /// <param name="values">The readings that are numbers, with their meters.</param>
    /// <param name="chance">That a reading is wrong altogether.</param>
    public WrongReadings(IEnumerable<(double Value, MeterError Error)> values, double chance)
    {
        Chance = chance;
        LogAnywhere = Math.Log(chance * Anywhere / ScaleWidth);
        var (by, shares) = (new List<double>(), new List<double>());
        foreach (var (value, error) in values)
        foreach (var (_, times, share) in Points)
        {
            by.Add(error.ToScale(value / times) - error.ToScale(value));
            // The density of what is noted, from that of what was meant: dt/dt' on the meter's scale.
            shares.Add(share * Density(value, times, error));
        }
        (moves, weights) = ([.. by], [.. shares]);
        nearest = [.. by.Chunk(Points.Length).Select(m => m.Min(Math.Abs))];
    }

    /// <summary>That a reading is wrong altogether.</summary>
    public double Chance { get; }

    /// <summary>Log density of a wrong reading that lies anywhere.</summary>
    public double LogAnywhere { get; }

    /// <summary>False where a reading would lose seven nats and more by being wrong: that adds a thousandth.</summary>
    /// <param name="off">As for <see cref="LogDensity"/>; <paramref name="square"/> is half its square in deviations.</param>
    public bool IsWorthALook(int k, double off, double square) => square > -LogAnywhere - 7 || Math.Abs(off) > nearest[k] / 2;

    /// <summary>Log density of what was noted, given that it is wrong.</summary>
    /// <param name="k">Place among the numbers.</param>
    /// <param name="off">What was noted less what the others expect, on the meter's scale.</param>
    /// <param name="precision">Of that expectation.</param>
    public double LogDensity(int k, double off, double precision)
    {
        var sum = Anywhere / ScaleWidth;
        var top = Math.Exp(0.5 * (Math.Log(precision) - NormalLaw.Log2Pi));
        for (var n = 0; n < Points.Length; n++)
        {
            var at = off + moves[(k * Points.Length) + n];
            var q = at * at * precision;
            if (q < 60)
                sum += weights[(k * Points.Length) + n] * top * Math.Exp(-0.5 * q);
        }
        return Math.Log(Chance * sum);
    }

    /// <summary>
    /// Of a reading by itself, from its density if it is right. It may be wrong altogether; then it says nothing, and none says more
    /// than this lets it.
    /// </summary>
    public double LogOfOne(double right) => Math.Log(((1 - Chance) * right) + (Chance / ScaleWidth));

    /// <summary>By kind of <see cref="Points"/>, and last of anything: the share of the density.</summary>
    public double[] Shares(int k, double off, double precision)
    {
        var top = Math.Exp(0.5 * (Math.Log(precision) - NormalLaw.Log2Pi));
        double[] parts =
        [
            .. Points.Select(
                (_, n) =>
                {
                    var at = off + moves[(k * Points.Length) + n];
                    return weights[(k * Points.Length) + n] * top * Math.Exp(-0.5 * at * at * precision);
                }
            ),
            Anywhere / ScaleWidth,
        ];
        return parts;
    }

    private static double Density(double value, double times, MeterError error) =>
        Math.Min(1, error.LimitAt(value) / error.LimitAt(value / times) / Math.Abs(times));
}
