using System.Diagnostics;

namespace Ohmstead.App.Tests.Commands;

/// <summary>check, fit, help, completion, the script at the root, and being stopped by hand.</summary>
public sealed class OtherVerbTests
{
    [Fact]
    public void Check_finds_nothing_wrong_with_the_sample_and_the_demo_sheets()
    {
        // The sample carries no titles, and is told so once.
        Assert.Equal((0, "no problems"), (Tool.Run("check", Tool.Sample).Code, Tool.Run("check", Tool.Sample).Out.Split('\n')[0].Trim()));
        foreach (
            var sheet in new[] { Tool.Demo("solo-110.sheet.json"), Tool.Demo("twin-175.sheet.json"), Tool.Demo("step-230.sheet.json") }
        )
        {
            var (code, output, error) = Tool.Run("check", sheet);
            Assert.True(code == 0, error);
            Assert.Equal("no problems", output.Trim());
        }
        Assert.Empty(Tool.Json("check", Tool.Sample).List("problems"));
    }

    [Fact]
    public void Check_with_json_lists_the_problems_and_still_exits_with_2()
    {
        var bad = Tool.File(
            "bad.sheet.json",
            """{ "ohmstead": "type-sheet/1", "id": "x", "supply": { "volts": -1, "hertz": 60 }, "elements": [], "readings": [] }"""
        );
        var (code, output, error) = Tool.Run("check", bad, "--json");
        Assert.Equal(2, code);
        var problem = System.Text.Json.JsonDocument.Parse(output).RootElement.List("problems")[0];
        Assert.Equal("$.supply.volts", problem.Text("path"));
        Assert.Contains($"{bad}: $.supply.volts: ", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_names_what_it_determines_and_what_not()
    {
        var answer = Tool.Json("fit", Tool.Sample, Tool.Case("010"), Tool.Case("011"));
        var parameters = answer.List("parameters");
        Assert.All(parameters, p => Assert.Equal(["path", "value", "standardError", "determined"], p.Fields()));
        Assert.True(parameters.Single(p => p.Text("path") == "elements.primary.ohms").GetProperty("determined").GetBoolean());
        Assert.Contains(parameters, p => !p.GetProperty("determined").GetBoolean());
        Assert.All(parameters, p => Assert.True(p.Number("standardError") > 0));
        var (code, table, _) = Tool.Run("fit", Tool.Sample, Tool.Case("010"), Tool.Case("011"));
        Assert.Equal(0, code);
        Assert.All(table.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Theory]
    [InlineData("check")]
    [InlineData("predict")]
    [InlineData("diagnose")]
    [InlineData("fit")]
    [InlineData("example")]
    [InlineData("completion")]
    public void Help_of_a_verb_ends_with_examples_of_it(string verb)
    {
        var (code, output, _) = Tool.Run(verb, "--help");
        Assert.Equal(0, code);
        Assert.Contains($"ohmstead {verb}", output[output.IndexOf("Examples:", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public void Completion_is_a_script_for_bash_and_the_program_answers_it()
    {
        var (code, script, _) = Tool.Run("completion", "bash");
        Assert.Equal(0, code);
        Assert.Contains("complete ", script, StringComparison.Ordinal);
        Assert.Contains("diagnose", Tool.Run("[suggest:11]", "ohmstead di").Out, StringComparison.Ordinal);
        Assert.Contains("--fault", Tool.Run("[suggest:20]", "ohmstead predict --f").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Stopped_by_hand_a_search_gives_what_it_has()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no signals there");
        // The largest sheet, every reading a tenth too high: nothing explains that, and the search takes long.
        var predicted = System
            .Text.Json.JsonDocument.Parse(Tool.Run("predict", Tool.Demo("step-230.sheet.json"), "--json").Out)
            .RootElement;
        var high = predicted
            .List("readings")
            .Where(r => r.GetProperty("value").ValueKind == System.Text.Json.JsonValueKind.Number)
            .Select(r => new { id = r.Text("id"), value = 1.1 * r.GetProperty("value").GetDouble() });
        var readings = Tool.File(
            "high.readings.json",
            System.Text.Json.JsonSerializer.Serialize(
                new
                {
                    ohmstead = "readings/1",
                    sheet = "step-230",
                    readings = high,
                }
            )
        );
        using var process = Tool.Start(["diagnose", Tool.Demo("step-230.sheet.json"), readings, "--json"]);
        // By then it searches: starting and reading take a quarter of this, the search many times as much. The time is the
        // program's own, not the clock's, so a busy machine only makes the wait longer.
        Assert.True(
            SpinWait.SpinUntil(() => process.HasExited || process.TotalProcessorTime >= TimeSpan.FromSeconds(0.8), TimeSpan.FromMinutes(2)),
            "the program hangs before it searches"
        );
        using var kill = Process.Start("kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
        // That it was stopped is said in the answer; the time is there for a program that never ends.
        var (code, output, error) = Tool.Finish(process, TimeSpan.FromMinutes(2));
        Assert.True(code == 0, error);
        var answer = System.Text.Json.JsonDocument.Parse(output).RootElement;
        Assert.Equal("cancelled", answer.GetProperty("search").Text("stopped"));
        Assert.False(answer.GetProperty("search").GetProperty("finished").GetBoolean());
        Assert.NotEmpty(answer.List("faults"));
    }
}
