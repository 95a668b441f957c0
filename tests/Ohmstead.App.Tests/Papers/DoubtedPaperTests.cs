using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>A doubted check and heat without a cause are open on every paper that goes with a unit.</summary>
public sealed class DoubtedPaperTests
{
    private const string Heat = "This unit makes about 11 W more heat than it should";

    private static JudgedUnit Matter(string[] slips, params Doubt[] doubts)
    {
        var unit = PaperUnits.Unit(PaperUnits.Checked(PaperUnits.Repaired())) with
        {
            Doubts = new(
                1000,
                new([.. slips], 0),
                [.. slips.Select(s => new ProbableSlip(s, SlipKind.TimesTen, null, null, 0.9))],
                [.. doubts]
            ),
        };
        return UnitJudge.Make(unit, PaperUnits.Sheet("twin-175"), PaperUnits.Shop, PaperUnits.Noon, _ => true);
    }

    private static string Text(Paper paper) => System.Text.RegularExpressions.Regex.Replace(Pdf.Text(Pdf.Of(paper)), @"\s+", " ");

    [Fact]
    public void Without_a_doubt_the_unit_may_be_plugged_in() => Assert.True(Matter([]).MayBePluggedIn);

    [Fact]
    public void Heat_without_a_cause_is_open_on_every_paper()
    {
        var matter = Matter([], new Doubt(DoubtAbout.Internal, 0.8, 11.2, [], []));
        Assert.False(matter.MayBePluggedIn);
        foreach (var paper in PaperTable.All.SelectMany(p => p.Lengths(matter)))
            Assert.Contains(Heat, Text(paper), StringComparison.Ordinal);
        Assert.Equal(Heat, Label.Make(matter, Label.RecordOf(matter.Unit)).Words);
    }

    [Fact]
    public void A_doubted_check_counts_as_not_passed_and_is_no_test_that_was_made()
    {
        var matter = Matter(["blades"]);
        var line = matter.Lines.Single(l => l.Id == "blades");
        Assert.Contains(
            $"To be read again: {line.Title}. It read {line.Measured}: possible slip, ten times too high.",
            Text(ServiceRecord.Make(matter)).Replace("\u00a0", " ", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
        Assert.Equal($"{line.Title}: to be read again", Label.Make(matter, Label.RecordOf(matter.Unit)).Words);
    }

    [Theory]
    [InlineData(DoubtAbout.Line, 116, "The line voltage was probably 116 V, not 121 V. Read the outlet again")]
    [InlineData(DoubtAbout.Leads, 0.31, "Your test leads were probably not taken off: about 0.31 Ω. Touch the leads together")]
    [InlineData(DoubtAbout.Meter, 3, "Your meter is probably off: about 3 times its error. Put in a new battery.")]
    [InlineData(DoubtAbout.Unit, 4, "Probably another batch: this unit differs from its type sheet. Look for a different coil")]
    public void A_doubt_about_the_bench_is_on_every_paper_with_what_to_do(DoubtAbout about, double value, string said)
    {
        var matter = Matter([], new Doubt(about, 0.8, value, [], []));
        foreach (var paper in new[] { ServiceRecord.Make(matter), BenchSheet.Make(matter, []), WiringSheet.Make(matter) })
            Assert.Contains(said, Text(paper).Replace("\u00a0", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains(
            $"Not settled: {Workshop.Words.Sentences.Small(said[..said.IndexOf(". ", StringComparison.Ordinal)])}.",
            Text(OwnerPage.Make(matter, 5)).Replace("\u00a0", " ", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
    }

    /// <summary>Volts read on a line that is doubted are neither normal nor not.</summary>
    [Fact]
    public void The_owner_is_not_told_that_a_doubted_reading_is_not_normal()
    {
        JudgedUnit Of(params Doubt[] doubts) =>
            UnitJudge.Make(
                PaperUnits.Unit([
                    .. PaperUnits.Checked(PaperUnits.Repaired()),
                    new ReadingEntered("load-1", Shown.Number(14.6), BenchState.AsSheet),
                ]) with
                {
                    Doubts = new(1000, Electrical.Readings.CheckDoubts.None, [], [.. doubts]),
                },
                PaperUnits.Sheet("twin-175"),
                PaperUnits.Shop,
                PaperUnits.Noon,
                _ => true
            );
        const string dry = "Not normal: Both blades to the core, 500 V: passed, under 100 MΩ";
        string Page(params Doubt[] doubts) => Text(OwnerPage.Make(Of(doubts), 5)).Replace("\u00a0", " ", StringComparison.Ordinal);
        Assert.Contains($"{dry}; and 6 more", Page(), StringComparison.Ordinal);
        Assert.DoesNotContain("Doubted", Page(), StringComparison.Ordinal);
        // What a check asks for is the same for every batch.
        var batch = Page(new Doubt(DoubtAbout.Unit, 0.9, 4, [], []));
        Assert.Contains($"{dry}. Not settled: ", batch, StringComparison.Ordinal);
        Assert.Contains("Doubted and not judged: Post 1, full throttle, 4 Ω load; and 5 more", batch, StringComparison.Ordinal);
        Assert.Equal(["load-1"], Of(new Doubt(DoubtAbout.Line, 0.9, 111, ["load-1"], [])).Lines.Where(l => l.IsDoubted).Select(l => l.Id));
        // More heat says nothing against a reading.
        Assert.All(Of(new Doubt(DoubtAbout.Internal, 0.9, 11, ["load-1"], [])).Lines, l => Assert.False(l.IsDoubted));
    }

    [Fact]
    public void Other_doubts_do_not_keep_a_unit_from_its_owner() =>
        Assert.True(Matter([], new Doubt(DoubtAbout.Line, 0.9, 116, [], []), new Doubt(DoubtAbout.Unit, 0.9, 4, [], [])).MayBePluggedIn);
}
