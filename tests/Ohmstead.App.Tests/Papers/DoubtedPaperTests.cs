using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>A doubted check and heat without a cause are open on every paper that goes with a unit.</summary>
public sealed class DoubtedPaperTests
{
    private const string Heat = "This unit makes about 11 W more heat than it should";

    private static PaperMatter Matter(string[] slips, params Doubt[] doubts)
    {
        var unit = PaperUnits.Unit(PaperUnits.Checked(PaperUnits.Repaired())) with
        {
            Doubts = new(1000, new([.. slips], 0), [.. slips.Select(s => new ProbableSlip(s, SlipKind.TimesTen, null, null, 0.9))], [.. doubts]),
        };
        return MatterMaker.Make(unit, PaperUnits.Sheet("twin-175"), PaperUnits.Shop, PaperUnits.Noon, _ => true);
    }

    private static string Text(Paper paper) => System.Text.RegularExpressions.Regex.Replace(Pdf.Text(Pdf.Of(paper)), @"\s+", " ");

    [Fact]
    public void Without_a_doubt_the_unit_may_be_plugged_in() => Assert.True(Matter([]).MayBePluggedIn);

    [Fact]
    public void Heat_without_a_cause_is_open_on_every_paper()
    {
        var matter = Matter([], new Doubt(DoubtAbout.Internal, 0.8, 11.2, [], []));
        Assert.False(matter.MayBePluggedIn);
        foreach (var paper in new[] { ServiceRecord.Make(matter), OwnerPage.Make(matter, 5), BenchSheet.Make(matter, []), WiringSheet.Make(matter) })
            Assert.Contains(Heat, Text(paper), StringComparison.Ordinal);
        Assert.Equal(Heat, Label.Make(matter).Words);
    }

    [Fact]
    public void A_doubted_check_counts_as_not_passed_and_is_no_test_that_was_made()
    {
        var matter = Matter(["blades"]);
        var line = matter.Lines.Single(l => l.Id == "blades");
        Assert.Contains($"To be read again: {line.Title}. It read {line.Measured}: possible slip, ten times too high.", Text(ServiceRecord.Make(matter)).Replace("\u00a0", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal($"{line.Title}: to be read again", Label.Make(matter).Words);
    }

    [Fact]
    public void Other_doubts_do_not_keep_a_unit_from_its_owner() =>
        Assert.True(Matter([], new Doubt(DoubtAbout.Line, 0.9, 116, [], []), new Doubt(DoubtAbout.Unit, 0.9, 4, [], [])).MayBePluggedIn);
}
