using System.Text.RegularExpressions;
using Ohmstead.App.Papers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Tests.Papers;

/// <summary>The owner's page in a second language.</summary>
public class OwnerPageLanguageTests
{
    private static readonly PageLanguage German = PageLanguage.OfCarried("deutsch")!;

    private static readonly LayoutStated Layout = new([new("post-0", "post-1", [new("motor", 2), new("lamp", 4)], null)]);

    public static TheoryData<string, string> States() =>
        new()
        {
            { "repaired", Shop.Letter },
            { "repaired", Shop.A4 },
            { "layout", Shop.Letter },
            { "too much", Shop.A4 },
            { "untested", Shop.Letter },
            { "failed", Shop.A4 },
            { "open", Shop.Letter },
            { "unknown", Shop.Letter },
        };

    private static JudgedUnit Matter(string state, string paper = Shop.Letter)
    {
        var shop = PaperUnits.Shop with { Paper = paper };
        JudgedUnit Made(string type, params IEnumerable<Fact> facts) => PaperUnits.Matter(type, shop, facts);
        var repaired = PaperUnits.Repaired();
        return state switch
        {
            "repaired" => Made("twin-175", PaperUnits.Checked(repaired)),
            "layout" => Made("twin-175", PaperUnits.Checked([.. repaired, Layout])),
            "too much" => Made(
                "twin-175",
                PaperUnits.Checked([.. repaired, new LayoutStated([new("post-0", "post-1", [new("motor", 9)], null)])])
            ),
            "untested" => Made("solo-110", new TakenIn("A-1", "solo-110", "", "dead")),
            "failed" => Made(
                "twin-175",
                [
                    new TakenIn("A-2", "twin-175", "", ""),
                    new ConditionNoted("cord", "crumbling, bare wire showing", Decision.Renew, ""),
                    new ReadingEntered("insulation-core", Shown.Number(0.4e6), BenchState.AsSheet),
                ]
            ),
            "open" => Made("twin-175", [.. repaired, new TakenOff(PaperUnits.Sheet("twin-175").TakeApart[0].Id, 1, 4, "")]),
            _ => UnitJudge.Make(PaperUnits.Unit([new TakenIn("A-1", "", "", "")]), null, shop, PaperUnits.Noon),
        };
    }

    [Theory]
    [MemberData(nameof(States))]
    public void The_german_file_has_every_key_of_the_page(string state, string paper) =>
        Assert.Empty(OwnerPage.Missing(Matter(state, paper), German));

    [Theory]
    [MemberData(nameof(States))]
    public void It_is_one_sheet_in_large_letters_and_every_caution_has_its_english_beside_it(string state, string paper)
    {
        var matter = Matter(state, paper);
        var page = PaperFiles.OnePage(matter, German);
        var pdf = Pdf.Of(page, paper);
        Pdf.Keep($"owner-deutsch-{state}-{paper}.pdf", pdf);
        // Cautions in two languages may take the back of the page too; a unit that is not to be plugged in has no table of what it runs.
        Assert.Matches(matter.MayBePluggedIn ? @"Pages:\s+[12]\n" : @"Pages:\s+1\n", Pdf.About(pdf));
        Assert.All(Pdf.Sizes(pdf), points => Assert.True(points >= 14));
        var text = Regex.Replace(Pdf.Text(pdf), @"\s+", " ");
        // Every framed line of the English page stands on it, and at least as many lines besides.
        var english = OwnerPage.Make(matter, OwnerPage.Choices[^1]);
        var cautions = english
            .Blocks.OfType<Notice>()
            .SelectMany(n => n.Lines)
            .Where(l => !l.Contains("more in the", StringComparison.Ordinal));
        Assert.All(cautions.Append("Mains inside. Mains can kill."), line => Assert.Contains(line, text, StringComparison.Ordinal));
        Assert.Contains("Netzspannung im Gerät. Netzspannung kann töten.", text, StringComparison.Ordinal);
        Assert.Contains("Arbeiten am Netz: örtliche Vorschriften gehen vor.", text, StringComparison.Ordinal);
        Assert.Contains(
            matter.MayBePluggedIn ? "Kinder: nur mit einem Erwachsenen." : "Nicht einstecken, auch nicht ein einziges Mal.",
            text,
            StringComparison.Ordinal
        );
        if (!matter.MayBePluggedIn)
            Assert.Equal("Diesen Trafo nicht einstecken / Do not plug this unit in", page.Blocks.OfType<Masthead>().Single().Title);
    }

    [Fact]
    public void It_says_the_same_as_the_english_one_with_the_same_figures()
    {
        var matter = Matter("layout");
        var (own, english) = (OwnerPage.Make(matter, 5, German), OwnerPage.Make(matter, 5));
        Assert.Equal(("de", "en"), (own.Language, english.Language));
        Assert.Equal(english.Blocks.Select(b => b.GetType()), own.Blocks.Select(b => b.GetType()));
        var (ours, theirs) = (own.Blocks.OfType<Table>().Single(), english.Blocks.OfType<Table>().Single());
        Assert.Equal(theirs.Rows.Select(r => r.Cells[1]), ours.Rows.Select(r => r.Cells[1]));
        Assert.Equal(
            english.Blocks.OfType<Bars>().Single().Items.Select(b => b.Share),
            own.Blocks.OfType<Bars>().Single().Items.Select(b => b.Share)
        );
        Assert.Contains(own.Blocks.OfType<Bars>().Single().Items, b => b is { Value: "3.3 von 6.3 A", Beside: "Sicherung 4 A" });
    }

    [Fact]
    public void What_a_file_lacks_is_named_and_stays_english_on_the_page()
    {
        var matter = Matter("repaired");
        var less = German with { Words = German.Words.Remove("Your unit is back").Remove("Cord") };
        Assert.Equal(["Your unit is back", "Cord"], OwnerPage.Missing(matter, less));
        var text = OwnerPage.Make(matter, 5, less).Text;
        Assert.Contains("Your unit is back", text, StringComparison.Ordinal);
        Assert.Contains("Cord: ersetzt.", text, StringComparison.Ordinal);
    }
}
