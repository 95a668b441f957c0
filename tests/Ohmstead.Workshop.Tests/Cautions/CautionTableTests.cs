using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Tests.Drawing;

namespace Ohmstead.Workshop.Tests.Cautions;

public partial class CautionTableTests
{
    private static readonly TypeSheet Twin = DrawnSheets.Sheet("demo/twin-175.sheet.json");

    [GeneratedRegex(@"\b(safe(ly)?|harmless|certified|stands?|anew|iron|hood|renew(ed)?|direct)\b", RegexOptions.IgnoreCase)]
    private static partial Regex NeverSaid();

    private static string OfRepair(string id) => string.Join(' ', CautionTable.OfRepair(Twin, id));

    private static string OfStep(string id) => string.Join(' ', CautionTable.OfStep(Twin, Twin.TakeApart.Single(s => s.Id == id)));

    private static string OfReading(string id) => string.Join(' ', CautionTable.OfReading(Twin.FindReading(id)!));

    public static TheoryData<string> Hazards() =>
        [
            "mains",
            "kick",
            "hot",
            "selenium",
            "lead",
            "asbestos",
            "carbon dust",
            "phenolic dust",
            "eyes",
            "insulation tester",
            "variable transformer",
            "polarized plug",
            "phase",
            "ground fault",
            "back feed",
        ];

    [Theory]
    [MemberData(nameof(Hazards))]
    public void Every_hazard_of_the_bench_has_a_row_that_some_act_finds(string hazard)
    {
        var row = Assert.Single(CautionTable.All.Where(c => c.Hazard == hazard).Take(1));
        Assert.NotEmpty(row.Acts);
        var part = row.Parts.IsEmpty ? "" : row.Parts[0];
        Assert.All(row.Acts, act => Assert.Contains(row.Words, CautionTable.For(act, part)));
    }

    [Fact]
    public void No_caution_says_a_word_that_the_trade_does_not()
    {
        Assert.All(
            CautionTable.All,
            c => Assert.DoesNotMatch(NeverSaid(), c.Words.Replace("direct current", "DC", StringComparison.Ordinal))
        );
        Assert.DoesNotMatch(NeverSaid(), CautionTable.LocalCodes);
    }

    [Fact]
    public void A_repair_is_warned_of_what_that_part_holds_and_of_nothing_else()
    {
        Assert.Contains("selenium", OfRepair("disc"), StringComparison.Ordinal);
        Assert.Contains("lead", OfRepair("disc"), StringComparison.Ordinal);
        Assert.Contains("asbestos", OfRepair("ballast"), StringComparison.Ordinal);
        var roller = Twin.Windings.SelectMany(w => w.Sliders).First().Id;
        Assert.Contains("Carbon dust", OfRepair(roller), StringComparison.Ordinal);
        Assert.Contains("eye protection", OfRepair(roller), StringComparison.Ordinal);
        Assert.DoesNotContain("lead", OfRepair(roller), StringComparison.Ordinal);
        Assert.Contains("polarized", OfRepair("cord-1"), StringComparison.Ordinal);
        Assert.Contains("hot post", OfRepair("cord-1"), StringComparison.Ordinal);
        // A wire inside is no cord.
        Assert.DoesNotContain("polarized", OfRepair("w-0"), StringComparison.Ordinal);
        Assert.DoesNotContain("selenium", OfRepair("w-0"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_is_warned_by_what_it_lifts_and_by_what_its_title_does()
    {
        Assert.Contains("selenium", OfStep("disc-out"), StringComparison.Ordinal);
        Assert.Contains("asbestos", OfStep("ballast-out"), StringComparison.Ordinal);
        Assert.Contains("Chips", OfStep("panel-rivets"), StringComparison.Ordinal);
        Assert.Contains("Phenolic", OfStep("panel-rivets"), StringComparison.Ordinal);
        Assert.Contains("Carbon dust", OfStep("roller-1-out"), StringComparison.Ordinal);
        Assert.Contains("flux", OfStep("post-leads"), StringComparison.Ordinal);
        Assert.Equal("", OfStep("knob-1"));
        // Whatever it is called: a wire that comes loose was soldered.
        var silent = Twin.TakeApart.Single(s => s.Id == "post-leads") with
        {
            Title = "Post wires",
        };
        Assert.Contains(CautionTable.OfStep(Twin, silent), c => c.Contains("Old solder holds lead", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_is_warned_by_what_feeds_and_loads_it()
    {
        Assert.Contains("500 V", OfReading("insulation-core"), StringComparison.Ordinal);
        Assert.Contains("clips on first", OfReading("full-1"), StringComparison.Ordinal);
        Assert.DoesNotContain("load", OfReading("full-1"), StringComparison.Ordinal);
        Assert.Contains("The load gets hot", OfReading("load-1"), StringComparison.Ordinal);
        Assert.Contains("series lamp", OfReading("lamp-60"), StringComparison.Ordinal);
        Assert.Contains("Feed the plug, never a post", OfReading("low-14"), StringComparison.Ordinal);
        Assert.Equal("", OfReading("blades"));
    }

    [Theory]
    [InlineData("demo/solo-110.sheet.json")]
    [InlineData("demo/step-230.sheet.json")]
    [InlineData("demo/twin-175.sheet.json")]
    public void Every_mains_reading_and_none_other_is_warned_of_mains(string path)
    {
        foreach (var reading in DrawnSheets.Sheet(path).Readings)
            Assert.Equal(
                reading.State.Source is { IsDirect: false, Volts: > 30 },
                CautionTable.OfReading(reading).Any(c => c.StartsWith("Mains on the unit", StringComparison.Ordinal))
            );
    }
}
