using Ohmstead.Electrical.Reckoning.Deciding;

namespace Ohmstead.Perf.Experiments.Minutes;

/// <summary>
/// An invented shop whose minutes follow known laws: log-normal by step, its centre and spread away from what the quote believes at first,
/// and a unit that is slow in one step is slow in the next.
/// </summary>
internal sealed class MadeShop
{
    private const double Correlation = 0.4;
    private static readonly double[] UsualMinutes = [10, 25, 20, 25, 30, 50];

    private readonly Random random;
    private readonly double[] centres;
    private readonly double[] spreads;

    /// <param name="seed">Draws the shop's own laws, and its units after them.</param>
    public MadeShop(int seed)
    {
        random = new Random(seed);
        centres = [.. UsualMinutes.Select(m => Math.Log(m) + (0.4 * Gauss()))];
        spreads = [.. UsualMinutes.Select(_ => 0.2 + (0.4 * random.NextDouble()))];
    }

    /// <summary>The minutes of a next unit, by step.</summary>
    public double[] Unit()
    {
        var slow = Math.Sqrt(Correlation) * Gauss();
        return [.. centres.Select((c, s) => Math.Exp(c + (spreads[s] * (slow + (Math.Sqrt(1 - Correlation) * Gauss())))))];
    }

    /// <summary>The quote for a next unit after these.</summary>
    public static Quote Quote(IReadOnlyCollection<double[]> units, int draws) =>
        new(
            [
                .. UsualMinutes.Select(
                    (m, s) => new QuotedStep(FormattableString.Invariant($"step-{s}"), m, 0.5, 2, [.. units.Select(u => u[s])], 100)
                ),
            ],
            Correlation,
            [],
            50,
            [],
            null,
            null,
            draws,
            1
        );

    /// <summary>A standard normal number: twelve even ones added, apart from how the quote draws its own.</summary>
    private double Gauss()
    {
        var sum = -6.0;
        for (var n = 0; n < 12; n++)
            sum += random.NextDouble();
        return sum;
    }
}
