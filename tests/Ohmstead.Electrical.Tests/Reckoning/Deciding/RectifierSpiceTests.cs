using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Tests.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>
/// Discs and diodes in the places of four sheets, sound and with faults: what <c>rectifier</c> answers against what ngspice finds with the
/// part in the circuit (key ngspice; made by tests/Ohmstead.Simulator). DC within 5 mV or 0.3 %, all else within 0.4 %.
/// </summary>
public class RectifierSpiceTests
{
    private const string File = "tests/Reference/ngspice/rectifiers.json";

    private static readonly List<JsonObject> States = [.. Reference.Json(File)["states"]!.AsArray().Select(s => s!.AsObject())];

    [Fact]
    public void There_are_parts_in_four_sheets_sound_and_with_three_faults_in_three_of_them()
    {
        var bySheet = States
            .GroupBy(s => s.Text("sheet"))
            .ToDictionary(g => g.Key, g => g.Where(s => s.ContainsKey("edits")).Select(s => s["edits"]!.ToJsonString()).Distinct().Count());
        Assert.Equal(4, bySheet.Count);
        Assert.Equal(3, bySheet.Values.Count(faults => faults == 3));
        Assert.Contains(States, s => s.ContainsKey("exchanged"));
    }

    [Fact]
    public void The_volts_and_what_the_part_sees_are_those_of_ngspice()
    {
        var off = States.SelectMany((s, n) => Differences(n, s["expected"]!.AsObject(), Ours(s))).ToList();
        Assert.True(off.Count == 0, string.Join('\n', off));
    }

    /// <summary>Two are solved once more, so that file and simulator cannot drift apart.</summary>
    [Fact]
    public void Two_states_come_out_of_ngspice_again()
    {
        Assert.SkipUnless(
            NgspiceRun.IsThere,
            "ngspice is not installed here (Debian: apt-get install ngspice); the kept values are still compared above."
        );
        foreach (var n in new[] { 4, 37 })
        foreach (var (name, value) in NgspiceRun.Part(Reference.PathOf(File), n))
            Assert.Equal(States[n].Number($"expected.{name}"), value!.GetValue<double>(), 1e-4 * Math.Abs(value.GetValue<double>()) + 1e-5);
    }

    private static JsonNode Ours(JsonObject state)
    {
        var document = Reference.Json(Path.Combine("tests/Reference/ngspice", state.Text("sheet")));
        foreach (var (field, value) in state["edits"] as JsonObject ?? [])
            Edit(document, field.Split('.'), value!);
        var part = state["part"]!.DeepClone().AsObject();
        (part["id"], part["exchanged"]) = ("part", state.ContainsKey("exchanged"));
        var reading = state.Text("reading");
        var question = new JsonObject
        {
            ["ohmstead"] = "question/1",
            ["question"] = "rectifier",
            ["element"] = state.Text("element"),
            ["steps"] = new JsonArray(reading, reading),
            ["loadsOhms"] = new JsonArray(state.Number("ohms")),
            ["parts"] = new JsonArray(part),
        };
        return Asked.AnswerOf(question.ToJsonString(), TypeSheetFile.Read(document.ToJsonString()).Required).At("parts[0].loads[0].first")!;
    }

    private static void Edit(JsonObject sheet, string[] field, JsonNode value)
    {
        var elements = sheet["elements"]!.AsArray().Select(e => e!.AsObject()).ToList();
        elements
            .Concat(elements.SelectMany(e => e["sliders"] is JsonArray s ? s.Select(x => x!.AsObject()) : []))
            .First(e => e.Text("id") == field[0])[field[1]] = value.DeepClone();
    }

    private static IEnumerable<string> Differences(int number, JsonObject expected, JsonNode ours)
    {
        foreach (var (name, value) in expected)
        {
            var (theirs, own) = (value!.GetValue<double>(), ours.Number(name));
            var within = name == "dcVolts" ? Math.Max(0.005, 0.003 * Math.Abs(theirs)) : 0.004 * Math.Abs(theirs);
            if (Math.Abs(own - theirs) > within)
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"state {number} {name}: {own:G6}, ngspice {theirs:G6}, off by {100 * (own - theirs) / theirs:G3} %"
                );
        }
    }
}
