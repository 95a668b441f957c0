using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.Doubts.SlipBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>One reading of a sound unit that was taken elsewhere, in another's place, or with something left as it was; and what that opens.</summary>
public class SlipWayTests
{
    [Fact]
    public void Two_readings_in_each_other_s_place_are_told_as_a_pair()
    {
        var (a, b) = (Twin.ReadListed("volts-17"), Twin.ReadListed("volts-5"));
        var slips = Run(("volts-17", b), ("volts-5", a)).Slips;
        Assert.Equal(["volts-17", "volts-5"], slips.Select(s => s.Id).Order(StringComparer.Ordinal));
        Assert.All(slips, s => Assert.Equal(SlipKind.Exchanged, s.Kind));
        Assert.All(slips, s => Assert.InRange(s.Probability, 0.95, 1));
        var first = slips.Single(s => s.Id == "volts-17");
        Assert.Equal(("volts-5", a), (first.With, first.Meant));
    }

    [Fact]
    public void A_probe_on_another_post_is_told_with_the_two_that_were_read()
    {
        var at5 = Twin.Read(Reference.Twin160.FindReading("left-full")! with { To = "post-5" }, Twin.Model.Nominal);
        var slip = Assert.Single(Run(("left-full", at5)).Slips);
        Assert.Equal((SlipKind.Place, "post-common..post-5"), (slip.Kind, slip.With));
    }

    [Fact]
    public void A_throttle_that_was_not_at_its_place_is_told()
    {
        var spec = Reference.Twin160.FindReading("left-load")!;
        var back = spec with { State = spec.State with { Controls = spec.State.Controls.SetItem("throttle-left", new(0.72, "")) } };
        var slip = Assert.Single(Run(("left-load", Twin.Read(back, Twin.Model.Nominal))).Slips);
        Assert.Equal(("left-load", SlipKind.Control), (slip.Id, slip.Kind));
    }

    [Fact]
    public void Alternating_volts_noted_for_the_direct_part_are_told()
    {
        var spec = Reference.Twin160.FindReading("right-second-dc")! with { Quantity = Quantity.AcVolts };
        var slip = Assert.Single(Run(("right-second-dc", Twin.Read(spec, Twin.Model.Nominal))).Slips);
        Assert.Equal(("right-second-dc", SlipKind.Quantity), (slip.Id, slip.Kind));
    }

    /// <summary>A check that would pass and is probably a slip opens nothing, and is proposed to be read again before anything else.</summary>
    [Fact]
    public void A_check_that_is_a_slip_opens_nothing_until_it_is_read_again()
    {
        var checks = new[] { "blades", "blades-posts", "insulation-core", "insulation-posts" };
        var readings = WireBench.Unit(
            Twin,
            [
                .. Taken(("lamp-60", 10 * Twin.ReadListed("lamp-60")))
                    .Where(t =>
                        checks.Contains(t.Spec.Id)
                        || t.Spec.Id == "lamp-60"
                        || t.Spec.Id.StartsWith("low-", StringComparison.Ordinal)
                        || t.Spec.Quantity == Quantity.Ohms
                    ),
            ]
        );
        var result = Diagnoser.Run(Library, readings, new DiagnosisOptions());
        var doubts = Gates.DoubtsOf(readings, result);
        Assert.Contains("lamp-60", doubts.Readings);
        Assert.Equal("lamp-60", result.Next[0].Spec.Id);
        Assert.All(result.Next.Where(n => n.Spec.Needs.Contains("lamp-60")), n => Assert.Contains("lamp-60", n.BlockedBy));
        var doubted = readings with { Doubts = doubts };
        var lamp = Reference.Twin160.FindReading("lamp-60")!;
        Assert.Equal((CheckEnd.Passed, CheckEnd.Doubted), (Gates.EndOf(readings, lamp), Gates.EndOf(doubted, lamp)));
        Assert.False(Gates.Stands(doubted, lamp));
    }

    /// <summary>3.0 Ω between the blades is inside 2.8 to 5.2; less 0.3 Ω of leads it is not.</summary>
    [Theory]
    [InlineData(3.0, 0.3, CheckEnd.Doubted)]
    [InlineData(3.3, 0.3, CheckEnd.Passed)]
    [InlineData(3.0, 0, CheckEnd.Passed)]
    [InlineData(2.6, 0.3, CheckEnd.Failed)]
    public void Leads_that_were_not_taken_off_count_against_a_low_check(double noted, double leads, CheckEnd end)
    {
        var readings = WireBench.Unit(Twin, [WireBench.Value(Twin, "blades", noted)]);
        var blades = Reference.Twin160.FindReading("blades")!;
        Assert.Equal(end, Gates.EndOf(readings with { Doubts = CheckDoubts.None with { LeadOhms = leads } }, blades));
    }
}
