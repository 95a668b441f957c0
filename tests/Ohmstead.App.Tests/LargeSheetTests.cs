using System.Globalization;
using System.Text.Json;
using Bunit;
using Ohmstead.App.Screens.Proving;
using Ohmstead.App.Tests.Screens;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Tests;

/// <summary>A sheet of 400 resistors: the lists that would not end are refused in words, at the command line and on the screens.</summary>
public sealed class LargeSheetTests
{
    private static readonly string Text = JsonSerializer.Serialize(
        new
        {
            ohmstead = "type-sheet/1",
            id = "large",
            title = "Large",
            supply = new { volts = 120, hertz = 60 },
            elements = Enumerable
                .Range(0, 400)
                .Select(n => new
                {
                    id = Name("r", n),
                    kind = "resistor",
                    from = Name("t", n),
                    to = Name("t", n + 1),
                    ohms = 10 + n,
                }),
            readings = new[]
            {
                new
                {
                    id = "whole",
                    title = "From end to end",
                    quantity = "ohms",
                    between = new[] { "t0", "t400" },
                    state = new { },
                    minutes = 1,
                },
            },
            cores = Array.Empty<int>(),
            controls = Array.Empty<int>(),
            observations = Array.Empty<int>(),
            near = new[] { Enumerable.Range(0, 401).Select(n => Name("t", n)) },
        }
    );

    [Theory]
    [InlineData("continuity", "list of continuity checks")]
    [InlineData("rewire", "wiring check")]
    public void The_verb_refuses_it(string verb, string words)
    {
        var (code, output, error) = Tool.Run(verb, Tool.File("large.sheet.json", Text));
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("too large", error, StringComparison.Ordinal);
        Assert.Contains(words, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_screens_refuse_it()
    {
        await using var bench = await ScreenBench.OpenAsync();
        var (unit, stop) = (new Guid(8, 0, 0, new byte[8]), Xunit.TestContext.Current.CancellationToken);
        await bench.Bench.Store.SaveDocumentAsync(Bench.SheetKind, "large", 0, Text, DateTimeOffset.UnixEpoch, stop);
        await bench.Bench.EnterAsync(unit, 0, "bench", new TakenIn("L-1", "large", "", ""));
        bench.Context.Renderer.SetRendererInfo(new("Server", isInteractive: true));
        var list = bench.Context.Render<OhmmeterList>(p => p.Add(s => s.Id, unit));
        list.WaitForAssertion(() => Assert.Contains("too large", list.Markup, StringComparison.Ordinal));
        var check = bench.Context.Render<CheckBeforeMains>(p => p.Add(s => s.Id, unit));
        check.WaitForAssertion(() => Assert.Contains("too large", check.Markup, StringComparison.Ordinal));
    }

    private static string Name(string of, int number) => of + number.ToString(CultureInfo.InvariantCulture);
}
