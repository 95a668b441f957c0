using System.Diagnostics;
using System.Text.Json;
using Ohmstead.Electrical.Tests.TypeSheets;

namespace Ohmstead.App.Tests.Commands;

/// <summary><c>reckon</c> as a process: one object, or a table for a person; refused with path and reason.</summary>
public sealed class ReckonTests
{
    private static string Question(string name) => Path.Combine(Tool.Root, "tests/Reference/questions", name + ".question.json");

    private static string Made(string fields) => Tool.File("made.question.json", $"{{ \"ohmstead\": \"question/1\", {fields} }}");

    [Fact]
    public void The_answer_is_one_object_that_begins_with_its_question()
    {
        var answer = Tool.Json("reckon", Question("regulation"));
        Assert.Equal("question", answer.Fields()[0]);
        Assert.Equal("regulation", answer.Text("question"));
        // As worked out elsewhere: tests/Reference/questions/regulation.answer.json.
        Assert.Equal(0.27339, answer.Number("sourceOhms"), 1e-5);
    }

    [Fact]
    public void A_person_reads_words_and_units_and_where_local_codes_come_in()
    {
        var (code, output, error) = Tool.Run("reckon", Question("regulation"));
        Assert.Equal((0, ""), (code, error));
        Assert.Matches("(?m)^  No load, V +20\\.0$", output);
        Assert.Matches("(?m)^  5 +18\\.6 +7\\.34$", output);
        Assert.Contains("no rectifier lies in the path", output, StringComparison.Ordinal);
        Assert.Contains("local", output, StringComparison.Ordinal);
        Assert.DoesNotContain("{", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refused_question_prints_nothing_but_its_problems()
    {
        var path = Made(
            """
            "question": "regulation", "supplyVolts": "120,5", "points": [ { "amps": 1, "volts": -2 }, { "amps": 3, "volts": 4 } ], "atAmps": []
            """
        );
        Refusal.Expect(path, "$.supplyVolts: is the text \"120,5\"", "reckon", path, "--json");
        Refusal.Expect(path, "$.points[0].volts: is -2", "reckon", path);
    }

    [Fact]
    public void An_unknown_field_is_remarked_on_and_the_answer_comes_all_the_same()
    {
        var text = File.ReadAllText(Question("regulation")).Replace("\"atAmps\"", "\"atamps\": 3, \"atAmps\"", StringComparison.Ordinal);
        var (code, output, error) = Tool.Run("reckon", Tool.File("remarked.question.json", text), "--json");
        Assert.Equal(0, code);
        Assert.Contains("$.atamps", error, StringComparison.Ordinal);
        Assert.Equal("regulation", JsonDocument.Parse(output).RootElement.Text("question"));
    }

    [Fact]
    public void A_sheet_of_the_wrong_sort_is_refused_as_everywhere()
    {
        var sheet = Tool.Case("010");
        Refusal.Expect(sheet, "$.ohmstead", "reckon", Question("regulation"), "--sheet", sheet);
    }

    [Fact]
    public void A_question_of_a_sheet_is_answered_with_it_and_refused_without()
    {
        Refusal.Expect(Question("rectifier"), "$: needs a type sheet", "reckon", Question("rectifier"));
        var answer = Tool.Json("reckon", Question("rectifier"), "--sheet", Tool.Sample);
        // As worked out elsewhere: tests/Reference/questions/rectifier.answer.json.
        Assert.Equal(79.56, answer.List("parts")[2].Number("junctionCelsius"), 0.4);
        var (code, output, error) = Tool.Run("reckon", Question("rectifier"), "--sheet", Tool.Sample);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("silicon: the whistle holds at 4.8 Ω.", output, StringComparison.Ordinal);
        Assert.Contains("CAUTION: Fit no part with the plug in.", output, StringComparison.Ordinal);
    }

    /// <remarks>The ballast lies across the disc on the second step: one of three times the ohms leaves more DC there, and as much on the first.</remarks>
    [Fact]
    public void A_unit_file_changes_what_is_answered()
    {
        var unit = Tool.File(
            "ballast.unit.json",
            """
            { "ohmstead": "unit/1", "sheet": "twin-160", "changes": [ { "replace": { "id": "ballast-left", "kind": "resistor", "from": "disc-left-plate", "to": "ballast-left-end", "ohms": 4.2 } } ] }
            """
        );
        double Dc(string step, params string[] more) =>
            Tool.Json(["reckon", Question("rectifier"), "--sheet", Tool.Sample, .. more])
                .List("parts")[2]
                .List("loads")[2]
                .GetProperty(step)
                .Number("dcVolts");
        Assert.Equal(Dc("first"), Dc("first", "--unit", unit), 1e-6);
        Assert.True(Dc("second", "--unit", unit) > 1.5 * Dc("second"));
    }

    [Fact]
    public void A_unit_file_without_its_type_sheet_is_refused()
    {
        var (code, output, error) = Tool.Run("reckon", Question("regulation"), "--unit", Question("regulation"));
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("--unit: ", error, StringComparison.Ordinal);
    }

    /// <remarks>A limit without edition and clause, and with no most: none of the three has a line.</remarks>
    [Fact]
    public void What_is_not_known_has_no_line()
    {
        var (code, output, _) = Tool.Run("reckon", Question("verdict"));
        Assert.Equal(0, code);
        Assert.Matches("(?m)^ +Accept from +18\\.3$", output);
        Assert.Matches("(?m)^ +Verdict +close pass$", output);
        Assert.DoesNotMatch("(?m)^ *(Accept to|Edition|Clause)", output);
    }

    /// <remarks>As the core's own test of spoiled files, here with what a person reads of the answers.</remarks>
    [Fact]
    [Trait("kind", "long")]
    public void A_thousand_spoiled_files_end_in_time_with_an_answer_or_with_path_and_reason()
    {
        var (spoil, ends) = (new Mutation(new Random(4)), new Dictionary<int, int>());
        var files = Directory.GetFiles(Tool.Reference("questions"), "*.question.json").Order(StringComparer.Ordinal).ToArray();
        for (var n = 0; n < 1000; n++)
        {
            var path = Tool.File("spoiled.question.json", spoil.Spoil(File.ReadAllText(files[n % files.Length])));
            var began = Stopwatch.GetTimestamp();
            var (code, output, error) = Tool.Run([
                "reckon",
                path,
                "--sheet",
                Tool.Sample,
                .. n % 2 == 0 ? ["--json"] : Array.Empty<string>(),
            ]);
            Assert.True(Stopwatch.GetElapsedTime(began) < TimeSpan.FromSeconds(5), path);
            Assert.True(
                code == 0 ? output.Length > 0 : code == 2 && output.Length == 0 && error.StartsWith($"{path}: $", StringComparison.Ordinal),
                path + error
            );
            Refusal.NoTrace(error);
            ends[code] = ends.GetValueOrDefault(code) + 1;
        }
        Assert.True(ends[0] > 100 && ends[2] > 100);
    }

    [Theory]
    [InlineData("roller-bronze", "(?m)^ +Verdict +replace$", "renew")]
    [InlineData("rectifier", "(?m)^ +DC, V +4\\.60$", "Dc, V")]
    [InlineData("rectifier", "at most the length given", "at-most")]
    [InlineData("breaker", "Time constant, s +120", "Tau")]
    [InlineData("breaker", "(?m)^ +8 +never +never +never$", "none  ")]
    [InlineData("own-bands", "too few of this type, outside the type’s band", "kind")]
    [InlineData("resistance-wire", "Length, m", "Metres")]
    [InlineData("now-or-later", "(?m)^ +Now +left roller out, right roller out$", "roller-")]
    [InlineData("now-or-later", "(?m)^ +Expected cost +67\\.66$", "If quiet")]
    public void The_table_speaks_in_words_of_the_bench(string question, string said, string never)
    {
        string[] sheet = question is "rectifier" or "now-or-later" ? ["--sheet", Tool.Sample] : [];
        var (code, output, _) = Tool.Run(["reckon", Question(question), .. sheet]);
        Assert.Equal(0, code);
        Assert.Matches(said, output);
        Assert.DoesNotContain(never, output, StringComparison.Ordinal);
    }
}
