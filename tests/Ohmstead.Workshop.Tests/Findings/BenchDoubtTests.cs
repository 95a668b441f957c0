using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>A doubt of the diagnosis as a sentence with its figure, and what to do about it.</summary>
public class BenchDoubtTests
{
    private static BenchDoubt Of(DoubtAbout about, double value, string[] readings, params string[] parameters) =>
        Assert.Single(
            BenchDoubt.Of(OnTheBench.Sheet, new OnTheBench().Readings, [new Doubt(about, 0.9, value, [.. readings], [.. parameters])])
        );

    [Theory]
    [InlineData(DoubtAbout.Leads, 0.312, "Your test leads were probably not taken off: about 0.31 Ω", "Touch the leads together")]
    [InlineData(DoubtAbout.Line, 116.4, "The line voltage was probably 116 V, not 120 V", "Read the outlet again with the unit running")]
    [InlineData(
        DoubtAbout.Meter,
        3.04,
        "Your meter is probably off on AC volts and ohms: about 3 times its error",
        "Put in a new battery."
    )]
    [InlineData(DoubtAbout.Unit, 4, "Probably another batch", "Off: main winding, ohms; core")]
    [InlineData(
        DoubtAbout.Internal,
        11.2,
        "This unit makes about 11 W more heat than it should",
        "Do not return it until you find the cause. Smell, smoke or a growl: plug out at once."
    )]
    [InlineData(DoubtAbout.Kind, 12, "These readings do not fit this type", "Perhaps another type. Compare the plate, the posts")]
    public void Each_says_what_it_is_with_its_figure_and_what_to_do(DoubtAbout about, double value, string headline, string act)
    {
        var doubt = Of(about, value, ["left-full", "blades"], "main.ohms", $"{OnTheBench.Sheet.Cores[0].Id}.lossWatts");
        Assert.StartsWith(headline, doubt.Headline, StringComparison.Ordinal);
        Assert.StartsWith(act, doubt.Do, StringComparison.Ordinal);
        // What settles more heat is read at the low-voltage supply, never on mains.
        Assert.Equal(about == DoubtAbout.Internal ? ["low-amps"] : ["left-full", "blades"], doubt.Again.Select(r => r.Id));
    }

    /// <summary>Damp paper says nothing against a type, and nothing against the other readings.</summary>
    [Theory]
    [InlineData(DoubtAbout.Unit)]
    [InlineData(DoubtAbout.Kind)]
    public void Where_only_insulation_lies_off_the_unit_is_damp_and_no_other_type(DoubtAbout about)
    {
        string[] paths = [.. OnTheBench.Sheet.Elements.Where(e => e.Kind == ElementKind.Insulation).Select(e => $"{e.Id}.ohms").Take(2)];
        var damp = Of(about, 5, ["insulation-core", "blades"], paths);
        Assert.True(damp.IsDamp);
        Assert.False(damp.Weakens);
        Assert.Equal("The insulation is lower than on other units of this type", damp.Headline);
        Assert.StartsWith("Probably damp. Dry it slowly", damp.Do, StringComparison.Ordinal);
        Assert.All(damp.Again, r => Assert.Equal(Quantity.InsulationOhms, r.Quantity));
        Assert.DoesNotContain(OnTheBench.Sheet.Readings, damp.Covers);
        foreach (var other in new[] { Of(about, 5, [], [.. paths, "main.ohms"]), Of(about, 5, []) })
        {
            Assert.False(other.IsDamp);
            Assert.True(other.Weakens);
            Assert.Contains(OnTheBench.Sheet.Readings, other.Covers);
        }
    }

    /// <summary>A figure of the type sheet is named as a meter or the hand meets it, each once.</summary>
    [Fact]
    public void What_lies_off_in_another_batch_is_named_in_the_words_of_the_bench()
    {
        var core = OnTheBench.Sheet.Cores[0].Id;
        var doubt = Of(
            DoubtAbout.Unit,
            4,
            [],
            "disc-left.saturationAmps",
            $"{core}.lossOhms",
            "main.ohms",
            "main.ohms",
            $"{core}.excitation"
        );
        Assert.StartsWith(
            "Off: left disc, drop; core, heat; main winding, ohms; core, no-load amps. Look",
            doubt.Do,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_weakens_the_findings_comes_first_and_more_heat_does_not_weaken_them()
    {
        Doubt[] doubts =
        [
            new(DoubtAbout.Internal, 0.99, 9, [], []),
            new(DoubtAbout.Line, 0.9, 116, [], []),
            new(DoubtAbout.Leads, 0.6, 0.3, [], []),
        ];
        Assert.Equal(
            [(DoubtAbout.Line, true), (DoubtAbout.Leads, true), (DoubtAbout.Internal, false)],
            BenchDoubt.Of(OnTheBench.Sheet, new OnTheBench().Readings, doubts).Select(d => (d.About, d.Weakens))
        );
    }

    /// <summary>A reading keeps the line that was noted with it: the doubt names that one, and asks for those readings, whatever is entered since.</summary>
    [Fact]
    public void A_line_that_was_entered_since_asks_for_the_readings_that_keep_the_old_one()
    {
        var bench = new OnTheBench();
        var offer = bench.Offer("left-full");
        var old = new TakenReading(
            offer.Spec,
            Outcome.Value,
            18,
            [],
            "",
            "",
            offer.State with
            {
                Source = offer.State.Source! with { Volts = 120 },
            }
        );
        var again = old with
        {
            Spec = OnTheBench.Sheet.FindReading("right-full")!,
            State = old.State with { Source = old.State.Source! with { Volts = 125 } },
        };
        Doubt[] doubts = [new(DoubtAbout.Line, 0.9, 124.8, ["right-full", "left-full", "left-full"], [])];
        var readings = bench.Readings with { SupplyVolts = 125, Readings = [old, again] };
        var entered = Assert.Single(BenchDoubt.Of(OnTheBench.Sheet, readings, doubts));
        Assert.True(entered.IsEntered);
        Assert.Equal("The line voltage was probably 125 V, not 120 V", entered.Headline);
        Assert.Equal("125 V is entered now. Readings taken before keep 120 V. Take those on mains again.", entered.Do);
        Assert.All(entered.Again, r => Assert.Equal("left-full", r.Id));
        // Neither the old line nor a far-off one settles it.
        Assert.All(
            [120.0, 140],
            volts => Assert.False(Assert.Single(BenchDoubt.Of(OnTheBench.Sheet, readings with { SupplyVolts = volts }, doubts)).IsEntered)
        );
    }
}
