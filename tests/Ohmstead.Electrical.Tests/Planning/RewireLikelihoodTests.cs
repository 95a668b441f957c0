using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.TwoWires;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>What a rewire's readings show, how they vary and how probable that makes each set of mistakes, in closed form.</summary>
public class RewireLikelihoodTests
{
    /// <summary>Probability of a set against that of the right wiring.</summary>
    private static double Odds(MistakeTable table, (int, double)[] ohms, int[] set, double[]? eye = null)
    {
        var all = new RewireWeights(
            table,
            [.. ohms.Select(o => (o.Item1, o.Item2 / Floor))],
            eye ?? new double[table.Mistakes.Length]
        ).All();
        Assert.Equal(1, all.Sum(h => h.Probability), 1e-3);
        Assert.Equal(all.Select(h => h.Probability).OrderDescending(), all.Select(h => h.Probability));
        return all.Single(h => h.Mistakes.SequenceEqual(set)).Probability / all.Single(h => h.Mistakes.Length == 0).Probability;
    }

    [Fact]
    public void The_scale_is_ohms_in_limits_and_above_twenty_kilohms_all_is_open()
    {
        var table = Table(Sheet(0), Cold("w-1", 3), new("off:w-2", 2, [1e9]));
        Assert.Equal([10.0, 20.0], table.Right.Select(x => Math.Round(x, 6)));
        Assert.Equal([30.0, 20.0], table.Wrong[0][0].Select(x => Math.Round(x, 6)));
        Assert.Equal([10.0, 20e3 / Floor], table.Wrong[1][0].Select(x => Math.Round(x, 6)));
        Assert.Equal(20e3 / Floor, table.Cut(0, double.PositiveInfinity), 6);
        Assert.Equal([30.0, 50.0], table.Shown([(Cold("w-1", 3), 3), (Cold("w-2", 5), 5)]).Select(x => Math.Round(x, 6)));
    }

    /// <summary>An insulation tester is cut at its own range of a giga-ohm, and volts are not cut.</summary>
    [Fact]
    public void Other_meters_have_their_own_range()
    {
        var sheet = new SheetDraft()
            .Element("insulation", "i", "a", "b", new { ohms = 1e8 })
            .Resistor("r", "a", "c", 10)
            .Reading("i", "insulation-ohms", ["a", "b"])
            .Reading(
                "v",
                "ac-volts",
                ["a", "c"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "c",
                        volts = 30,
                    },
                }
            )
            .Reading(
                "mains",
                "ac-volts",
                ["a", "c"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "c",
                        volts = 31,
                    },
                }
            )
            .Sheet();
        var table = new MistakeTable(sheet, [], Taken(sheet));
        Assert.Equal(["i", "v"], Enumerable.Range(0, table.Set.Count).Select(r => table.SpecOf(r).Id));
        Assert.Equal(Meter.Usual.For(Quantity.InsulationOhms).ToScale(1e9), table.Cut(0, double.PositiveInfinity), 6);
        // A thousand limits of volts are no end; what is no number any more is held at that of no path at all.
        Assert.Equal(1000, table.Cut(1, 1000));
        Assert.Equal(Meter.Usual.For(Quantity.AcVolts).ToScale(1e18), table.Cut(1, double.PositiveInfinity));
    }

    /// <summary>What varies is a share of the value; of more than twice the value no more than twice as much varies.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(1.3, 1.3)]
    [InlineData(0.5, 0.5)]
    [InlineData(2.5, 2)]
    public void A_reading_varies_by_its_part_and_by_the_meter(double shown, double share)
    {
        var table = Table(Sheet(0.14));
        var law = table.Law([0, 1], [shown / Floor, 2 / Floor]);
        Assert.Equal(Variance(1, 0.14, share), law.Covariance[0], 1e-3);
        Assert.Equal(Variance(2, 0.14), law.Covariance[3], 1e-3);
        Assert.Equal(0, law.Covariance[1], 1e-6);
        Assert.Equal(law.Covariance[1], law.Covariance[2]);
    }

    /// <summary>The smaller of a normal law of variance 1/3 and of the meter's own, even within its limit and a thousandth beyond [1/limit].</summary>
    private static double Density(double limits) =>
        Math.Min(Math.Exp(-limits * limits * 3 / 2) / Math.Sqrt(2 * Math.PI / 3), Math.Abs(limits) < 1 ? 0.5 : 1e-3);

    /// <summary>Where no part varies a value beyond the meter's limit is a slip. The wrong wire is 1.1 limits away.</summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(1.05)]
    [InlineData(0.95)]
    [InlineData(1.16)]
    [InlineData(1.3)]
    public void Where_nothing_varies_the_meters_own_law_counts(double ohms)
    {
        var odds = 0.25 * Density((ohms - 1.11) / Floor) / Density((ohms - 1) / Floor);
        Assert.Equal(odds, Odds(Table(Sheet(0), Cold("w-1", 1.11)), [(0, ohms)], [0]), odds * 1e-3);
    }

    /// <remarks>
    /// A wire that varies by little blurs the meter's limit: the share of (off − 1 … off + 1) under a normal law of that spread, halved. From 0.3
    /// limits of spread on the normal law of both together stands alone. A wrong wire of 1.11 Ω varies by 1.11 times as much.
    /// </remarks>
    [Theory]
    [InlineData(0.02, 1.13)]
    [InlineData(0.02, 0.96)]
    [InlineData(0.026, 1.15)]
    [InlineData(0.028, 1.14)]
    [InlineData(0.031, 1.14)]
    public void A_little_spread_blurs_the_meters_limit(double sigma, double ohms)
    {
        static double Log(double off, double variance)
        {
            var spread = Math.Sqrt(variance - (1.0 / 3));
            var normal = Math.Exp(-off * off / variance / 2) / Math.Sqrt(2 * Math.PI * variance);
            var bounded = (Normal.CDF(0, spread, off + 1) - Normal.CDF(0, spread, off - 1)) / 2;
            return Math.Log(spread > 0.3 ? normal : Math.Min(normal, Math.Max(bounded, 1e-3)));
        }
        var expected = 0.25 * Math.Exp(Log((ohms - 1.11) / Floor, Variance(1, sigma, 1.11)) - Log((ohms - 1) / Floor, Variance(1, sigma)));
        Assert.Equal(expected, Odds(Table(Sheet(sigma), Cold("w-1", 1.11)), [(0, ohms)], [0]), expected * 0.01);
    }

    /// <summary>Below one in ten thousand a set of mistakes is not named; wired as planned always is, however improbable.</summary>
    [Theory]
    [InlineData(1.5e-4, true)]
    [InlineData(0.7e-4, false)]
    public void What_is_less_probable_than_one_in_ten_thousand_is_not_named(double odds, bool isNamed)
    {
        var prior = odds * Density(0.5) / Density(1.6);
        var table = Table(Sheet(0), new Mistake("cold:w-1", 100 * prior / (1 + prior), [1.11]));
        var all = new RewireWeights(table, [(0, 0.95 / Floor)], [0]).All();
        Assert.Equal(isNamed ? 2 : 1, all.Count);
        all = new RewireWeights(table, [(0, 1.11 / Floor)], [25]).All();
        Assert.Equal([1, 0], all.Select(h => h.Mistakes.Length));
        Assert.True(all[1].Probability < 1e-4);
    }

    /// <remarks>A normal law each, of the variances above; beyond seven deviations nothing more is said.</remarks>
    [Theory]
    [InlineData(1.4)]
    [InlineData(1.1)]
    [InlineData(0.8)]
    [InlineData(3.0)]
    [InlineData(30.0)]
    public void Where_the_part_varies_Bayes_decides_by_two_normal_laws(double ohms)
    {
        var (right, wrong) = (Variance(1, 0.14), Variance(1, 0.14, 1.3));
        static double Square(double off, double variance) => Math.Min(off * off / Floor / Floor / variance, 49);
        var odds = 0.25 * Math.Exp((Square(ohms - 1, right) - Square(ohms - 1.3, wrong)) / 2) * Math.Sqrt(right / wrong);
        Assert.Equal(odds, Odds(Table(Sheet(0.14), Cold("w-1", 1.3)), [(0, ohms)], [0]), odds * 2e-3);
    }

    /// <remarks>
    /// A size anywhere on ln 1.5 … ln 3.5: the best one fits, and of all of them the share √(2π/b) is as good, b = d²/v with the way d between the
    /// two ends. With a further size twice as far the stretch is one of two.
    /// </remarks>
    [Theory]
    [InlineData(new[] { 1.5, 3.5 }, 1, 2.5, 2.5)]
    [InlineData(new[] { 1.5, 3.5, 900 }, 2, 2.5, 2.5)]
    [InlineData(new[] { 1.5, 3.5 }, 1, 1.8, 1.8)]
    [InlineData(new[] { 1.5, 3.5 }, 1, 3.2, 3.2)]
    // Outside its sizes the nearest one counts.
    [InlineData(new[] { 1.5, 3.5 }, 1, 1.3, 1.5)]
    public void A_size_costs_the_share_of_sizes_that_fit(double[] sizes, int stretches, double ohms, double fitted)
    {
        var (right, wrong) = (Variance(1, 0.14), Variance(1, 0.14, Math.Min(2, fitted)));
        double Square(double from, double variance) => Math.Min(Math.Pow((ohms - from) / Floor, 2) / variance, 49);
        var expected =
            0.25
            * Math.Sqrt(2 * Math.PI * right / (20 * 20))
            / stretches
            * Math.Exp((Square(1, right) - Square(fitted, wrong)) / 2)
            * Math.Sqrt(right / wrong);
        Assert.Equal(expected, Odds(Table(Sheet(0.14), Cold("w-1", sizes)), [(0, ohms)], [0]), expected * 0.02);
    }

    /// <summary>Of a mistake that no reading comes by nothing is learned, whatever its size: it keeps its own odds.</summary>
    [Fact]
    public void What_was_not_read_keeps_its_chance()
    {
        Assert.Equal(0.25, Odds(Table(Sheet(0.14), Cold("w-1", 1.5, 3.5, 9)), [(1, 2.1)], [0]), 1e-6);
        Assert.Equal(0.25, Odds(Table(Sheet(0.14), Cold("w-1", 9)), [(1, 2.1)], [0]), 1e-6);
    }

    /// <summary>Mistakes that no reading has in common multiply, and what an eye saw multiplies once for each set that holds it.</summary>
    [Fact]
    public void Two_mistakes_far_apart_have_the_product_of_their_odds()
    {
        var table = Table(Sheet(0.14), Cold("w-1", 1.3), Cold("w-2", 2.6));
        (int, double)[] read = [(0, 1.4), (1, 2.8)];
        var (one, other, both) = (Odds(table, read, [0]), Odds(table, read, [1]), Odds(table, read, [0, 1]));
        Assert.Equal(one * other, both, both * 1e-6);
        Assert.True(one > 1 && other > 1);
        double[] eye = [Math.Log(7), 0];
        Assert.Equal(
            [7 * one, other, 7 * both],
            new[] { Odds(table, read, [0], eye), Odds(table, read, [1], eye), Odds(table, read, [0, 1], eye) },
            Near
        );
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-6 * Math.Abs(b);

    /// <summary>So have two whose sizes are fitted: each costs its own share of sizes, also beside the other.</summary>
    [Fact]
    public void Two_sizes_cost_the_share_of_both()
    {
        var table = Table(Sheet(0.14), Cold("w-1", 1.3, 3), Cold("w-2", 2.6, 6));
        (int, double)[] read = [(0, 1.5), (1, 2.9)];
        var (one, other, both) = (Odds(table, read, [0]), Odds(table, read, [1]), Odds(table, read, [0, 1]));
        Assert.Equal(one * other, both, both * 0.02);
    }
}
