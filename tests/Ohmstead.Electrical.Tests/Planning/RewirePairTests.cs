using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.TwoWires;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>
/// Two cold wires in a row, read together and the first one alone by a meter of ± 0.1 Ω: the second is fitted beside the first, solved exactly,
/// and weighed by Bayes. Expected values are written out from docs/methods/rewire.md with covariances of the parts' own spread.
/// </summary>
public class RewirePairTests
{
    private const double Sigma = 0.14;

    private static readonly TypeSheet Row = new SheetDraft()
        .Element("wire", "w-1", "a", "b", new { ohms = 1, spread = new { ohms = Sigma } })
        .Element("wire", "w-2", "b", "c", new { ohms = 2, spread = new { ohms = Sigma } })
        .Reading("row", "ohms", ["a", "c"])
        .Reading("one", "ohms", ["a", "b"])
        .Sheet();

    private static readonly Mistake First = Cold("w-1", 3);
    private static readonly Mistake Second = Cold("w-2", 3.5, 5.5);

    /// <summary>Half the square distance and half the logarithm of the determinant of two readings, in limits.</summary>
    private static double LogLikelihood((double Row, double One) measured, (double Row, double One) shown)
    {
        // A part moves by its share of what it shows on the right wiring, at most by twice that; the row's two parts add up.
        var slope = (Math.Exp(0.1 * Sigma) - 1) / 0.1 / Floor;
        var (row, one) = (Math.Min(2, shown.Row / 3), Math.Min(2, shown.One / 1));
        var (rr, ro, oo) = (
            (row * row * slope * slope * (1 + 4)) + (1.0 / 3),
            row * one * slope * slope,
            (one * one * slope * slope) + (1.0 / 3)
        );
        var (x, y) = ((measured.Row - shown.Row) / Floor, (measured.One - shown.One) / Floor);
        (x, y) = (Math.Clamp(x, -7 * Math.Sqrt(rr), 7 * Math.Sqrt(rr)), Math.Clamp(y, -7 * Math.Sqrt(oo), 7 * Math.Sqrt(oo)));
        var determinant = (rr * oo) - (ro * ro);
        return -((((x * x * oo) - (2 * x * y * ro) + (y * y * rr)) / determinant) + Math.Log(determinant)) / 2;
    }

    private static double Odds(ImmutableArray<Mistake> mistakes, (double Row, double One) measured, params int[] set)
    {
        var table = Table(Row, [.. mistakes]);
        var all = new RewireWeights(table, [(0, measured.Row / Floor), (1, measured.One / Floor)], new double[mistakes.Length]).All();
        var found = all.Single(h => h.Mistakes.Order().SequenceEqual(set.Order()));
        return Math.Log(found.Probability / all.Single(h => h.Mistakes.Length == 0).Probability);
    }

    [Theory]
    [InlineData(5.2, 3.1)]
    [InlineData(4.6, 2.6)]
    public void One_mistake_is_weighed_by_both_readings(double row, double one)
    {
        var expected = Math.Log(0.25) + LogLikelihood((row, one), (5, 3)) - LogLikelihood((row, one), (3, 1));
        Assert.Equal(expected, Odds([First], (row, one), 0), 0.01);
    }

    /// <remarks>
    /// Beside the first at 3 Ω the second would have to show 7.5 − 3 = 4.5 Ω, the middle of its stretch: of its sizes, in logarithm, √(3.5·5.5). Of
    /// all of them the share √(2π/b) fits as well, b the square of the stretch of 20 limits in the row alone.
    /// </remarks>
    [Fact]
    public void A_second_mistake_is_fitted_beside_the_first_whichever_is_listed_first()
    {
        var measured = (7.5, 3.0);
        var size = Math.Sqrt(3.5 * 5.5);
        var slope = (Math.Exp(0.1 * Sigma) - 1) / 0.1 / Floor;
        var (rr, oo) = ((slope * slope * 5) + (1.0 / 3), (slope * slope) + (1.0 / 3));
        var bend = 20 * 20 * oo / ((rr * oo) - Math.Pow(slope, 4));
        var expected =
            (2 * Math.Log(0.25))
            + (0.5 * Math.Log(2 * Math.PI / bend))
            + LogLikelihood(measured, (3 + size, 3))
            - LogLikelihood(measured, (3, 1));
        Assert.Equal(expected, Odds([First, Second], measured, 0, 1), 0.02);
        Assert.Equal(expected, Odds([Second, First], measured, 0, 1), 0.02);
    }

    /// <summary>What both do to one wire is no pair of its own: a mistake stands with every other and never with itself.</summary>
    [Fact]
    public void Each_pair_stands_once()
    {
        var table = Table(Row, First, Second, Cold("w-1", 2), Cold("w-2", 9));
        var all = new RewireWeights(table, [(0, 30), (1, 10)], [14, 14, 14, 14]).All();
        var pairs = all.Where(h => h.Mistakes.Length == 2).Select(h => string.Join(' ', h.Mistakes.Order())).ToList();
        Assert.Equal(pairs.Distinct(), pairs);
        Assert.All(all, h => Assert.Equal(h.Mistakes.Distinct(), h.Mistakes));
        Assert.Equal(all.Count, all.Select(h => string.Join(' ', h.Mistakes.Order())).Distinct().Count());
    }
}
