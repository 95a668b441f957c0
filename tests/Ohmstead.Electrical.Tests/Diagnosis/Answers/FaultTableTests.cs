using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis.Answers;

/// <summary>What a reading does not show keeps its chance, as far as its part is not found to have something else; by the odds of both.</summary>
public class FaultTableTests
{
    /// <summary>A closed contact, by odds of 30 to 70 stuck open and of 20 to 80 stuck closed; only the first is seen.</summary>
    private static readonly BenchUnit Unit = new SheetDraft()
        .Selector("lever", "on", "off")
        .Element(
            "switch",
            "contact",
            "a",
            "b",
            new
            {
                control = "lever",
                closedIn = new[] { "on" },
                faults = new Dictionary<string, double>
                {
                    ["stuck-open"] = 30,
                    ["stuck-closed"] = 20,
                    ["resistive"] = 0,
                },
            }
        )
        .Reading("through", "ohms", ["a", "b"])
        .Unit();

    private const double Open = 3.0 / 7;
    private const double Closed = 1.0 / 4;

    [Fact]
    public void Where_the_other_fault_of_a_part_is_ruled_out_the_odds_of_what_is_left_decide()
    {
        var result = WireBench.Diagnose(Unit, WireBench.Value(Unit, "through", Unit.ReadListed("through")));
        Assert.Equal(0, WireBench.Chance(result, "contact:stuck-open"), 1e-4);
        Assert.Equal(Closed / (1 + Closed), WireBench.Chance(result, "contact:stuck-closed"), 1e-4);
    }

    [Fact]
    public void Where_it_is_found_little_is_left()
    {
        var result = WireBench.Diagnose(Unit, WireBench.OL(Unit, "through"));
        var open = WireBench.Chance(result, "contact:stuck-open");
        Assert.InRange(open, 0.98, 0.999999999);
        Assert.Equal((1 - open) * Closed / (1 + Closed), WireBench.Chance(result, "contact:stuck-closed"), 1e-9);
    }

    [Fact]
    public void Where_nothing_is_read_both_keep_their_chance()
    {
        var result = WireBench.Diagnose(Unit);
        Assert.Equal(Open / (1 + Open + Closed), WireBench.Chance(result, "contact:stuck-open"), 1e-9);
        Assert.Equal(Closed / (1 + Open + Closed), WireBench.Chance(result, "contact:stuck-closed"), 1e-9);
        Assert.Equal(1 / (1 + Open + Closed), result.SoundProbability, 1e-9);
    }
}
