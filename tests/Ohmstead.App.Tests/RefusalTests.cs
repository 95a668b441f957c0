using System.Text.Json.Nodes;

namespace Ohmstead.App.Tests;

/// <summary>Malformed input gets exit status 2 and a message with file and place; never a stack trace, never a hang.</summary>
public sealed class RefusalTests
{
    public static TheoryData<string, string> BadTexts => new()
    {
        { "", "$" },
        { "   ", "$" },
        { "{", "$" },
        { "[1, 2]", "$" },
        { "null", "$" },
        { "{ \"ohmstead\": \"type-sheet/1\" }", "$.id" },
        { "{ \"id\": NaN }", "$" },
    };

    [Theory]
    [MemberData(nameof(BadTexts))]
    public void A_text_that_is_no_sheet_is_refused(string text, string place) => Refused(Tool.File("bad.json", text), place);

    [Fact]
    public void A_hundred_megabytes_of_brackets_are_refused_at_once()
    {
        var path = Tool.File("deep.json", new string('[', 100_000_000));
        var began = DateTime.UtcNow;
        Refused(path, "deep.json");
        Assert.True(DateTime.UtcNow - began < TimeSpan.FromSeconds(20));
        File.Delete(path);
    }

    [Fact]
    public void Deep_nesting_within_the_size_limit_is_refused() => Refused(Tool.File("deep.json", new string('[', 1_000_000)), "$");

    public static TheoryData<string, string> BadChanges => new()
    {
        { "elements[0].ohms|-1", "$.elements[0].ohms" },
        { "elements[0].ohms|1e300", "$.elements[0].ohms" },
        { "elements[0].ohms|\"many\"", "$.elements[0].ohms" },
        { "elements[0].kind|\"string\"", "$.elements[0].kind" },
        { "elements[0].id|\"cord-2\"", "$.elements[1].id" },
        { "elements[0].from|\"nowhere\"", "$.elements[0].from" },
        { "elements[4].turns|0", "$.elements[4].turns" },
        { "elements[5].sliders[0].toTurn|61", "$.elements[5].sliders[0].toTurn" },
        { "elements[0].faults|{ \"rusty\": 3 }", "$.elements[0].faults.rusty" },
        { "cores[0].referenceWinding|\"none\"", "$.cores[0].referenceWinding" },
        { "cores[0].excitation|[[0, 0], [10, -1]]", "$.cores[0].excitation[1][1]" },
        { "supply|5", "$.supply" },
        { "readings[0].limits|null", "$.readings[0].limits" },
        { "readings[17].needs|[]", "$.readings[17].needs" },
        { "readings[8].state.joined|[[\"blade-1\", \"blade-2\"]]", "$.readings[8].state.source" },
        { "takeApart[0].after|[\"handle-left\"]", "$.takeApart" },
    };

    [Theory]
    [MemberData(nameof(BadChanges))]
    public void A_sheet_with_one_thing_wrong_is_refused_at_that_place(string change, string place)
    {
        var sheet = JsonNode.Parse(File.ReadAllText(Tool.Sample))!;
        var cut = change.IndexOf('|', StringComparison.Ordinal);
        Set(sheet, change[..cut], JsonNode.Parse(change[(cut + 1)..]));
        Refused(Tool.File("bad.sheet.json", sheet.ToJsonString()), place);
    }

    [Fact]
    public void Every_problem_is_named_at_once()
    {
        var sheet = JsonNode.Parse(File.ReadAllText(Tool.Sample))!;
        Set(sheet, "elements[0].ohms", -1);
        Set(sheet, "elements[1].kind", "rope");
        Set(sheet, "readings[3].minutes", "long");
        var (code, _, error) = Tool.Run("check", Tool.File("bad.sheet.json", sheet.ToJsonString()));
        Assert.Equal(2, code);
        foreach (var place in new[] { "$.elements[0].ohms", "$.elements[1].kind", "$.readings[3].minutes" }) Assert.Contains(place, error, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> BadReadings => new()
    {
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "no-such", "value": 1 } ] }""", "$.readings[0].id" },
        { """{ "ohmstead": "readings/1", "sheet": "other", "readings": [] }""", "$.sheet" },
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "blades" } ] }""", "$.readings[0].value" },
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "blades", "value": 1e300 } ] }""", "$.readings[0].value" },
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "volts-5", "value": "OL" } ] }""", "$.readings[0].value" },
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "told": { "who-knows": "yes" } }""", "$.told.who-knows" },
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "meter": { "ohms": { "percent": -2 } } }""", "$.meter.ohms.percent" },
        { """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "left-load", "value": 3, "controls": { "throttle-left": 2 } } ] }""", "$.readings[0].controls.throttle-left" },
    };

    [Theory]
    [MemberData(nameof(BadReadings))]
    public void Bad_readings_are_refused(string text, string place)
    {
        var path = Tool.File("bad.readings.json", text);
        var (code, output, error) = Tool.Run("diagnose", Tool.Sample, path, "--json");
        Judge(code, output, error, path, place);
    }

    [Theory]
    [InlineData("--fault", "roller-left:rusty")]
    [InlineData("--fault", "roller-left:worn=much")]
    [InlineData("--fault", "a.to~b.to:swap")]
    [InlineData("--readings", "no-such")]
    [InlineData("--nonsense", "1")]
    public void Bad_options_are_refused(string option, string value)
    {
        var (code, output, error) = Tool.Run("predict", Tool.Sample, option, value);
        Assert.Equal(2, code);
        Assert.Equal("", output);
        Assert.NotEmpty(error);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_and_a_folder_are_refused()
    {
        Refused(Path.Combine(Path.GetTempPath(), "there-is-none.json"), "no such file");
        Refused(Path.GetTempPath(), "folder");
    }

    private static void Refused(string path, string place)
    {
        var (code, output, error) = Tool.Run("predict", path, "--json");
        Judge(code, output, error, path, place);
    }

    private static void Judge(int code, string output, string error, string path, string place)
    {
        Assert.True(code == 2, output + error);
        Assert.Equal("", output);
        Assert.Contains(path, error, StringComparison.Ordinal);
        Assert.Contains(place, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    private static void Set(JsonNode root, string path, JsonNode? value)
    {
        var parts = path.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        var at = root;
        foreach (var part in parts[..^1]) at = Step(at, part);
        if (parts[^1].StartsWith('[')) at.AsArray()[Index(parts[^1])] = value;
        else if (value is null) at.AsObject().Remove(parts[^1]);
        else at[parts[^1]] = value;
    }

    private static JsonNode Step(JsonNode at, string part) => part.StartsWith('[') ? at[Index(part)]! : at[part]!;

    private static int Index(string part) => int.Parse(part.Trim('[', ']'), System.Globalization.CultureInfo.InvariantCulture);
}
