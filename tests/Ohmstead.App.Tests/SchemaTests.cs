using System.Text.Json;
using Json.Schema;

namespace Ohmstead.App.Tests;

/// <summary>The JSON Schemas in docs/ take the files that the program takes, and refuse what it refuses by form.</summary>
public sealed class SchemaTests
{
    public static TheoryData<string, string> GoodFiles()
    {
        var files = new TheoryData<string, string>();
        foreach (var f in Directory.GetFiles(Path.Combine(Tool.Root, "demo"), "*.sheet.json")) files.Add("type-sheet", f);
        foreach (var f in Directory.GetFiles(Path.Combine(Tool.Root, "tests/Reference/ngspice/random"), "*.sheet.json").Order(StringComparer.Ordinal).Take(8)) files.Add("type-sheet", f);
        files.Add("type-sheet", Tool.Sample);
        foreach (var f in Directory.GetFiles(Path.Combine(Tool.Root, "tests/Reference/contract/cases"), "*.readings.json")) files.Add("readings", f);
        files.Add("readings", Tool.Demo("twin-175.example.readings.json"));
        return files;
    }

    [Theory]
    [MemberData(nameof(GoodFiles))]
    public void A_file_that_the_program_takes_fits_its_schema(string schema, string file) => Assert.True(Fits(schema, File.ReadAllText(file)), file);

    [Theory]
    [InlineData("type-sheet", """{ "ohmstead": "type-sheet/1" }""")]
    [InlineData("type-sheet", """{ "ohmstead": "readings/1", "id": "x", "supply": { "volts": 1, "hertz": 1 }, "elements": [], "readings": [] }""")]
    [InlineData("readings", """{ "ohmstead": "readings/1", "sheet": "x", "readings": [ { "id": "a" } ] }""")]
    [InlineData("readings", """{ "ohmstead": "readings/1", "sheet": "x", "readings": [ { "id": "a", "value": "open" } ] }""")]
    [InlineData("unit", """{ "ohmstead": "unit/1", "sheet": "x", "changes": [ { "paint": "red" } ] }""")]
    public void A_file_of_the_wrong_form_does_not(string schema, string text) => Assert.False(Fits(schema, text));

    private static readonly Dictionary<string, JsonSchema> Schemas = [];

    private static bool Fits(string name, string text)
    {
        lock (Schemas)
        {
            if (!Schemas.TryGetValue(name, out var schema))
                Schemas[name] = schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(Tool.Root, "docs/schemas", name + ".schema.json")));
            return schema.Evaluate(JsonDocument.Parse(text).RootElement).IsValid;
        }
    }
}
