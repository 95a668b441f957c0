using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>The estimate on paper, as it was made.</summary>
public class EstimatePaperTests
{
    private static readonly EstimateMade Made = new(
        [new("Roller of track 1: replace", 17.3, 5.10m, 71, false), new("Looks, lettering", 20, 3m, 100, true)],
        79,
        106,
        72,
        104,
        120,
        [new("the arm breaks", 20)],
        new(2026, 4, 13)
    );

    private static string Text(params Fact[] facts) =>
        Estimate.Make(PaperUnits.Matter("twin-175", [new TakenIn("F-1", "twin-175", "A. Brass", ""), .. facts])).Text;

    [Fact]
    public void It_says_the_range_the_line_the_stops_and_how_long_it_holds()
    {
        var text = Text(Made);
        Assert.Contains("$79–$106", text, StringComparison.Ordinal);
        Assert.Contains("Above $120.00 we ask you first. This estimate holds until 13 Apr 2026.", text, StringComparison.Ordinal);
        Assert.Contains("Roller of track 1: replace | 17 min | $5.10 | if needed, 71 of 100", text, StringComparison.Ordinal);
        Assert.Contains("The arm breaks: you pay $20.00.", text, StringComparison.Ordinal);
        Assert.True(
            text.IndexOf("For looks alone", StringComparison.Ordinal) < text.IndexOf("Lettering | 20 min", StringComparison.Ordinal)
        );
        Assert.Contains("Date, owner", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_owners_word_stands_on_it_when_it_came_after()
    {
        var said = new GoAheadGiven(new(2026, 3, 15), "by phone", 120, "keep the old knobs");
        Assert.Contains(
            "Go-ahead by phone on 15 Mar 2026, up to $120.00: “keep the old knobs”",
            Text(Made, said),
            StringComparison.Ordinal
        );
        // A word on an earlier estimate is none on this one.
        Assert.Contains("Date, owner", Text(said, Made), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_one_was_made_it_says_so() => Assert.Contains("No estimate was made yet.", Text(), StringComparison.Ordinal);
}
