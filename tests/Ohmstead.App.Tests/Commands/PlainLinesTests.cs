using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Tests.Commands;

/// <summary>Lines of the command line read as one restorer speaks to another: ids whole, numbers plain, and after a slip what to do next.</summary>
public partial class PlainLinesTests
{
    [GeneratedRegex(@"\dE[+-]\d")]
    private static partial Regex Powers();

    private static string[] Said(params string[] arguments)
    {
        var (code, output, error) = Tool.RunOnce(arguments);
        Assert.True(code == 0, error);
        return output.Split('\n');
    }

    [Theory]
    [InlineData("solo-110")]
    [InlineData("twin-175")]
    [InlineData("step-230", Traits = ["kind", "long"])]
    public void An_id_that_one_types_and_the_reading_beside_it_are_never_cut(string type)
    {
        var path = Tool.Demo($"{type}.sheet.json");
        var sheet = TypeSheetFile.Read(File.ReadAllText(path)).Required;
        var lines = Said("predict", path);
        foreach (var reading in sheet.Readings)
            Assert.Contains(lines, l => l.TrimStart().StartsWith(reading.Id + " ", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains('…', StringComparison.Ordinal));
        Assert.DoesNotContain(Said("rewire", path), l => l.Contains('…', StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_learned_has_its_unit_and_no_power_of_ten()
    {
        var lines = Said("fit", Tool.Sample, Tool.Case("010"), Tool.Case("011"));
        Assert.DoesNotContain(lines, l => Powers().IsMatch(l));
        Assert.Contains(lines, l => Regex.IsMatch(l, @"core, loss ohms +[\d.]+ k?Ω"));
    }

    [Fact]
    public void A_swap_reads_as_a_sentence() =>
        Assert.Contains(
            "A unit with the red wire of post 1 and the blue wire of post 2 swapped, at one end or the other:",
            Said("predict", Tool.Demo("twin-175.sheet.json"), "--fault", "w-1.to~w-2.to:swap", "--readings", "full-1")
        );

    [Fact]
    public void Terminals_that_one_lead_touches_together_and_what_is_expected_have_a_heading() =>
        Assert.Contains(
            Said("continuity", Tool.Demo("solo-110.sheet.json")),
            l => Regex.IsMatch(l, "should be +wired right +test leads on")
        );

    [Theory]
    [InlineData("ohmstead --help lists the commands.", "“bogus” is not known here.", "bogus")]
    [InlineData("ohmstead diagnose --help shows what it takes.", "READINGS is missing.", "diagnose", "SHEET")]
    [InlineData(
        "ohmstead plan --help shows what it takes.",
        "--rate: “x” is not a number.",
        "plan",
        "SHEET",
        "--reach",
        "a",
        "--rate",
        "x"
    )]
    [InlineData("ohmstead plan --help shows what it takes.", "--reach is missing.", "plan", "SHEET")]
    [InlineData("ohmstead --help lists the commands.", "--port: “4.5” is not a whole number.", "--port", "4.5")]
    public void Wrong_use_is_said_in_words_with_the_help_to_ask(string help, string wrong, params string[] arguments)
    {
        var (code, output, error) = Tool.Run([.. arguments.Select(a => a == "SHEET" ? Tool.Sample : a)]);
        Assert.Equal((2, ""), (code, output));
        var lines = error.TrimEnd('\n').Split('\n');
        Assert.Contains(wrong, lines[0], StringComparison.Ordinal);
        Assert.Equal(help, lines[^1]);
        Assert.DoesNotContain("System.", error, StringComparison.Ordinal);
    }
}
