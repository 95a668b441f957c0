using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Likelihoods;

/// <summary>Readings that showed OL, that jumped, or that are finite where OL was expected.</summary>
public class OverRangeTests
{
    [Fact]
    public void OL_through_a_chain_is_a_break_in_it_by_the_chances_of_its_parts()
    {
        var unit = Parts(("w1", "a", "b", 2), ("w2", "b", "c", 6), ("w3", "c", "d", 1)).Reading("chain", "ohms", ["a", "c"]).Unit();
        var result = Diagnose(unit, OL(unit, "chain"));
        var (first, second) = (Chance(result, "w1:open"), Chance(result, "w2:open"));
        // One break, or both (a path above the range by itself, where one is that only when breaks are wide: 1 in 12).
        var (a, b) = (2.0 / 98, 6.0 / 94);
        double one = 0.082,
            both = 0.999;
        var all = (one * (a + b)) + (both * a * b);
        Assert.Equal(((one * a) + (both * a * b)) / all, first, 0.06);
        Assert.Equal(((one * b) + (both * a * b)) / all, second, 0.06);
        Assert.Equal(0.01, Chance(result, "w3:open"), 0.001);
        Assert.True(result.SoundProbability < 0.01);
        Assert.Empty(result.Unexplained);
        Assert.True(result.IsExplained);
    }

    [Fact]
    public void One_break_behind_several_OL_is_likelier_than_a_break_for_each()
    {
        var unit = Parts(("trunk", "a", "b", 1), ("left", "b", "c", 3), ("right", "b", "d", 3), ("third", "b", "e", 3))
            .Reading("to-c", "ohms", ["a", "c"])
            .Reading("to-d", "ohms", ["a", "d"])
            .Reading("to-e", "ohms", ["a", "e"])
            .Unit();
        var result = Diagnose(unit, OL(unit, "to-c"), OL(unit, "to-d"), OL(unit, "to-e"));
        Assert.True(Chance(result, "trunk:open") > 0.95);
        Assert.Equal("trunk", Assert.Single(result.Hypotheses[0].Faults).Element);
    }

    [Fact]
    public void Two_paths_side_by_side_are_both_broken()
    {
        var unit = Parts(("w1", "a", "b", 5), ("w2", "a", "b", 5), ("w3", "b", "c", 1)).Reading("both", "ohms", ["a", "b"]).Unit();
        var result = Diagnose(unit, OL(unit, "both"));
        Assert.True(Chance(result, "w1:open") > 0.9);
        Assert.True(Chance(result, "w2:open") > 0.9);
    }

    [Fact]
    public void OL_that_other_readings_contradict_is_not_explained()
    {
        // Twelve volts reach the resistor, so nothing before it is open.
        var unit = Parts(("w1", "a", "b", 1), ("w2", "b", "c", 1))
            .Resistor("r", "c", "g", 100)
            .Reading("through", "ohms", ["a", "c"])
            .Reading(
                "volts",
                "ac-volts",
                ["c", "g"],
                new
                {
                    source = new
                    {
                        from = "a",
                        to = "g",
                        volts = 12,
                    },
                }
            )
            .Unit();
        var result = Diagnose(unit, OL(unit, "through"), Value(unit, "volts", unit.ReadListed("volts")));
        Assert.Equal("through", Assert.Single(result.Unexplained));
        Assert.False(result.IsExplained);
        Assert.Equal(unit.ReadListed("through"), result.Readings[0].Expected!.Value, 0.01);
    }

    [Fact]
    public void A_value_where_OL_belongs_is_a_leak()
    {
        var unit = Parts(("w1", "a", "b", 1))
            .Element("insulation", "ins", "b", "case", new { ohms = 1e9 })
            .Reading("leak", "ohms", ["a", "case"])
            .Unit();
        Assert.True(Chance(Diagnose(unit, Value(unit, "leak", 50e3)), "ins:low") > 0.95);
        var sound = Diagnose(unit, OL(unit, "leak"));
        Assert.True(Chance(sound, "ins:low") < 0.001);
        Assert.Empty(sound.Unexplained);
        Assert.Equal(double.PositiveInfinity, sound.Readings[0].Expected);
    }

    [Fact]
    public void A_jump_between_a_value_and_OL_raises_what_can_come_and_go()
    {
        var unit = Parts(("w1", "a", "b", 1), ("w2", "c", "d", 1))
            .Reading("first", "ohms", ["a", "b"])
            .Reading("second", "ohms", ["c", "d"])
            .Unit();
        var spec = unit.Model.Sheet.FindReading("first")!;
        var result = Diagnose(unit, new TakenReading(spec, Outcome.Jumps, 0, [0.01, double.PositiveInfinity], "", "", spec.State));
        Assert.True(Chance(result, "w1:open") + Chance(result, "w1:resistive") > 0.4);
        Assert.Equal(0.01, Chance(result, "w2:open"), 0.001);
        Assert.Equal(0, result.Readings[0].Deviation);
    }

    [Fact]
    public void A_reading_that_was_not_taken_says_nothing()
    {
        var unit = Parts(("w1", "a", "b", 1)).Reading("first", "ohms", ["a", "b"]).Unit();
        var spec = unit.Model.Sheet.FindReading("first")!;
        var result = Diagnose(unit, new TakenReading(spec, Outcome.NotTaken, 0, [], "out of reach", "", spec.State));
        // Odds of 1/99 for each of two modes.
        Assert.Equal(1.0 / 101, Chance(result, "w1:open"), 1e-9);
        Assert.Empty(result.Readings);
    }
}
