using System.Diagnostics;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.Tests.TypeSheets;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Reckoning;

/// <summary>Question files: every problem at once with its path, unknown fields remarked on, nothing that crashes.</summary>
public class QuestionFileTests
{
    private const string Good =
        """{ "ohmstead": "question/1", "question": "regulation", "supplyVolts": 120, "points": [ { "amps": 0, "volts": 20 }, { "amps": 5, "volts": 18.6 } ], "atAmps": [5] }""";

    private static QuestionRead With(string old, string @new) => QuestionFile.Read(Good.Replace(old, @new, StringComparison.Ordinal), null);

    [Fact]
    public void A_good_file_is_read_without_a_remark()
    {
        var read = QuestionFile.Read(Good, null);
        Assert.NotNull(read.Question);
        Assert.Equal(("regulation", 0, 0), (read.Word, read.Problems.Count, read.Remarks.Count));
    }

    [Theory]
    [InlineData("\"question/1\"", "\"question/2\"", "$.ohmstead")]
    [InlineData("\"regulation\"", "\"regulations\"", "$.question")]
    [InlineData("\"question\": \"regulation\",", "", "$.question")]
    [InlineData("\"supplyVolts\": 120", "\"supplyVolts\": \"120,5\"", "$.supplyVolts")]
    [InlineData("\"supplyVolts\": 120", "\"supplyVolts\": 1e300", "$.supplyVolts")]
    [InlineData("\"supplyVolts\": 120,", "", "$.supplyVolts")]
    [InlineData("\"volts\": 18.6", "\"volts\": null", "$.points[1].volts")]
    [InlineData("{ \"amps\": 5, \"volts\": 18.6 }", "7", "$.points[1]")]
    [InlineData("[5]", "[5, -1]", "$.atAmps[1]")]
    [InlineData("[5]", "5", "$.atAmps")]
    [InlineData("}, { \"amps\": 5, \"volts\": 18.6 }", "}", "$.points")]
    public void What_is_wrong_is_refused_where_it_stands(string old, string @new, string path)
    {
        var read = With(old, @new);
        Assert.Null(read.Question);
        Assert.Equal(path, Assert.Single(read.Problems).Path);
    }

    [Fact]
    public void Every_problem_is_named_at_once()
    {
        var read = QuestionFile.Read(
            """{ "ohmstead": "question/1", "question": "regulation", "points": [ { "amps": -1 }, { "amps": 5, "volts": "x" } ], "atAmps": {} }""",
            null
        );
        Assert.Equal(
            ["$.supplyVolts", "$.points[0].amps", "$.points[0].volts", "$.points[1].volts", "$.atAmps"],
            read.Problems.Select(p => p.Path)
        );
    }

    [Fact]
    public void A_problem_says_what_is_wrong_and_what_would_be_right() =>
        Assert.Equal(
            "$.supplyVolts: is the text \"18,6\"; a number, above 0 is expected",
            Assert.Single(With("120", "\"18,6\"").Problems).ToString()
        );

    /// <remarks>Python's json writes such numbers, and JSON does not know them.</remarks>
    [Fact]
    public void What_other_programs_write_for_no_number_is_named_by_its_place_with_all_else()
    {
        var read = QuestionFile.Read(
            """{ "ohmstead": "question/1", "question": "regulation", "supplyVolts": NaN, "points": [ { "amps": 0, "volts": -Infinity }, { "amps": -5, "volts": 1e400 } ], "atAmps": [Infinity], "notes": "NaN, \"Infinity" }""",
            null
        );
        Assert.Null(read.Question);
        Assert.Equal(
            ["$.atAmps[0]", "$.points[0].volts", "$.points[1].amps", "$.points[1].volts", "$.supplyVolts"],
            read.Problems.Select(p => p.Path).Order(StringComparer.Ordinal)
        );
        Assert.Contains("$.supplyVolts: is not a finite number", read.Problems[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_range_is_said_in_plain_digits() =>
        Assert.Equal(
            ("a number from 1000 to 2000000", "a number above 0 to 100", "a number from 1E-16 to 10"),
            (new NumberRange(1000, 2e6).Words, new NumberRange(0, 100, WithoutLow: true).Words, new NumberRange(1e-16, 10).Words)
        );

    [Fact]
    public void A_field_that_is_not_known_is_remarked_on_and_changes_nothing()
    {
        var read = With("\"atAmps\"", "\"colour\": { \"of\": 1 }, \"notes\": { \"mine\": 2 }, \"atAmps\"");
        Assert.Equal("$.colour", Assert.Single(read.Remarks).Path);
        Assert.Equal(
            QuestionFile.Read(Good, null).Question!.Answer().ToJson("x").ToJsonString(),
            read.Question!.Answer().ToJson("x").ToJsonString()
        );
    }

    /// <summary>A spoiled file too is answered or refused within this.</summary>
    private static readonly TimeSpan Most = TimeSpan.FromSeconds(5);

    private static string[] Files =>
        [.. Directory.GetFiles(Path.Combine(Reference.Root, "tests/Reference/questions"), "*.question.json").Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_question_has_a_file_that_can_be_spoiled() =>
        Assert.Empty(QuestionTable.Readers.Keys.Except(Files.Select(f => QuestionFile.Read(File.ReadAllText(f), Reference.Twin160).Word)));

    [Fact]
    public void Spoiled_files_are_refused_with_path_and_reason_or_answered() => Spoil(300);

    [Fact]
    [Trait("kind", "long")]
    public void Fifteen_hundred_spoiled_files_are_refused_with_path_and_reason_or_answered() => Spoil(1500);

    private static void Spoil(int count)
    {
        var files = Files
            .Select(File.ReadAllText)
            // Few draws: what is spoiled matters here, not the answer's last digit.
            .Select(t => t.Replace("\"draws\": 400000", "\"draws\": 1000", StringComparison.Ordinal))
            .ToArray();
        var (spoil, refused, answered) = (new Mutation(new Random(16)), 0, 0);
        for (var n = 0; n < count; n++)
        {
            var text = spoil.Spoil(files[n % files.Length]);
            var began = Stopwatch.GetTimestamp();
            var read = QuestionFile.Read(text, Reference.Twin160);
            if (read.Question is { } question)
            {
                Assert.Equal(read.Word, question.Answer().ToJson(read.Word)["question"]!.GetValue<string>());
                answered++;
            }
            else
            {
                Assert.NotEmpty(read.Problems);
                Assert.All(read.Problems, p => Assert.True(p.Path.StartsWith('$') && p.Wrong.Length > 0 && p.Right.Length > 0, text));
                refused++;
            }
            Assert.True(Stopwatch.GetElapsedTime(began) < Most, text);
        }
        Assert.True(refused > 60 && answered > 30, FormattableString.Invariant($"{refused} refused, {answered} answered"));
    }
}
