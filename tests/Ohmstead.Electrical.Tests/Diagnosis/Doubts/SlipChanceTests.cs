using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Doubts;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// How probable a slip is, on resistors without faults: a reading is right by its normal density, or wrong by 0.02 · ½ / 300 (common practice,
/// no source); two are exchanged by 0.02 · 0.12 over what may have been exchanged with the first.
/// </summary>
public class SlipChanceTests
{
    private const double Chance = 0.02;
    private const double Anywhere = Chance * 0.5 / 300;
    private const double Sigma = 0.05;

    private static readonly BenchUnit Unit = Resistors();
    private static readonly MeterError Error = Meter.Usual.For(Quantity.Ohms);

    /// <summary>Named from one half on.</summary>
    [Theory]
    [InlineData(0.45)]
    [InlineData(0.55)]
    [InlineData(0.9)]
    public void A_reading_is_a_slip_by_the_odds_of_wrong_against_right(double probability)
    {
        var deviation = Deviation(10);
        var off = deviation * Math.Sqrt(-2 * Math.Log(Anywhere * ((1 / probability) - 1) * Math.Sqrt(2 * Math.PI) * deviation));
        var result = Run(("ten", Off(10, off)), ("twenty", 20), ("forty", 40));
        if (probability < 0.5)
        {
            Assert.Empty(result.Slips);
            return;
        }
        var slip = Assert.Single(result.Slips);
        Assert.Equal(("ten", SlipKind.Unknown, (double?)null), (slip.Id, slip.Kind, slip.Meant));
        Assert.Equal(probability, slip.Probability, 0.01);
        Assert.Contains("ten", result.Unexplained);
    }

    [Theory]
    [InlineData(100, SlipKind.TimesTen)]
    [InlineData(1, SlipKind.Tenth)]
    [InlineData(10000, SlipKind.TimesThousand)]
    [InlineData(0.01, SlipKind.Thousandth)]
    public void A_point_or_a_prefix_is_told_with_what_was_meant(double noted, SlipKind kind)
    {
        var slip = Assert.Single(Run(("ten", noted), ("twenty", 20), ("forty", 40)).Slips);
        Assert.Equal(("ten", kind, (double?)10), (slip.Id, slip.Kind, slip.Meant));
    }

    /// <summary>By so many deviations each lies off what the other one should be: the farther, the less likely that they were exchanged.</summary>
    [Theory]
    [InlineData(2.0, true)]
    [InlineData(2.9, true)]
    [InlineData(3.3, false)]
    public void Two_are_exchanged_by_the_odds_of_the_list_put_right_against_the_list_as_noted(double deviations, bool isTold)
    {
        // What was noted of ten is near 20, what was noted of twenty near 10.
        var (ten, twenty) = (Off(20, deviations * Deviation(20)), Off(10, deviations * Deviation(10)));
        double Log(double noted, double ohms)
        {
            var (z, variance) = (Error.ToScale(noted) - Error.ToScale(ohms), Math.Pow(Deviation(ohms), 2));
            return Math.Log((Math.Exp(-0.5 * z * z / variance) / Math.Sqrt(2 * Math.PI * variance)) + Anywhere);
        }
        var gain = Log(ten, 20) + Log(twenty, 10) - Log(ten, 10) - Log(twenty, 20) + Math.Log(Chance * 0.12);
        var exchanged = Run(("ten", ten), ("twenty", twenty), ("forty", 40)).Slips.Where(s => s.Kind == SlipKind.Exchanged).ToArray();
        Assert.Equal(isTold, gain > 0);
        Assert.Equal(isTold ? 2 : 0, exchanged.Length);
        if (!isTold)
            return;
        Assert.All(exchanged, s => Assert.Equal(1 / (1 + Math.Exp(-gain)), s.Probability, 0.01));
        Assert.Contains(exchanged, s => (s.Id, s.With, s.Meant) == ("ten", "twenty", twenty));
        Assert.Contains(exchanged, s => (s.Id, s.With, s.Meant) == ("twenty", "ten", ten));
    }

    /// <summary>An OL noted of the resistor and its ohms of the gap: what was meant by the one is a value, by the other none.</summary>
    [Fact]
    public void An_OL_and_a_value_are_exchanged_too()
    {
        var taken = new[] { WireBench.OL(Unit, "ten"), WireBench.Value(Unit, "gap", 10), WireBench.Value(Unit, "forty", 40) };
        var slips = Diagnose(taken).Slips;
        Assert.Equal(
            ("gap", (double?)10),
            slips.Where(s => s.Id == "ten" && s.Kind == SlipKind.Exchanged).Select(s => (s.With, s.Meant)).Single()
        );
        Assert.Equal(
            ("ten", (double?)null),
            slips.Where(s => s.Id == "gap" && s.Kind == SlipKind.Exchanged).Select(s => (s.With, s.Meant)).Single()
        );
    }

    /// <summary>
    /// Twice the same resistor, and a third reading far off: what the first is expected to be is drawn to the second, and the third has no say.
    /// </summary>
    [Fact]
    public void A_reading_is_laid_beside_what_the_others_that_are_right_expect()
    {
        var pieces = new Pieces(
            Unit,
            [WireBench.Value(Unit, "ten", 10.4), WireBench.Value(Unit, "again", 10.6), WireBench.Value(Unit, "forty", 4000)],
            Chance
        );
        var set = pieces.Fitted(Members.None);
        var view = SlipView.Of(0.7, set, pieces.Judge(set.Spread));
        var covariance = set.Spread.Gaussian.Covariance;
        double Z(int k) => pieces.Evidence.Measured(k) - pieces.Sound[k] - set.Spread.Shift[k];
        var (off, variance) = (
            Z(0) - (covariance[1] / covariance[4] * Z(1)),
            covariance[0] - (covariance[1] * covariance[1] / covariance[4])
        );
        Assert.Equal((0.7, set), (view.Weight, view.Set));
        Assert.Equal(off, view.At[0].Off, 1e-9);
        Assert.Equal(1 / variance, view.At[0].Precision, 1e-9);
        var right = Math.Exp(-0.5 * off * off / variance) / Math.Sqrt(2 * Math.PI * variance);
        Assert.Equal(Anywhere / (right + Anywhere), view.At[0].Wrong, 1e-6);
        // The third is left out, and laid beside nothing but its own resistor.
        Assert.Equal([2], set.LeftOut);
        Assert.Equal(Z(2), view.At[2].Off, 1e-9);
        Assert.Equal(1 / covariance[8], view.At[2].Precision, 1e-9);
        Assert.Equal(1, view.At[2].Wrong, 1e-6);
    }

    private static DiagnosisResult Run(params (string Id, double Value)[] noted) =>
        Diagnose([.. noted.Select(n => WireBench.Value(Unit, n.Id, n.Value))]);

    private static DiagnosisResult Diagnose(TakenReading[] taken) =>
        Diagnoser.Run(
            Unit.Model,
            WireBench.Unit(Unit, taken),
            new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                WrongReadingChance = Chance,
            }
        );

    /// <summary>The ohms so many limits above some others on the meter's scale.</summary>
    private static double Off(double ohms, double limits) => Error.FromScale(Error.ToScale(ohms) + limits);

    /// <summary>Of a resistor's reading: its own spread and the meter's third of a limit squared.</summary>
    private static double Deviation(double ohms)
    {
        // As it is differenced: a tenth of a deviation.
        var slope = (Error.ToScale(ohms * Math.Exp(0.1 * Sigma)) - Error.ToScale(ohms)) / 0.1;
        return Math.Sqrt((slope * slope) + (1.0 / 3));
    }

    private static BenchUnit Resistors()
    {
        var none = new Dictionary<string, double>
        {
            ["open"] = 0,
            ["shorted"] = 0,
            ["drifted"] = 0,
        };
        var draft = new SheetDraft();
        foreach (var (id, ohms) in new[] { ("ten", 10.0), ("twenty", 20.0), ("forty", 40.0) })
            draft = draft
                .Element(
                    "resistor",
                    "r-" + id,
                    "a-" + id,
                    "g",
                    new
                    {
                        ohms,
                        spread = new { ohms = Sigma },
                        faults = none,
                    }
                )
                .Reading(id, "ohms", ["a-" + id, "g"]);
        return draft
            .Element("insulation", "ins", "x", "y", new { ohms = 1e9, faults = new Dictionary<string, double> { ["low"] = 0 } })
            .Reading("gap", "ohms", ["x", "y"])
            .Reading("again", "ohms", ["a-ten", "g"])
            .Unit();
    }

    /// <summary>What was noted of the ten could be that of either of two others; exchanged with the twenty both are right, with its own second reading neither.</summary>
    [Fact]
    public void Of_several_that_may_have_been_exchanged_it_is_the_pair_that_puts_both_right()
    {
        var slips = Run(("ten", 20.3), ("again", 10.1), ("twenty", 10.1)).Slips;
        Assert.Equal(
            ["ten twenty", "twenty ten"],
            slips.Where(s => s.Kind == SlipKind.Exchanged).Select(s => $"{s.Id} {s.With}").Order(StringComparer.Ordinal)
        );
    }

    /// <summary>
    /// Nothing read across a resistor that is hardly ever shorted: a short explains it, by its odds and the meter's density 1/√(2π/3); or it is a
    /// slip. The sets share the probability, and a slip it is as far as the reading is wrong over all of them.
    /// </summary>
    [Theory]
    [InlineData(0.0024, true)]
    [InlineData(0.004, true)]
    [InlineData(0.008, false)]
    public void What_a_rare_fault_explains_too_is_a_slip_by_what_is_left(double percent, bool isTold)
    {
        var unit = new SheetDraft()
            .Element(
                "resistor",
                "r",
                "a",
                "g",
                new
                {
                    ohms = 470,
                    faults = new Dictionary<string, double>
                    {
                        ["open"] = 0,
                        ["shorted"] = percent,
                        ["drifted"] = 0,
                    },
                }
            )
            .Reading("ten", "ohms", ["a", "g"])
            .Unit();
        var result = Diagnoser.Run(
            unit.Model,
            WireBench.Unit(unit, [WireBench.Value(unit, "ten", unit.ReadListed("ten", "r:shorted"))]),
            new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                WrongReadingChance = Chance,
            }
        );
        var (fault, slip) = (percent / (100 - percent) / Math.Sqrt(2 * Math.PI / 3), Anywhere);
        Assert.Equal(fault / (fault + slip), WireBench.Chance(result, "r:shorted"), 0.01);
        Assert.Equal(isTold, result.Slips.Length == 1);
        if (isTold)
            Assert.Equal(slip / (fault + slip), result.Slips[0].Probability, 0.01);
    }
}
