using System.Text.RegularExpressions;
using Ohmstead.App.Tests.Papers;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Papers;

namespace Ohmstead.App.Tests;

/// <summary>No id of a sheet is shown to a person, unless it is a word: on papers and at the command line, for every sheet that comes along.</summary>
public sealed partial class NoIdsTests
{
    public static TheoryData<string> Sheets { get; } = new("solo-110", "twin-175", "step-230");

    /// <summary>Ids that a person may read: they have no hyphen, or are not of the sheet at all.</summary>
    [GeneratedRegex(@"^\s*!?\s*(\S+)")]
    private static partial Regex FirstColumn();

    public static IEnumerable<TheoryDataRow<string, string>> Lines() =>
        Sheets
            .SelectMany(
                s =>
                    new[]
                    {
                        "check",
                        "predict",
                        "predict --fault FAULT",
                        "diagnose READINGS",
                        "plan --reach STEP",
                        "rewire",
                        "rewire READINGS",
                        "continuity",
                        "fit READINGS",
                    },
                (s, line) => new TheoryDataRow<string, string>(s.Data, line)
            )
            // The largest sheet takes as long as the other two.
            .Select(row => row.Data is ("step-230", not "check") ? row.WithTrait("kind", "long") : row);

    [Theory]
    [MemberData(nameof(Lines))]
    public void No_verb_says_an_id_but_in_a_column_of_its_own_nor_counts_nothing(string id, string line)
    {
        var sheet = Tool.Demo($"{id}.sheet.json");
        var read = TypeSheetFile.Read(File.ReadAllText(sheet)).Required;
        var readings = Tool.File(
            "some.readings.json",
            $$"""
            { "ohmstead": "readings/1", "sheet": "{{id}}", "readings": [ { "id": "{{read.Readings[
                0
            ].Id}}", "value": 900 }, { "id": "{{read.Readings[2].Id}}", "value": 1.2e6 },
              { "id": "{{read.Readings[
                3
            ].Id}}", "value": null, "why": "no tester", "waived": { "by": "M. Example", "instead": "a look" } } ],
              "told": { "{{read.Observations[0].Id}}": "yes" } }
            """
        );
        var words = line.Split(' ');
        var (code, output, error) = Tool.RunOnce([
            words[0],
            sheet,
            .. words[1..]
                .Select(w =>
                    w switch
                    {
                        "FAULT" => read.Elements.OfType<Rectifier>().First().Id + ":high-drop",
                        "STEP" => read.TakeApart[^2].Id,
                        "READINGS" => readings,
                        _ => w,
                    }
                ),
        ]);
        Assert.True(code == 0, error);
        var (ids, shown) = (Ids(read), new List<string> { SillyCounts.In(output) is { Length: > 0 } silly ? $"{words[0]}: {silly}" : "" });
        foreach (var said in output.Split('\n'))
        {
            // A line of nothing but ids is a column too.
            if (said.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(w => read.FindReading(w) is not null))
                continue;
            var first = FirstColumn().Match(said).Groups[1].Value;
            var rest =
                read.FindReading(first) is null && read.TakeApart.All(s => s.Id != first)
                    ? said
                    : said[(said.IndexOf(first, StringComparison.Ordinal) + first.Length)..];
            shown.Add(Shows(ids, rest, words[0]));
        }
        Nothing(shown);
    }

    [Fact]
    public void The_example_says_no_id_but_in_a_column_of_its_own()
    {
        var read = TypeSheetFile.Read(File.ReadAllText(Tool.Demo("twin-175.sheet.json"))).Required;
        var ids = Ids(read);
        Nothing(
            Tool.RunOnce("example")
                .Out.Split('\n')
                .Select(line =>
                    Shows(
                        ids,
                        FirstColumn().Match(line) is { Success: true } m && read.FindReading(m.Groups[1].Value) is not null
                            ? line[m.Length..]
                            : line,
                        "example"
                    )
                )
        );
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void No_paper_shows_an_id(string id)
    {
        var matter = PaperUnits.Matter(
            id,
            id == "twin-175" ? PaperUnits.Checked(PaperUnits.Repaired()) : [new TakenIn("F-1", id, "an owner", "it hums")]
        );
        var read = TypeSheetFile.Read(File.ReadAllText(Tool.Demo($"{id}.sheet.json"))).Required;
        var ids = Ids(read);
        Nothing(
            PaperTable
                .All.SelectMany(p => p.Lengths(matter))
                .SelectMany(paper => Pdf.Text(Pdf.Of(paper)).Split('\n').Select(line => Shows(ids, line, paper.Title)))
        );
    }

    /// <summary>The ids of a sheet that are no words: those with a hyphen, and the modes that are words of the file alone.</summary>
    internal static IReadOnlyList<string> Ids(TypeSheet sheet) =>
        [
            .. sheet
                .Elements.SelectMany(e => new[] { e.Id, e.From, e.To }.Concat(e.OtherTerminals))
                .Concat(sheet.Windings.SelectMany(w => w.Sliders).Select(s => s.Id))
                .Concat(sheet.Controls.SelectMany(c => c.Positions.Append(c.Id)))
                .Concat(sheet.Readings.Select(r => r.Id))
                .Concat(sheet.TakeApart.Select(s => s.Id))
                .Concat(sheet.Observations.Select(o => o.Id))
                .Concat(sheet.Elements.SelectMany(e => e.Kind.Faults()).Select(m => m.Mode))
                .Where(i => i.Contains('-', StringComparison.Ordinal))
                .Append("resistive")
                .Append("drifted")
                .Distinct(StringComparer.Ordinal),
        ];

    /// <summary>Where a text shows one of these ids, in words; empty for a text that shows none.</summary>
    internal static string Shows(IReadOnlyList<string> ids, string text, string where) =>
        ids.FirstOrDefault(i => text.Contains(i, StringComparison.Ordinal) && Regex.IsMatch(text, $@"(?<![\w-]){Regex.Escape(i)}(?![\w-])"))
            is { } id
            ? $"{where}: \"{id}\" in: {text.Trim()}"
            : "";

    internal static void Nothing(IEnumerable<string> shown) =>
        Assert.Empty(shown.Where(s => s.Length > 0).Distinct(StringComparer.Ordinal));
}
