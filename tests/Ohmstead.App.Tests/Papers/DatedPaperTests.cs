using System.Text.RegularExpressions;
using Ohmstead.App.Papers;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests.Papers;

/// <summary>How old a unit is, on the papers that go home with it.</summary>
public class DatedPaperTests
{
    private static readonly KindDates Dates = new(
        1946,
        1955,
        [
            new("vents", "Vents", "", 3, "", [new("slots", "slots", null, 1949, 0), new("round", "round holes", 1950, null, 0)]),
            new("cord", "Cord", "", 60, "", [new("cloth", "cloth", null, 1950, 1), new("plastic", "gray plastic", 1961, null, 1)]),
        ]
    );

    private static readonly PageLanguage German = PageLanguage.OfCarried("deutsch")!;

    private static Workshop.Job.JudgedUnit Matter(params Fact[] seen)
    {
        var matter = PaperUnits.Matter("twin-175", [new TakenIn("0501", "twin-175", "an owner", "hums"), .. seen]);
        return matter with { Dated = DatedUnit.Of(matter.Unit, Dates, 2026) };
    }

    private static string TextOf(Paper paper) => Regex.Replace(Pdf.Text(Pdf.Of(paper, "A4")), @"\s+", " ");

    [Fact]
    public void The_owner_reads_between_which_years_it_was_made_in_both_languages()
    {
        var matter = Matter(
            new DetailSeen("vents", "round", "Vents", "round holes"),
            new DetailSeen("cord", "plastic", "Cord", "gray plastic")
        );
        Assert.Contains("Probably made between 1950 and 1955.", TextOf(OwnerPage.Make(matter, 2)), StringComparison.Ordinal);
        Assert.Contains("Vermutlich gebaut zwischen 1950 und 1955.", TextOf(OwnerPage.Make(matter, 2, German)), StringComparison.Ordinal);
        Assert.Empty(OwnerPage.Missing(matter, German));
        var record = TextOf(ServiceRecord.Make(matter));
        Assert.Contains("How old it is", record, StringComparison.Ordinal);
        Assert.Matches("Cord gray plastic more than 99 in 100", record);
        Assert.Matches("Vents round holes [0-9] in 100", record);
        Assert.Contains(matter.Dated!.Sentence, record, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_said_before_something_was_seen_or_where_it_narrows_nothing()
    {
        foreach (var matter in new[] { Matter(), Matter(new DetailSeen("vents", DetailSeen.CannotTell, "Vents", "")) })
        {
            Assert.DoesNotContain("robably made", TextOf(OwnerPage.Make(matter, 2)), StringComparison.Ordinal);
            Assert.DoesNotContain("How old it is", TextOf(ServiceRecord.Make(matter)), StringComparison.Ordinal);
        }
        var one = Matter() with
        {
            Dated = DatedUnit.Of(
                Matter(new DetailSeen("vents", "slots", "", "")).Unit,
                Dates with
                {
                    LastYear = 1950,
                    FirstYear = 1949,
                },
                2026
            ),
        };
        Assert.Contains("Probably made in 1949.", TextOf(OwnerPage.Make(one, 2)), StringComparison.Ordinal);
        Assert.Contains("Vermutlich gebaut 1949.", TextOf(OwnerPage.Make(one, 2, German)), StringComparison.Ordinal);
    }
}
