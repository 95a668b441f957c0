using System.Globalization;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// What is wrong with the bench, against closed forms where the unit is a few resistors. The chances and deviations of the benches are common
/// practice, no source (docs/methods/diagnosis.md, "Benches").
/// </summary>
public class BenchDoubtTests
{
    private const double Percent = 0.5;
    private const double Floor = 0.02;

    /// <summary>Resistors of 2 Ω that differ by 3 % and have no faults; each is read too high by the same.</summary>
    [Theory]
    [InlineData(3, 0.3)]
    [InlineData(4, 0.3)]
    [InlineData(5, 0.2)]
    [InlineData(4, -0.2)]
    [InlineData(6, 0.5)]
    public void Leads_in_every_reading_are_as_probable_as_eight_normal_laws_say(int resistors, double over)
    {
        const double ohms = 2;
        const double sigma = 0.03;
        var unit = Resistors(resistors, ohms, sigma);
        var result = Run(unit, [.. Ids(resistors).Select(id => WireBench.Value(unit, id, ohms + over))], 1e-12);
        // On the meter's scale: the limit of error is 1, its variance 1/3.
        double Limit(double v) => (Percent / 100 * v) + Floor;
        double Scale(double v) => Math.Log(1 + (Percent / 100 * v / Floor)) / (Percent / 100);
        var (z, slope, lead) = (Scale(ohms + over) - Scale(ohms), sigma * ohms / Limit(ohms), 0.3 / Limit(ohms + over));
        // n equal residuals z with variance v each and c in common: eigenvalues v + n·c once, v else.
        double Log(double v, double c) =>
            -0.5 * ((resistors * z * z / (v + (resistors * c))) + Math.Log(v + (resistors * c)) + ((resistors - 1) * Math.Log(v)));
        var (own, error) = (slope * slope, 1.0 / 3);
        double[] weights =
        [
            0.805 * Math.Exp(Log(own + error, 0)),
            0.015 * Math.Exp(Log(own + error, 0)),
            0.04 * Math.Exp(Log(own + error, lead * lead)),
            0.015 * Math.Exp(Log(own + (9 * error), 0)),
            0.03 * Math.Exp(Log((2.25 * own) + error, 0)),
            0.01 * Math.Exp(Log(own + error, 0)),
            0.08 * Math.Exp(Log(own + error, 0)),
            0.005 * Math.Exp(Log((20.25 * own) + (9 * error), 0)),
        ];
        var expected = weights[2] / weights.Sum();
        var doubt = result.Doubts.SingleOrDefault(d => d.About == DoubtAbout.Leads);
        if (expected < 0.5 || over < 0)
        {
            Assert.Null(doubt);
            return;
        }
        Assert.NotNull(doubt);
        // Of the eight at most three are worked out.
        Assert.Equal(expected, doubt.Probability, 0.01);
        Assert.Equal(0.3 * lead * resistors * z / (own + error + (resistors * lead * lead)), doubt.Value, 1e-3);
        Assert.Equal(Ids(resistors).Order(StringComparer.Ordinal), doubt.Readings.Order(StringComparer.Ordinal));
        Assert.Equal(doubt.Value, Gates.DoubtsOf(WireBench.Unit(unit, []), result).LeadOhms);
    }

    /// <summary>As above with two resistors: as probable, and not said.</summary>
    [Fact]
    public void Of_two_readings_nothing_is_said_of_the_bench()
    {
        var unit = Resistors(2, 2, 0.001);
        Assert.Empty(Run(unit, [.. Ids(2).Select(id => WireBench.Value(unit, id, 2.3))], 1e-12).Doubts);
        var three = Resistors(3, 2, 0.001);
        Assert.Equal(
            DoubtAbout.Leads,
            Assert.Single(Run(three, [.. Ids(3).Select(id => WireBench.Value(three, id, 2.3))], 1e-12).Doubts).About
        );
    }

    private static string[] Ids(int count) =>
        [.. Enumerable.Range(0, count).Select(n => n.ToString(CultureInfo.InvariantCulture)).Select(n => $"read-{n}")];

    private static BenchUnit Resistors(int count, double ohms, double spread)
    {
        var draft = new SheetDraft();
        var none = new Dictionary<string, double>
        {
            ["open"] = 0,
            ["shorted"] = 0,
            ["drifted"] = 0,
        };
        foreach (var id in Ids(count))
            draft = draft
                .Element(
                    "resistor",
                    "of-" + id,
                    "a-" + id,
                    "b-" + id,
                    new
                    {
                        ohms,
                        spread = new { ohms = spread },
                        faults = none,
                    }
                )
                .Reading(id, "ohms", ["a-" + id, "b-" + id]);
        return draft.Unit();
    }

    private static DiagnosisResult Run(BenchUnit unit, TakenReading[] taken, double wrong)
    {
        var meter = new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, new(Percent, Floor, 0, 0)));
        return Diagnoser.Run(
            unit.Model,
            WireBench.Unit(unit, taken) with
            {
                Meter = meter,
            },
            new DiagnosisOptions { RankNext = false, WrongReadingChance = wrong }
        );
    }
}
