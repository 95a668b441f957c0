using System.Text.Json;
using Json.Schema;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Tests;

/// <summary>The JSON Schemas in docs/ take the files that the program takes, and refuse what it refuses by form.</summary>
public sealed class SchemaTests
{
    public static TheoryData<string, string> GoodFiles()
    {
        var files = new TheoryData<string, string>();
        foreach (var f in Directory.GetFiles(Path.Combine(Tool.Root, "demo"), "*.sheet.json"))
            files.Add("type-sheet", f);
        foreach (
            var f in Directory
                .GetFiles(Path.Combine(Tool.Root, "tests/Reference/ngspice/random"), "*.sheet.json")
                .Order(StringComparer.Ordinal)
                .Take(8)
        )
            files.Add("type-sheet", f);
        files.Add("type-sheet", Tool.Sample);
        foreach (var f in Directory.GetFiles(Path.Combine(Tool.Root, "tests/Reference/sample/cases"), "*.readings.json"))
            files.Add("readings", f);
        files.Add("readings", Tool.Demo("twin-175.example.readings.json"));
        foreach (
            var f in Directory
                .GetFiles(Path.Combine(Tool.Root, "tests/Reference/questions"), "*.question.json")
                .Order(StringComparer.Ordinal)
        )
            files.Add("question", f);
        foreach (var f in Directory.GetFiles(Path.Combine(Tool.Root, "tests/Reference/outlines"), "*.outline.json"))
            files.Add("outline", f);
        return files;
    }

    [Theory]
    [MemberData(nameof(GoodFiles))]
    public void A_file_that_the_program_takes_fits_its_schema(string schema, string file) =>
        Assert.True(Fits(schema, File.ReadAllText(file)), file);

    [Theory]
    [InlineData("type-sheet", """{ "ohmstead": "type-sheet/1" }""")]
    [InlineData(
        "type-sheet",
        """{ "ohmstead": "readings/1", "id": "x", "supply": { "volts": 1, "hertz": 1 }, "elements": [], "readings": [] }"""
    )]
    [InlineData("readings", """{ "ohmstead": "readings/1", "sheet": "x", "readings": [ { "id": "a" } ] }""")]
    [InlineData("readings", """{ "ohmstead": "readings/1", "sheet": "x", "readings": [ { "id": "a", "value": "open" } ] }""")]
    [InlineData("outline", """{ "ohmstead": "outline/1", "id": "x", "plate": { "watts": 100 }, "blocks": [] }""")]
    [InlineData("outline", """{ "ohmstead": "outline/1", "id": "x", "plate": { "volts": 120 }, "blocks": [ { "block": "horn" } ] }""")]
    [InlineData(
        "outline",
        """{ "ohmstead": "outline/1", "id": "x", "plate": { "volts": 120 }, "blocks": [ { "block": "winding", "id": "main", "posts": { "b": "many" } } ] }"""
    )]
    [InlineData("unit", """{ "ohmstead": "unit/1", "sheet": "x", "changes": [ { "paint": "red" } ] }""")]
    [InlineData("question", """{ "ohmstead": "question/1", "question": "who" }""")]
    [InlineData(
        "question",
        """{ "ohmstead": "question/1", "question": "regulation", "supplyVolts": 0, "points": [ { "amps": 0, "volts": 1 }, { "amps": 1, "volts": 1 } ], "atAmps": [] }"""
    )]
    public void A_file_of_the_wrong_form_does_not(string schema, string text) => Assert.False(Fits(schema, text));

    [Fact]
    public void The_volts_of_a_plate_may_lie_between_two_and_are_never_unknown()
    {
        string Outline(string volts) =>
            $$"""{ "ohmstead": "outline/1", "id": "x", "plate": { "volts": {{volts}} }, "blocks": [ { "block": "winding", "id": "main", "from": "a", "posts": { "b": 6 } } ] }""";
        foreach (var (volts, isTaken) in new[] { ("""{ "between": [110, 120] }""", true), ("\"unknown\"", false) })
        {
            Assert.Equal(isTaken, Fits("outline", Outline(volts)));
            Assert.Equal(isTaken ? 0 : 2, Tool.Run("check", Tool.File("x.outline.json", Outline(volts))).Code);
        }
    }

    /// <summary>The schema has one branch a question, and no question is without one.</summary>
    [Fact]
    public void The_schema_of_questions_knows_the_words_that_the_program_knows()
    {
        var schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(Tool.Root, "docs/schemas/question.schema.json"))).RootElement;
        var words = Electrical.Reckoning.QuestionTable.Readers.Keys;
        Assert.Equal(words, schema.GetProperty("properties").GetProperty("question").Words("enum").Order(StringComparer.Ordinal));
        Assert.Equal(words, schema.List("oneOf").Select(b => b.Text("$ref").Split('/')[^1]).Order(StringComparer.Ordinal));
    }

    /// <summary>The schema has one branch a kind of element, each with the faults of its kind.</summary>
    [Fact]
    public void The_schema_of_type_sheets_knows_the_kinds_and_faults_that_the_program_knows()
    {
        var defs = JsonDocument
            .Parse(File.ReadAllText(Path.Combine(Tool.Root, "docs/schemas/type-sheet.schema.json")))
            .RootElement.GetProperty("$defs");
        var element = defs.GetProperty("element");
        var words = ElementKinds.Words.ToList();
        Assert.Equal(words, element.GetProperty("properties").GetProperty("kind").Words("enum").Order(StringComparer.Ordinal));
        Assert.Equal(
            words.Select(w => $"#/$defs/kind-{w}"),
            element.List("allOf").Select(b => b.GetProperty("then").Text("$ref")).Order(StringComparer.Ordinal)
        );
        foreach (var word in words)
            Assert.Equal(
                ElementKinds.Find(word)!.Value.Faults().Select(f => f.Mode),
                defs.GetProperty($"kind-{word}")
                    .GetProperty("properties")
                    .GetProperty("faults")
                    .GetProperty("properties")
                    .EnumerateObject()
                    .Select(f => f.Name)
            );
    }

    private static readonly Dictionary<string, JsonSchema> Schemas = [];

    private static bool Fits(string name, string text)
    {
        lock (Schemas)
        {
            if (!Schemas.TryGetValue(name, out var schema))
                Schemas[name] = schema = JsonSchema.FromText(
                    File.ReadAllText(Path.Combine(Tool.Root, "docs/schemas", name + ".schema.json"))
                );
            return schema.Evaluate(JsonDocument.Parse(text).RootElement).IsValid;
        }
    }
}
