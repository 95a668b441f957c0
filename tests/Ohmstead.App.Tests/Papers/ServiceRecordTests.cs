using System.Text.RegularExpressions;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Tests.Papers;

public partial class ServiceRecordTests
{
    [GeneratedRegex(@"\bsafe(ly|ty)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex Safe();

    private static string[] Pages(byte[] pdf) => Pdf.Text(pdf).Split('\f', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The words without their lines.</summary>
    private static string Flat(byte[] pdf) => Regex.Replace(Pdf.Text(pdf), @"\s+", " ");

    [Fact]
    public void The_record_of_a_repaired_unit_says_what_was_wrong_done_read_and_left()
    {
        var pdf = Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("twin-175", PaperUnits.Checked(PaperUnits.Repaired()))));
        Pdf.Keep("repaired.pdf", pdf);
        var pages = Pages(pdf);
        string[] owner =
        [
            "Bench No. 7",
            "F-041",
            "R. Example",
            "What was wrong",
            "What was done",
            "What it can run",
            "122 W",
            "How to use it",
            "What was not tested",
            "Cautions",
            "Received, date",
        ];
        // What is promised stands before the page is turned; only how to use it and the signatures may run over, and nothing is lost on the way.
        Assert.All(owner[..7], words => Assert.Contains(words, pages[0], StringComparison.Ordinal));
        Assert.All(owner[7..], words => Assert.Contains(words, pages[0] + pages[1], StringComparison.Ordinal));
        Assert.StartsWith("Found and done", pages[2].TrimStart(), StringComparison.Ordinal);
        var opening = Regex.Replace(Regex.Replace(pages[0] + pages[1], @"Tests recorded on this date[^\n]*\n", "\n"), @"\s+", " ");
        Assert.All(
            PaperFold
                .Flat(
                    ServiceRecord
                        .Make(PaperUnits.Matter("twin-175", PaperUnits.Checked(PaperUnits.Repaired())))
                        .Blocks.TakeWhile(b => b is not NewPage)
                )
                .OfType<Points>()
                .SelectMany(p => p.Items),
            line => Assert.Contains(line, opening, StringComparison.Ordinal)
        );
        var text = Flat(pdf);
        string[] record =
        [
            "Waived in writing",
            "Waived by J. Bench",
            "found",
            "not this",
            "replaced, same part",
            "Cord: replaced.",
            "hard but whole",
            "Roller 2 is worn",
            "line voltage 121.4 V",
            "14.31 V",
            "1: crack at the boss",
            "2: nut",
            "Photo missing",
        ];
        Assert.All(record, words => Assert.Contains(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_page_says_that_nothing_is_certified_and_bears_the_tag()
    {
        var pages = Pages(Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("twin-175", PaperUnits.Repaired()))));
        Assert.True(pages.Length > 3);
        Assert.All(pages, p => Assert.Contains("Tests recorded on this date. No certification.", p, StringComparison.Ordinal));
        Assert.All(pages, p => Assert.Contains("F-041", p, StringComparison.Ordinal));
    }

    public static TheoryData<string> Kinds() => ["twin-175", "solo-110", "step-230"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_paper_calls_a_unit_safe(string sheet)
    {
        var matter = PaperUnits.Matter(sheet, new TakenIn("A-1", sheet, "", ""));
        var facts = PaperUnits.Matter("twin-175", PaperUnits.Repaired());
        Assert.All(
            new[] { ServiceRecord.Make(matter), BenchSheet.Make(matter, []), ServiceRecord.Make(facts), BenchSheet.Make(facts, []) },
            p => Assert.DoesNotMatch(Safe(), Pdf.Text(Pdf.Of(p)))
        );
    }

    /// <summary>A shop that asks for 500 MΩ: 357 MΩ passed by the sheet, and fails here.</summary>
    [Fact]
    public void The_shops_stricter_limit_is_named_on_every_paper_that_it_keeps_from_promising()
    {
        var facts = PaperUnits.Checked(PaperUnits.Repaired());
        var strict = PaperUnits.Shop with
        {
            Limits = [.. PaperUnits.Shop.Limits.Select(l => l.Id == "insulation" ? l with { Value = 500e6 } : l)],
        };
        Assert.True(PaperUnits.Matter("twin-175", facts).MayBePluggedIn);
        var matter = PaperUnits.Matter("twin-175", strict, facts);
        Assert.False(matter.MayBePluggedIn);
        foreach (
            var paper in new[]
            {
                OwnerPage.Make(matter, 5),
                ServiceRecord.Make(matter),
                BenchSheet.Make(matter, []),
                WiringSheet.Make(matter),
            }
        )
            Assert.Contains("It read 357 MΩ. The shop's limit, at least 500 MΩ.", paper.Text, StringComparison.Ordinal);
    }

    /// <summary>What a person typed as a tag is the title of the file, not a part of its syntax.</summary>
    [Theory]
    [InlineData("a) (b \\ c")]
    [InlineData("<</Title (x)>>")]
    [InlineData("12\n) /Author (me")]
    public void A_tag_of_brackets_and_backslashes_is_only_a_title(string tag)
    {
        var pdf = Pdf.Of(BenchSheet.Make(PaperUnits.Matter("solo-110", new TakenIn(tag, "solo-110", "", "")), []));
        Assert.Equal(
            $"Bench sheet, {tag.Replace('\n', ' ')}",
            Regex.Match(Pdf.About(pdf), @"^Title:\s+(.*)$", RegexOptions.Multiline).Groups[1].Value.TrimEnd()
        );
        Assert.DoesNotMatch(@"^Author:\s+me", Pdf.About(pdf));
    }

    [Fact]
    public void A_unit_whose_cold_checks_were_left_out_is_not_to_be_plugged_in()
    {
        var pdf = Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("solo-110", new TakenIn("A-1", "solo-110", "", "dead"))));
        Pdf.Keep("untested.pdf", pdf);
        var first = Pages(pdf)[0];
        Assert.Contains("Do not plug this unit in.", first, StringComparison.Ordinal);
        Assert.Contains("counts as not passed", first, StringComparison.Ordinal);
        Assert.DoesNotContain("What it can run", Pdf.Text(pdf), StringComparison.Ordinal);
        Assert.Contains("No reading was taken", Pdf.Text(pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void A_failed_cold_check_is_named_with_what_was_read_and_asked_for()
    {
        var bench = BenchState.AsSheet;
        var matter = PaperUnits.Matter(
            "twin-175",
            [.. PaperUnits.Repaired(), new ReadingEntered("insulation-core", Shown.Number(1.4e6), bench)]
        );
        Assert.Contains(
            "Failed: Both blades to the core, 500 V. It read 1.4 MΩ. The type sheet's limit, at least 2.00 MΩ.",
            Pages(Pdf.Of(ServiceRecord.Make(matter)))[0],
            StringComparison.Ordinal
        );
    }

    /// <summary>2.05 MΩ ± (5 % + 20 kΩ) reaches below 2 MΩ.</summary>
    [Fact]
    public void A_check_too_close_for_the_meter_keeps_the_unit_unplugged()
    {
        var matter = PaperUnits.Matter(
            "twin-175",
            [.. PaperUnits.Repaired(), new ReadingEntered("insulation-core", Shown.Number(2.05e6), BenchState.AsSheet)]
        );
        Assert.False(matter.MayBePluggedIn);
        var first = Pages(Pdf.Of(ServiceRecord.Make(matter)))[0];
        Assert.Contains("Do not plug this unit in.", first, StringComparison.Ordinal);
        Assert.Contains("Too close for the meter: Both blades to the core, 500 V. It read 2.05 MΩ.", first, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_soldered_is_not_to_be_plugged_in_before_its_check_and_what_was_looked_at_is_told()
    {
        string[] Words(IEnumerable<Fact> facts) =>
            [.. Pages(Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("twin-175", facts)))).Select(p => Regex.Replace(p, @"\s+", " "))];
        var before = Words(PaperUnits.Repaired())[0];
        Assert.Contains("Do not plug this unit in.", before, StringComparison.Ordinal);
        Assert.Contains("the wiring check has not passed", before, StringComparison.Ordinal);
        var after = Words(PaperUnits.Checked(PaperUnits.Repaired()));
        Assert.DoesNotContain("Do not plug this unit in.", after[0], StringComparison.Ordinal);
        Assert.Contains("Some wiring was only looked at.", after[0], StringComparison.Ordinal);
        Assert.Contains("the hubs: bare. By J. Bench.", string.Join(' ', after), StringComparison.Ordinal);
    }

    [Fact]
    public void A_waiver_of_a_cold_check_lets_the_page_go_on_in_full_words()
    {
        Fact[] facts =
        [
            .. PaperUnits.Repaired().Where(f => f is not ReadingEntered { ReadingId: "insulation-core" }),
            new ReadingWaived("insulation-core", "No insulation tester here", "J. Bench", "blades to core with the ohmmeter: OL"),
        ];
        var matter = PaperUnits.Matter("twin-175", PaperUnits.Checked(facts));
        Assert.True(matter.MayBePluggedIn);
        foreach (var paper in new[] { ServiceRecord.Make(matter), BenchSheet.Make(matter, []) })
        {
            var words = Regex.Replace(Pages(Pdf.Of(paper))[0], @"\s+", " ");
            Assert.Contains(
                "Both blades to the core, 500 V: No insulation tester here. Waived by J. Bench. Done instead: blades to core with the ohmmeter: OL.",
                words,
                StringComparison.Ordinal
            );
        }
    }

    [Theory]
    [InlineData(Shop.Letter, "612 x 792 pts (letter)")]
    [InlineData(Shop.A4, "595.276 x 841.89 pts (A4)")]
    public void The_paper_is_the_shop_s(string size, string told)
    {
        var pdf = Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("twin-175", PaperUnits.Repaired())), size);
        Pdf.Keep($"{size}.pdf", pdf);
        Assert.Contains(told, Pdf.About(pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_in_many_letters_script_and_without_end_are_only_words()
    {
        var owner = "Łukasz Śćiński-Ωmega Ёлкина 山田 <script>alert(1)</script> " + new string('x', 300);
        var pdf = Pdf.Of(
            ServiceRecord.Make(
                PaperUnits.Matter(
                    "twin-175",
                    PaperUnits.Repaired(owner, string.Join(' ', Enumerable.Repeat("it hums\t\u202eand \ud83d\ude00 smells", 60)))
                )
            )
        );
        Pdf.Keep("names.pdf", pdf);
        var text = Flat(pdf);
        Assert.Contains("Łukasz Śćiński-Ωmega Ёлкина □□ <script>alert(1)</script>", text, StringComparison.Ordinal);
        Assert.Contains("it hums and □ smells", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sixty_readings_run_over_pages_and_each_has_its_header()
    {
        var notes = Enumerable
            .Range(1, 40)
            .Select(n => new Noted($"Note of the bench, number {n.ToString(System.Globalization.CultureInfo.InvariantCulture)}"));
        var pdf = Pdf.Of(ServiceRecord.Make(PaperUnits.Matter("twin-175", [.. PaperUnits.Repaired(), .. notes])));
        Pdf.Keep("many.pdf", pdf);
        var withRows = Pages(pdf)
            .Where(p => p.Contains("normal", StringComparison.Ordinal) && p.Contains('Ω', StringComparison.Ordinal))
            .ToList();
        Assert.True(withRows.Count >= 2);
        Assert.All(withRows, p => Assert.Contains("Verdict", p, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_circuit_stands_in_the_record_with_the_names_of_its_posts(string sheet)
    {
        var matter = PaperUnits.Matter(sheet, new TakenIn("A-1", sheet, "", ""));
        var pdf = Pdf.Of(ServiceRecord.Make(matter));
        Pdf.Keep($"circuit-{sheet}.pdf", pdf);
        var page = Pages(pdf).Single(p => p.Contains("The circuit", StringComparison.Ordinal));
        var posts = matter.Sheet!.Readings.Where(r => r.IsGate).SelectMany(r => r.State.Joined).SelectMany(g => g).Distinct().ToList();
        Assert.NotEmpty(posts);
        Assert.All(
            posts.SelectMany(post => Sentences.Bare(PartNames.Terminal(matter.Sheet, post)).Split(' ')),
            word => Assert.Contains(word, page, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void The_same_paper_at_the_same_time_has_the_same_words()
    {
        var paper = ServiceRecord.Make(PaperUnits.Matter("twin-175", PaperUnits.Repaired()));
        Assert.Equal(Pdf.Text(Pdf.Of(paper)), Pdf.Text(Pdf.Of(paper)));
    }

    [Fact]
    public void The_bench_sheet_has_every_reading_with_its_band_and_hazard()
    {
        var matter = PaperUnits.Matter("twin-175", new TakenIn("A-1", "twin-175", "", ""));
        var pdf = Pdf.Of(BenchSheet.Make(matter, []));
        Pdf.Keep("bench.pdf", pdf);
        var text = Flat(pdf);
        Assert.All(matter.Lines, l => Assert.Contains(l.Expected, text, StringComparison.Ordinal));
        Assert.Contains("Caution: 500 V at the clips: hands off, discharge afterward", text, StringComparison.Ordinal);
        Assert.Contains("Passes inside the type sheet's limit, at least 2.00 MΩ", text, StringComparison.Ordinal);
        // The table's cautions stand once for the page, but for what stands under its reading.
        foreach (var caution in CautionTable.For(Act.FeedMains).Concat(CautionTable.For(Act.FeedLow)).Concat(CautionTable.For(Act.Load)))
            Assert.Equal(1, Regex.Count(text, Regex.Escape(caution)));
        Assert.DoesNotContain(CautionTable.For(Act.TestInsulation)[0], text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_of_no_known_kind_has_a_record_that_judges_nothing()
    {
        var unit = PaperUnits.Unit([new TakenIn("A-1", "", "", ""), new ReadingEntered("full-1", Shown.Number(19), BenchState.AsSheet)]);
        var text = Pdf.Text(Pdf.Of(ServiceRecord.Make(UnitJudge.Make(unit, null, PaperUnits.Shop, PaperUnits.Noon))));
        Assert.Contains("Do not plug this unit in.", text, StringComparison.Ordinal);
    }
}
