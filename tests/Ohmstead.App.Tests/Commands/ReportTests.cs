using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;

namespace Ohmstead.App.Tests.Commands;

/// <summary>What a person reads: verdicts in words, what cannot be told, what comes next and with what care.</summary>
public sealed class ReportTests
{
    private static readonly Lazy<string> Example = new(() => Text("example"));

    [Fact]
    public void The_example_finds_what_was_put_into_it_and_explains_itself()
    {
        // Put in: disc:high-drop=2.6, rotary-1-a:resistive=0.8, roller-2:worn=1.1 (the notes of its readings file).
        Assert.Matches(@"> 99 %  Weak whistle disc", Example.Value);
        Assert.Matches(@"> 99 %  Dirty direction contact A, track 1", Example.Value);
        Assert.Matches(@"[▏▎▍▌▋▊▉█] +\d\d %  Worn roller, track 2", Example.Value);
        Assert.Matches(@"Could be any: .*worn roller, track 2", Example.Value);
        Assert.Contains("How to read this", Example.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Verdicts_are_words_beside_band_and_measured_value()
    {
        Assert.Matches(@"! load-1 +14\.77 V +17\.2–18\.2 V +2\.5 V low", Example.Value);
        Assert.Matches(@"  blades-posts +OL +OL +passed", Example.Value);
        Assert.Contains(
            "Not taken: All posts to the core, 500 V: the tester's second lead is broken",
            Example.Value,
            StringComparison.Ordinal
        );
        Assert.Contains("Symptom: The train on track 2 slows with cars behind it: yes", Example.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_next_reading_says_why_and_mains_come_with_a_caution()
    {
        var next = Example.Value[Example.Value.IndexOf("Best next readings", StringComparison.Ordinal)..];
        var of = next[next.IndexOf("\n  load-2-b ", StringComparison.Ordinal)..];
        var lines = of.Split('\n')[1..].TakeWhile((l, n) => n == 0 || l.StartsWith("     ", StringComparison.Ordinal)).ToList();
        var block = System.Text.RegularExpressions.Regex.Replace(string.Join(' ', lines), @"\s+", " ").Trim();
        Assert.Matches(@"^load-2-b Post 2, full throttle, direction at B, 4 Ω load 1 min about \S+ V if ", block);
        // Both faults that it tells apart are named with their volts, each once.
        Assert.Single(
            System.Text.RegularExpressions.Regex.Matches(block, @"\b17\.\d V if (\w[^;]* or )?dirty direction contact A, track 2\b")
        );
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(block, @"\b14\.\d V if (\w[^;]* or )?worn roller, track 2\b"));
        Assert.EndsWith(
            string.Concat(CautionTable.OfReading(TwinReading("load-2-b")).Select(c => $" CAUTION: {c}")),
            block,
            StringComparison.Ordinal
        );
        Assert.All(next.Split('\n'), l => Assert.DoesNotMatch(@"[\p{L}\d] $|^\s+[;,.]", l));
    }

    [Fact]
    public void It_says_under_what_it_concludes_and_never_that_a_unit_is_safe()
    {
        Assert.Contains("Chances: common practice, no source", Example.Value, StringComparison.Ordinal);
        Assert.Contains("no certification", Example.Value, StringComparison.Ordinal);
        foreach (var claim in new[] { "is safe to", "unit is safe.", "safe to use", "passed as safe" })
            Assert.DoesNotContain(claim, Example.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void It_fits_a_hundred_columns_and_holds_no_colour() =>
        Assert.All(
            Example.Value.Split('\n'),
            line =>
            {
                Assert.True(line.Length <= 100, line);
                Assert.DoesNotContain('\e', line);
            }
        );

    [Fact]
    public void What_is_blocked_names_what_must_pass_first_and_what_failed()
    {
        var path = Tool.File(
            "failed.readings.json",
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "blades", "value": 4 }, { "id": "blades-posts", "value": "OL" },
              { "id": "insulation-core", "value": 1.2e6 }, { "id": "ohms-5", "value": "OL" } ] }
            """
        );
        var report = Text("diagnose", Tool.Sample, path);
        Assert.Matches(
            @"until these pass: Both blades to the core, 500 V; +Both blades to all posts, 500 V +lamp-60",
            report.ReplaceLineEndings(" ")
        );
        Assert.Matches(@"Both blades to the core, 500 V: failed: 1\.2 MΩ, the type sheet's limit, at\s+least 2\.00 MΩ", report);
        Assert.Matches(@"! ohms-5 +OL +0\.022–0\.143 Ω +OL: open", report);
    }

    [Fact]
    public void A_failed_check_is_called_failed_and_one_too_close_is_not()
    {
        var path = Tool.File(
            "checks.readings.json",
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "insulation-core", "value": 20e3 }, { "id": "insulation-posts", "value": 2.05e6 } ] }
            """
        );
        var report = Text("diagnose", Tool.Sample, path);
        Assert.DoesNotContain("a little", report, StringComparison.Ordinal);
        Assert.Matches(@"! insulation-core +20 kΩ +\S+ MΩ +failed: at least 2\.00 MΩ", report);
        Assert.Matches(@"! insulation-posts +2\.05 MΩ +\S+ MΩ +too close for this meter", report);
        Assert.Matches(
            @"Both blades to the core, 500 V, 20 kΩ: It fails the type sheet's limit, at least 2\.00 MΩ\. Do not plug it in\.",
            System.Text.RegularExpressions.Regex.Replace(report, @"\s+", " ")
        );
    }

    [Fact]
    public void A_waived_check_is_shown_with_every_reading_that_rests_on_it()
    {
        var path = Tool.File(
            "waived.readings.json",
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "blades", "value": 4 }, { "id": "blades-posts", "value": "OL" },
              { "id": "insulation-core", "value": 2e8 }, { "id": "lamp-60", "value": 108 },
              { "id": "insulation-posts", "value": null, "why": "no insulation tester", "waived": { "by": "M. Example", "instead": "a new cord" } } ] }
            """
        );
        var report = Text("diagnose", Tool.Sample, path).ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal);
        Assert.Contains(
            "Not taken: Both blades to all posts, 500 V: no insulation tester; WAIVED by M. Example",
            report,
            StringComparison.Ordinal
        );
        Assert.Contains("CAUTION: waived by M. Example, never taken: Both blades to all posts, 500 V", report, StringComparison.Ordinal);
    }

    [Fact]
    public void The_readme_shows_what_the_program_prints()
    {
        var readme = File.ReadAllText(Path.Combine(Tool.Root, "README.md"));
        var block = readme.Split("```text\n")[1].Split("```")[0];
        var report = Text("diagnose", Tool.Demo("twin-175.sheet.json"), Tool.Demo("twin-175.example.readings.json"));
        Assert.Equal(block.Trim(), report.ReplaceLineEndings("\n").Trim());
    }

    private static ReadingSpec TwinReading(string id) =>
        TypeSheetFile.Read(File.ReadAllText(Tool.Demo("twin-175.sheet.json"))).Required.FindReading(id)!;

    private static string Text(params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.True(code == 0, error);
        return output;
    }
}
