using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>Everything that is wrong in a sheet is reported with its place, what is wrong and what would be right.</summary>
public class SheetProblemTests
{
    /// <summary>What is spoilt, and the path at which it must be reported.</summary>
    private static readonly Dictionary<string, Func<SheetEdit, string>> Wrong = new(StringComparer.Ordinal)
    {
        ["no mark"] = s => Without(s.Json, "ohmstead", "$"),
        ["the mark of another kind of file"] = s => Set(s.Json, "ohmstead", "unit/1", "$"),
        ["no id"] = s => Without(s.Json, "id", "$"),
        ["no supply"] = s => Without(s.Json, "supply", "$"),
        ["no hertz"] = s => Without(s.Json["supply"]!.AsObject(), "hertz", "$.supply"),
        ["supply of no volts"] = s => Set(s.Json["supply"]!.AsObject(), "volts", 0, "$.supply"),
        ["no elements"] = s => Without(s.Json, "elements", "$"),
        ["no readings"] = s => Without(s.Json, "readings", "$"),
        ["elements that are no list"] = s => Set(s.Json, "elements", "many", "$"),
        ["a core of no loss"] = s => Without(s.Item("cores", "core"), "lossOhms", s.PathOf("cores", "core")),
        ["a core of infinite loss"] = s => Set(s.Item("cores", "core"), "lossOhms", 0, s.PathOf("cores", "core")),
        ["a core whose reference winding is not there"] = s =>
            Set(s.Item("cores", "core"), "referenceWinding", "primus", s.PathOf("cores", "core")),
        ["a core whose reference winding is no winding"] = s =>
            Set(s.Item("cores", "core"), "referenceWinding", "pilot", s.PathOf("cores", "core")),
        ["a core without excitation"] = s => Without(s.Item("cores", "core"), "excitation", s.PathOf("cores", "core")),
        ["excitation that falls"] = s =>
            Into(s.Item("cores", "core")["excitation"]!.AsArray(), 2, new JsonArray(50, 0.02), s.PathOf("cores", "core") + ".excitation"),
        ["excitation that does not start at nothing"] = s =>
            Into(s.Item("cores", "core")["excitation"]!.AsArray(), 0, new JsonArray(1, 0.001), s.PathOf("cores", "core") + ".excitation"),
        ["an excitation point of three numbers"] = s =>
            Into(
                s.Item("cores", "core")["excitation"]!.AsArray(),
                1,
                new JsonArray(60, 0.065, 1),
                s.PathOf("cores", "core") + ".excitation"
            ),
        ["a control of an unknown kind"] = s =>
            Set(s.Item("controls", "whistle-left"), "kind", "lever", s.PathOf("controls", "whistle-left")),
        ["a selector of one position"] = s =>
            Set(s.Item("controls", "whistle-left"), "positions", new JsonArray("off"), s.PathOf("controls", "whistle-left")),
        ["a selector that rests nowhere"] = s =>
            Set(s.Item("controls", "whistle-left"), "rest", "third", s.PathOf("controls", "whistle-left")),
        ["a resistor without ohms"] = s => Without(s.Element("ballast-left"), "ohms", s.PathOf("elements", "ballast-left")),
        ["negative ohms"] = s => Set(s.Element("ballast-left"), "ohms", -1.4, s.PathOf("elements", "ballast-left")),
        ["ohms in words"] = s => Set(s.Element("ballast-left"), "ohms", "1.4", s.PathOf("elements", "ballast-left")),
        ["ohms that are a list"] = s => Set(s.Element("ballast-left"), "ohms", new JsonArray(1.4), s.PathOf("elements", "ballast-left")),
        ["ohms that are NaN in words"] = s => Set(s.Element("ballast-left"), "ohms", "NaN", s.PathOf("elements", "ballast-left")),
        ["ohms of 1e300"] = s => Set(s.Element("ballast-left"), "ohms", 1e300, s.PathOf("elements", "ballast-left")),
        ["a wire of negative ohms"] = s => Set(s.Element("cord-1"), "ohms", -0.001, s.PathOf("elements", "cord-1")),
        ["turns of 1e300"] = s => Set(s.Element("primary"), "turns", 1e300, s.PathOf("elements", "primary")),
        ["no turns"] = s => Without(s.Element("primary"), "turns", s.PathOf("elements", "primary")),
        ["turns of nothing"] = s => Set(s.Element("primary"), "turns", 0, s.PathOf("elements", "primary")),
        ["negative leakage"] = s => Set(s.Element("primary"), "leakageHenries", -1e-3, s.PathOf("elements", "primary")),
        ["a winding on no core"] = s => Set(s.Element("boost-left"), "core", "kernel", s.PathOf("elements", "boost-left")),
        ["a tap outside its winding"] = s =>
            Set(s.Element("main")["taps"]![1]!.AsObject(), "turn", 61, s.PathOf("elements", "main") + ".taps[1]"),
        ["a tap to nowhere"] = s => Without(s.Element("main")["taps"]![1]!.AsObject(), "to", s.PathOf("elements", "main") + ".taps[1]"),
        ["a slider outside its winding"] = s =>
            Set(s.Element("main")["sliders"]![0]!.AsObject(), "toTurn", 60.5, s.PathOf("elements", "main") + ".sliders[0]"),
        ["a slider below its winding"] = s =>
            Set(s.Element("main")["sliders"]![0]!.AsObject(), "fromTurn", -1, s.PathOf("elements", "main") + ".sliders[0]"),
        ["a slider of no throttle"] = s =>
            Set(s.Element("main")["sliders"]![0]!.AsObject(), "control", "whistle-left", s.PathOf("elements", "main") + ".sliders[0]"),
        ["a slider that bridges two turns"] = s =>
            Set(s.Element("main")["sliders"]![0]!.AsObject(), "bridgesTurns", 2, s.PathOf("elements", "main") + ".sliders[0]"),
        ["an element of an unknown kind"] = s => Set(s.Element("pilot"), "kind", "neon", s.PathOf("elements", "pilot")),
        ["an element between one terminal"] = s => Set(s.Element("pilot"), "to", "lead-17", s.PathOf("elements", "pilot")),
        ["a lamp of no amps"] = s => Set(s.Element("pilot"), "amps", 0, s.PathOf("elements", "pilot")),
        ["a switch of no selector"] = s => Set(s.Element("run-left"), "control", "throttle-left", s.PathOf("elements", "run-left")),
        ["a switch closed in a position that is not there"] = s =>
            Set(s.Element("run-left"), "closedIn", new JsonArray("third"), s.PathOf("elements", "run-left"), "closedIn[0]"),
        ["a switch that does not say when it is closed"] = s =>
            Without(s.Element("run-left"), "closedIn", s.PathOf("elements", "run-left")),
        ["a fault mode of another kind"] = s =>
            Set(s.Element("pilot"), "faults", new JsonObject { ["worn"] = 5 }, s.PathOf("elements", "pilot"), "faults.worn"),
        ["a chance above the whole"] = s =>
            Set(s.Element("pilot"), "faults", new JsonObject { ["open"] = 120 }, s.PathOf("elements", "pilot"), "faults.open"),
        ["a negative spread"] = s =>
            Set(s.Element("pilot"), "spread", new JsonObject { ["ohms"] = -0.1 }, s.PathOf("elements", "pilot"), "spread.ohms"),
        ["an element id used twice"] = s => Set(s.Element("cord-2"), "id", "cord-1", s.PathOf("elements", "cord-2")),
        ["a slider with the id of an element"] = s =>
            Set(s.Element("main")["sliders"]![1]!.AsObject(), "id", "pilot", s.PathOf("elements", "main") + ".sliders[1]"),
        ["an element id with a mark of a fault"] = s => Set(s.Element("cord-2"), "id", "cord~2", s.PathOf("elements", "cord-2")),
        ["a terminal with a mark of a mistake"] = s => Set(s.Element("w-5"), "from", "lead>5", s.PathOf("elements", "w-5")),
        ["a reading id used twice"] = s => Set(s.Reading("volts-5"), "id", "volts-17", s.PathOf("readings", "volts-5")),
        ["a terminal that occurs once"] = s => Set(s.Element("w-5"), "from", "lead-five", s.PathOf("elements", "w-5")),
        ["a quantity that is none"] = s => Set(s.Reading("volts-5"), "quantity", "volts", s.PathOf("readings", "volts-5")),
        ["a reading between one terminal"] = s =>
            Set(s.Reading("volts-5"), "between", new JsonArray("post-5"), s.PathOf("readings", "volts-5")),
        ["a reading at a terminal that is not there"] = s =>
            Set(s.Reading("volts-5"), "between", new JsonArray("post-common", "post-6"), s.PathOf("readings", "volts-5"), ""),
        ["volts without a source"] = s =>
            Without(s.Reading("volts-5")["state"]!.AsObject(), "source", s.PathOf("readings", "volts-5") + ".state"),
        ["ohms with a source"] = s =>
            Set(s.Reading("ohms-5")["state"]!.AsObject(), "source", Source(), s.PathOf("readings", "ohms-5") + ".state"),
        ["a source between one terminal"] = s =>
            Set(s.Reading("volts-5")["state"]!["source"]!.AsObject(), "to", "blade-1", s.PathOf("readings", "volts-5") + ".state.source"),
        ["a source of 1e300 volts"] = s =>
            Set(s.Reading("volts-5")["state"]!["source"]!.AsObject(), "volts", 1e300, s.PathOf("readings", "volts-5") + ".state.source"),
        ["a source shorted by a strap"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "joined",
                new JsonArray(new JsonArray("blade-1", "blade-2")),
                s.PathOf("readings", "volts-5") + ".state",
                "source"
            ),
        ["a source shorted by two straps"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "joined",
                new JsonArray(new JsonArray("blade-1", "post-5"), new JsonArray("post-5", "blade-2")),
                s.PathOf("readings", "volts-5") + ".state",
                "source"
            ),
        ["a load of no ohms"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "loads",
                new JsonArray(
                    new JsonObject
                    {
                        ["from"] = "post-5",
                        ["to"] = "post-common",
                        ["ohms"] = 0,
                    }
                ),
                s.PathOf("readings", "volts-5") + ".state",
                "loads[0].ohms"
            ),
        ["a load at a terminal that is not there"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "loads",
                new JsonArray(
                    new JsonObject
                    {
                        ["from"] = "post-6",
                        ["to"] = "post-common",
                        ["ohms"] = 3,
                    }
                ),
                s.PathOf("readings", "volts-5"),
                ""
            ),
        ["a lifted element that is not there"] = s =>
            Set(s.Reading("volts-5")["state"]!.AsObject(), "lifted", new JsonArray("w-6"), s.PathOf("readings", "volts-5") + ".state"),
        ["a strap of one terminal"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "joined",
                new JsonArray(new JsonArray("post-5")),
                s.PathOf("readings", "volts-5") + ".state",
                "joined[0]"
            ),
        ["a throttle beyond its end"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "controls",
                new JsonObject { ["throttle-left"] = 1.1 },
                s.PathOf("readings", "volts-5") + ".state",
                "controls.throttle-left"
            ),
        ["a selector in no position"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "controls",
                new JsonObject { ["whistle-left"] = "third" },
                s.PathOf("readings", "volts-5") + ".state",
                "controls.whistle-left"
            ),
        ["a control that is not there"] = s =>
            Set(
                s.Reading("volts-5")["state"]!.AsObject(),
                "controls",
                new JsonObject { ["whistle"] = "first" },
                s.PathOf("readings", "volts-5") + ".state",
                "controls.whistle"
            ),
        ["access by no step"] = s => Set(s.Reading("volts-5"), "access", "lid", s.PathOf("readings", "volts-5")),
        ["a need that is no reading"] = s =>
            Set(s.Reading("volts-5"), "needs", new JsonArray("lamp-60", "lamp-75"), s.PathOf("readings", "volts-5"), "needs[1]"),
        ["a need without limits"] = s =>
            Set(s.Reading("volts-5"), "needs", new JsonArray("lamp-60", "volts-17"), s.PathOf("readings", "volts-5"), "needs[1]"),
        ["a gate without limits"] = s => Without(s.Reading("blades"), "limits", s.PathOf("readings", "blades")),
        ["mains without the gates"] = s => Set(s.Reading("volts-5"), "needs", new JsonArray(), s.PathOf("readings", "volts-5")),
        ["limits that are crossed"] = s =>
            Set(s.Reading("blades"), "limits", new JsonObject { ["min"] = 7, ["max"] = 3 }, s.PathOf("readings", "blades"), "limits.min"),
        ["limits of nothing"] = s => Set(s.Reading("blades"), "limits", new JsonObject(), s.PathOf("readings", "blades")),
        ["an observation of no fault"] = s =>
            Set(
                s.Item("observations", s.Json["observations"]![0]!["id"]!.GetValue<string>()),
                "given",
                new JsonObject { ["cord-1:melted"] = 0.5 },
                "$.observations[0]"
            ),
        ["a chance of two"] = s => Set(s.Json["observations"]![0]!.AsObject(), "otherwise", 2, "$.observations[0]"),
        ["a take-apart step after no step"] = s =>
            Set(s.Json["takeApart"]![0]!.AsObject(), "after", new JsonArray("nothing"), "$.takeApart[0]"),
    };

    public static TheoryData<string> Kinds() => [.. Wrong.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_problem_is_reported_at_its_place(string kind)
    {
        var edit = new SheetEdit();
        var path = Wrong[kind](edit);
        var problems = edit.Problems();
        Assert.True(
            problems.Any(p => p.Path.StartsWith(path, StringComparison.Ordinal)),
            $"expected at {path}: {string.Join('\n', problems)}"
        );
        Assert.All(problems, p => Assert.False(string.IsNullOrWhiteSpace(p.Wrong) || string.IsNullOrWhiteSpace(p.Right)));
    }

    [Fact]
    public void The_sample_sheet_has_no_problem() => Assert.Empty(new SheetEdit().Problems());

    [Fact]
    public void Several_wrong_values_are_all_reported_at_once()
    {
        var edit = new SheetEdit();
        string[] spoilt =
        [
            "no hertz",
            "ohms in words",
            "turns of nothing",
            "a slider below its winding",
            "an element of an unknown kind",
            "a quantity that is none",
            "limits that are crossed",
        ];
        var paths = spoilt.Select(k => Wrong[k](edit)).ToArray();
        var problems = edit.Problems();
        Assert.All(paths, path => Assert.Contains(problems, p => p.Path.StartsWith(path, StringComparison.Ordinal)));
    }

    [Fact]
    public void Several_names_that_lead_nowhere_are_all_reported_at_once()
    {
        var edit = new SheetEdit();
        string[] spoilt =
        [
            "a winding on no core",
            "a switch of no selector",
            "an element id used twice",
            "a lifted element that is not there",
            "access by no step",
            "a gate without limits",
            "an observation of no fault",
            "a take-apart step after no step",
        ];
        var paths = spoilt.Select(k => Wrong[k](edit)).ToArray();
        var problems = edit.Problems();
        Assert.All(paths, path => Assert.Contains(problems, p => p.Path.StartsWith(path, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_wrong_value_does_not_hide_a_name_that_leads_nowhere()
    {
        var edit = new SheetEdit();
        string[] spoilt = ["negative ohms", "an element id used twice", "a gate without limits"];
        var paths = spoilt.Select(k => Wrong[k](edit)).ToArray();
        var problems = edit.Problems();
        Assert.All(paths, path => Assert.Contains(problems, p => p.Path.StartsWith(path, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_ring_of_take_apart_steps_is_named()
    {
        var edit = new SheetEdit();
        var steps = edit.Json["takeApart"]!.AsArray();
        var (one, other) = (steps[0]!["id"]!.GetValue<string>(), steps[1]!["id"]!.GetValue<string>());
        edit.Step(one)["after"] = new JsonArray(other);
        edit.Step(other)["after"] = new JsonArray(one);
        Assert.Contains(
            edit.Problems(),
            p =>
                p.Path.StartsWith("$.takeApart", StringComparison.Ordinal)
                && p.Wrong.Contains(one, StringComparison.Ordinal)
                && p.Wrong.Contains(other, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_ring_of_needs_is_reported()
    {
        var edit = new SheetEdit();
        edit.Reading("blades")["needs"] = new JsonArray("insulation-core");
        edit.Reading("insulation-core")["needs"] = new JsonArray("blades");
        Assert.Contains(edit.Problems(), p => p.Path.StartsWith(edit.PathOf("readings", "blades"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  \n")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("3")]
    [InlineData("{ \"ohmstead\": \"type-sheet/1\", }")]
    [InlineData("{ \"ohmstead\": NaN }")]
    [InlineData("{ \"ohmstead\": Infinity }")]
    [InlineData("{ \"id\": \"a\", \"id\": \"b\" }")]
    [InlineData("{} {}")]
    [InlineData("\uFFFD\u0000")]
    public void What_is_no_JSON_object_is_refused_with_one_reason(string text)
    {
        var parsed = TypeSheetFile.Read(text);
        Assert.Null(parsed.Value);
        Assert.NotEmpty(parsed.Problems);
    }

    [Fact]
    public void A_file_that_is_cut_off_is_refused_wherever_it_is_cut()
    {
        var text = Reference.Text("tests/Reference/sample/twin-160.sheet.json").TrimEnd();
        for (var n = 1; n < 60; n++)
            Assert.False(TypeSheetFile.Read(text[..(text.Length * n / 60)]).IsSound);
    }

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    public void A_hundred_megabytes_of_brackets_are_refused(char bracket)
    {
        var parsed = TypeSheetFile.Read(new string(bracket, 100_000_000));
        Assert.Equal("$", Assert.Single(parsed.Problems).Path);
    }

    [Fact]
    public void A_deep_field_that_nobody_reads_is_refused_or_kept_but_never_breaks()
    {
        var nested = string.Concat(Enumerable.Repeat("[", 5000)) + string.Concat(Enumerable.Repeat("]", 5000));
        Assert.NotEmpty(TypeSheetFile.Read($"{{ \"remark\": {nested} }}").Problems);
    }

    [Fact]
    public void More_than_2000_elements_are_refused()
    {
        var edit = new SheetEdit();
        var elements = edit.Json["elements"]!.AsArray();
        for (var n = elements.Count; n <= 2000; n++)
            elements.Add(
                new JsonObject
                {
                    ["id"] = FormattableString.Invariant($"more-{n}"),
                    ["kind"] = "wire",
                    ["from"] = "blade-1",
                    ["to"] = "lug-1",
                }
            );
        Assert.Contains(edit.Problems(), p => p.Path == "$.elements");
        elements.RemoveAt(2000);
        Assert.Empty(edit.Problems());
    }

    private static JsonObject Source() =>
        new()
        {
            ["from"] = "blade-1",
            ["to"] = "blade-2",
            ["volts"] = 12,
        };

    private static string Without(JsonObject at, string field, string path)
    {
        Assert.True(at.Remove(field));
        return $"{path}.{field}";
    }

    private static string Set(JsonObject at, string field, JsonNode value, string path, string? where = null)
    {
        at[field] = value;
        where ??= field;
        return where.Length == 0 ? path : $"{path}.{where}";
    }

    private static string Into(JsonArray at, int place, JsonNode value, string path)
    {
        at[place] = value;
        return FormattableString.Invariant($"{path}[{place}]");
    }
}
