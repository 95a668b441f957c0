using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Ranking;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Ranking;

/// <summary>
/// The information of a reading that tells every possibility apart is their entropy (tests/Reference/published/diagnosis.json).
/// Nothing has been read before, so the possibilities are those of the chances in the sheet.
/// </summary>
public class InformationTests
{
    [Theory]
    [InlineData("10.6-half", 0.5)]
    [InlineData("10.6-0.9", 0.1)]
    [InlineData("10.6-0.99", 0.01)]
    public void A_reading_that_shows_whether_a_wire_is_open_is_worth_the_entropy_of_that(string id, double chance)
    {
        var faults = new Dictionary<string, double> { ["open"] = 100 * chance, ["resistive"] = 0 };
        var next = Next(
            new SheetDraft().Element("wire", "w", "a", "b", new { ohms = 1, faults }).Reading("ohms", "ohms", ["a", "b"]).Unit()
        );
        Published.Case("diagnosis", id).Agrees("bits", next.Single().Bits, 0.002);
    }

    /// <summary>Odds of 1/2, 1/4 and 1/4 against a sound breaker: one half, one quarter, one eighth, one eighth.</summary>
    [Fact]
    public void A_reading_that_tells_four_states_of_a_breaker_apart_is_worth_the_entropy_of_four()
    {
        var faults = new Dictionary<string, double>
        {
            ["open"] = 100.0 / 3,
            ["resistive"] = 20,
            ["bypassed"] = 20,
        };
        // Sound 0.1 Ω with little spread, bypassed 1 mΩ, resistive from 0.3 Ω: a meter that is good to a milliohm tells them.
        var unit = new SheetDraft()
            .Element(
                "breaker",
                "k",
                "a",
                "b",
                new
                {
                    ohms = 0.1,
                    faults,
                    spread = new { ohms = 0.02 },
                }
            )
            .Reading("ohms", "ohms", ["a", "b"])
            .Unit();
        Published.Case("diagnosis", "10.6-eighths").Agrees("bits", Next(unit, new MeterError(0.1, 0.001, 0, 0)).Single().Bits, 0.01);
    }

    /// <summary>
    /// Two wires, each open with 0.1: twice 0.469 bit, less a tenth for the pair, since the ranking weighs the probable sets with
    /// at most one fault added.
    /// </summary>
    [Fact]
    public void Two_independent_parts_in_one_reading_are_worth_about_both_entropies_when_it_can_tell_them_apart()
    {
        var faults = new Dictionary<string, double>
        {
            ["open"] = 10,
            ["shorted"] = 0,
            ["drifted"] = 0,
        };
        // Side by side: 3∥7, 3, 7 or nothing; four different answers.
        var unit = new SheetDraft()
            .Element(
                "resistor",
                "three",
                "a",
                "b",
                new
                {
                    ohms = 3,
                    faults,
                    spread = new { ohms = 0.01 },
                }
            )
            .Element(
                "resistor",
                "seven",
                "a",
                "b",
                new
                {
                    ohms = 7,
                    faults,
                    spread = new { ohms = 0.01 },
                }
            )
            .Reading("ohms", "ohms", ["a", "b"])
            .Unit();
        Assert.Equal(2 * Published.Case("diagnosis", "10.6-0.9").Expected("bits"), Next(unit).Single().Bits, 0.1);
    }

    [Fact]
    public void A_reading_that_nothing_moves_is_worth_nothing()
    {
        var faults = new Dictionary<string, double> { ["open"] = 50, ["resistive"] = 0 };
        var unit = new SheetDraft()
            .Element("wire", "w", "a", "b", new { ohms = 1, faults })
            .Element(
                "wire",
                "other",
                "c",
                "d",
                new { ohms = 1, faults = new Dictionary<string, double> { ["open"] = 0, ["resistive"] = 0 } }
            )
            .Reading("elsewhere", "ohms", ["c", "d"])
            .Reading("here", "ohms", ["a", "b"])
            .Unit();
        var next = Next(unit);
        Assert.Equal(0, next.Single(n => n.Spec.Id == "elsewhere").Bits, 1e-6);
        Assert.Equal("here", next[0].Spec.Id);
    }

    [Fact]
    public void A_meter_that_cannot_tell_learns_less()
    {
        var faults = new Dictionary<string, double> { ["open"] = 0, ["resistive"] = 50 };
        var unit = new SheetDraft().Element("wire", "w", "a", "b", new { ohms = 0.1, faults }).Reading("ohms", "ohms", ["a", "b"]).Unit();
        var (good, poor) = (Next(unit, new MeterError(0.5, 0.01, 0, 0))[0].Bits, Next(unit, new MeterError(0.5, 20, 0, 0))[0].Bits);
        Assert.Equal(1, good, 0.02);
        Assert.True(poor < 0.3, FormattableString.Invariant($"{poor}"));
    }

    [Fact]
    public void Quicker_of_two_equal_readings_stands_first()
    {
        var faults = new Dictionary<string, double> { ["open"] = 50, ["resistive"] = 0 };
        var unit = new SheetDraft()
            .Element("wire", "w", "a", "b", new { ohms = 1, faults })
            .Reading("slow", "ohms", ["a", "b"], minutes: 5)
            .Reading("quick", "ohms", ["b", "a"], minutes: 1)
            .Unit();
        Assert.Equal(["quick", "slow"], Next(unit).Select(n => n.Spec.Id));
    }

    /// <summary>
    /// One of two faults, as likely as the other, shows OL half the time and else what the other always shows. OL (1 in 4) tells all, the
    /// number leaves 1 to 2: 1 − ¾·H(⅓) bit. Weights need not add up to 1.
    /// </summary>
    [Fact]
    public void OL_that_only_one_of_two_shows_now_and_then_is_worth_what_it_leaves_open()
    {
        double third = 1.0 / 3;
        var left = -(third * Math.Log2(third)) - (2 * third * Math.Log2(2 * third));
        List<Component> parts = [new(0, 0.75, 100, 1), new(0, 0.75, 0, 1), new(1, 1.5, 0, 1)];
        Assert.Equal(1 - (0.75 * left), Information.Bits(parts, 50), 1e-6);
    }

    private static IReadOnlyList<NextReading> Next(BenchUnit unit, MeterError? ohms = null)
    {
        var meter = ohms is null ? Meter.Usual : new Meter(Meter.Usual.Errors.SetItem(Quantity.Ohms, ohms));
        return Diagnoser.Run(unit.Model, new UnitReadings("draft", 120, null, meter, [], []), new DiagnosisOptions()).Next;
    }

    /// <summary>
    /// The same with one chance in three for the first: OL (1 in 6) is never the second, and without it the first is left with 1 in 5:
    /// H(⅓) − ⅚·H(⅕) bit.
    /// </summary>
    [Fact]
    public void OL_of_a_scenario_that_is_less_likely_is_worth_more_each_time_it_comes()
    {
        static double Entropy(double p) => -(p * Math.Log2(p)) - ((1 - p) * Math.Log2(1 - p));
        List<Component> parts = [new(0, 0.5, 100, 1), new(0, 0.5, 0, 1), new(1, 2, 0, 1)];
        Assert.Equal(Entropy(1.0 / 3) - (5.0 / 6 * Entropy(0.2)), Information.Bits(parts, 50), 1e-6);
    }
}
