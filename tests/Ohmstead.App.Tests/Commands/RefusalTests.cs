using System.Text.Json.Nodes;

namespace Ohmstead.App.Tests.Commands;

/// <summary>Malformed sheets, units and readings get exit status 2 and a message with file and place; never a trace, never a hang.</summary>
public sealed class RefusalTests
{
    public static TheoryData<string, string> BadTexts =>
        new()
        {
            { "", "$: the file is empty" },
            { "   \n", "$: the file is empty" },
            { "{", "$: " },
            { "{ \"ohmstead\": \"type-sheet/1\", \"id\": \"x\", \"elem", "$: " },
            { "[1, 2]", "$: " },
            { "null", "$: " },
            { "\"sheet\"", "$: " },
            { "{ \"ohmstead\": \"type-sheet/1\" }", "$.id: " },
            { "{ \"ohmstead\": \"readings/1\", \"id\": \"x\" }", "$.ohmstead: " },
            { "{ \"id\": NaN }", "$.id: " },
            { "{ \"id\": Infinity }", "$.id: " },
            { "{ \"id\": 1, \"id\": 2 }", "$: " },
            { "{ \"id\": \"\\ud800\" }", "$: " },
            { "<html></html>", "$: " },
        };

    [Theory]
    [MemberData(nameof(BadTexts))]
    public void A_text_that_is_no_sheet_is_refused(string text, string place)
    {
        var path = Tool.File("bad.json", text);
        Refusal.Expect(path, place, "check", path);
        Refusal.Expect(path, place, "predict", path, "--json");
    }

    public static TheoryData<string, string, string> BadValues =>
        new()
        {
            { "elements[0].ohms", "-1", "$.elements[0].ohms" },
            { "elements[0].ohms", "1e300", "$.elements[0].ohms" },
            { "elements[0].ohms", "\"many\"", "$.elements[0].ohms" },
            { "elements[0].ohms", "\"NaN\"", "$.elements[0].ohms" },
            { "elements[0].ohms", "[0.05]", "$.elements[0].ohms" },
            { "elements[0].kind", "\"string\"", "$.elements[0].kind" },
            { "elements[0].kind", "null", "$.elements[0].kind" },
            { "elements[0].id", "\"cord-2\"", "$.elements[1].id" },
            { "elements[0].from", "\"nowhere\"", "$.elements[0].from" },
            { "elements[0].faults", "{ \"rusty\": 3 }", "$.elements[0].faults.rusty" },
            { "elements[0].spread", "{ \"ohms\": -0.1 }", "$.elements[0].spread.ohms" },
            { "elements[4].turns", "0", "$.elements[4].turns" },
            { "elements[4].turns", "1e300", "$.elements[4].turns" },
            { "elements[5].sliders[0].toTurn", "61", "$.elements[5].sliders[0].toTurn" },
            { "elements[5].sliders[0].control", "\"no-such\"", "$.elements[5].sliders[0].control" },
            { "cores[0].referenceWinding", "\"none\"", "$.cores[0].referenceWinding" },
            { "cores[0].referenceWinding", "null", "$.cores[0].referenceWinding" },
            { "cores[0].excitation", "[[0, 0], [10, -1]]", "$.cores[0].excitation[1][1]" },
            { "cores[0].excitation", "null", "$.cores[0]" },
            { "supply", "5", "$.supply" },
            { "supply.volts", "1e300", "$.supply.volts" },
            { "readings[0].limits", "null", "$.readings[0].limits" },
            { "readings[0].quantity", "\"farads\"", "$.readings[0].quantity" },
            { "readings[17].needs", "[]", "$.readings[17].needs" },
            { "readings[17].needs", "[\"no-such\"]", "$.readings[17].needs" },
            { "readings[8].state.joined", "[[\"blade-1\", \"blade-2\"]]", "$.readings[8].state" },
            { "readings[20].state.controls", "{ \"throttle-left\": 1.5 }", "$.readings[20].state.controls" },
            { "takeApart[0].after", "[\"handle-left\"]", "$.takeApart" },
            { "elements", "{}", "$.elements" },
            { "readings", "null", "$.readings" },
        };

    [Theory]
    [MemberData(nameof(BadValues))]
    public void A_sheet_with_one_thing_wrong_is_refused_at_that_place(string at, string json, string place)
    {
        var path = Tool.File("bad.sheet.json", Refusal.SampleWith(at, json));
        Refusal.Expect(path, place, "check", path);
    }

    [Fact]
    public void A_number_beyond_all_numbers_is_refused_where_it_stands()
    {
        var path = Tool.File(
            "bad.sheet.json",
            Refusal.SampleWith("elements[0].ohms", "12345.5").Replace("12345.5", "1e400", StringComparison.Ordinal)
        );
        Refusal.Expect(path, "$.elements[0].ohms", "check", path);
    }

    [Fact]
    public void Every_problem_is_named_at_once()
    {
        var sheet = JsonNode.Parse(File.ReadAllText(Tool.Sample))!;
        Refusal.Set(sheet, "elements[0].ohms", -1);
        Refusal.Set(sheet, "elements[1].kind", "rope");
        Refusal.Set(sheet, "readings[3].minutes", "long");
        var (code, _, error) = Tool.Run("check", Tool.File("bad.sheet.json", sheet.ToJsonString()));
        Assert.Equal(2, code);
        foreach (var place in new[] { "$.elements[0].ohms", "$.elements[1].kind", "$.readings[3].minutes" })
            Assert.Contains(place, error, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> BadReadings =>
        new()
        {
            { """ "sheet": "twin-160", "readings": [ { "id": "no-such", "value": 1 } ] """, "$.readings[0].id" },
            { """ "sheet": "other", "readings": [] """, "$.sheet" },
            { """ "sheet": "twin-160", "readings": {} """, "$.readings" },
            { """ "sheet": "twin-160", "readings": [ { "id": "blades" } ] """, "$.readings[0].value" },
            { """ "sheet": "twin-160", "readings": [ { "id": "blades", "value": 1e300 } ] """, "$.readings[0].value" },
            { """ "sheet": "twin-160", "readings": [ { "id": "blades", "value": "open" } ] """, "$.readings[0].value" },
            { """ "sheet": "twin-160", "readings": [ { "id": "blades", "value": { "jumps": 3 } } ] """, "$.readings[0].value.jumps" },
            { """ "sheet": "twin-160", "readings": [ { "id": "volts-5", "value": "OL" } ] """, "$.readings[0].value" },
            { """ "sheet": "twin-160", "supplyVolts": -3, "readings": [] """, "$.supplyVolts" },
            { """ "sheet": "twin-160", "readings": [], "told": { "who-knows": "yes" } """, "$.told.who-knows" },
            { """ "sheet": "twin-160", "readings": [], "told": { "jumps-when-flexed": "perhaps" } """, "$.told.jumps-when-flexed" },
            { """ "sheet": "twin-160", "readings": [], "meter": { "ohms": { "percent": -2 } } """, "$.meter.ohms.percent" },
            { """ "sheet": "twin-160", "readings": [], "meter": { "farads": { "percent": 2 } } """, "$.meter.farads" },
            {
                """ "sheet": "twin-160", "readings": [ { "id": "left-load", "value": 3, "controls": { "throttle-left": 2 } } ] """,
                "$.readings[0].controls.throttle-left"
            },
            {
                """ "sheet": "twin-160", "readings": [ { "id": "blades", "value": 3, "waived": { "by": "M. Example", "instead": "-" } } ] """,
                "$.readings[0].waived"
            },
        };

    [Theory]
    [MemberData(nameof(BadReadings))]
    public void Bad_readings_are_refused(string text, string place)
    {
        var path = Tool.File("bad.readings.json", $"{{ \"ohmstead\": \"readings/1\", {text} }}");
        Refusal.Expect(path, place, "diagnose", Tool.Sample, path, "--json");
        Refusal.Expect(path, place, "fit", Tool.Sample, Tool.Case("010"), path);
    }

    public static TheoryData<string, string> BadUnits =>
        new()
        {
            { """ "sheet": "other" """, "$.sheet" },
            { """ "sheet": "twin-160", "changes": [ { "remove": "no-such" } ] """, "$.changes[0].remove" },
            { """ "sheet": "twin-160", "changes": [ { "paint": "red" } ] """, "$.changes[0]" },
            { """ "sheet": "twin-160", "changes": [ { "move": "w-5.side", "to": "post-17" } ] """, "$.changes[0].move" },
            {
                """ "sheet": "twin-160", "changes": [ { "add": { "id": "extra", "kind": "resistor", "from": "post-5", "to": "post-17", "ohms": -4 } } ] """,
                "$.changes[0].add.ohms"
            },
            { """ "sheet": "twin-160", "renewed": ["no-such"] """, "$.renewed[0]" },
        };

    [Theory]
    [MemberData(nameof(BadUnits))]
    public void Bad_unit_files_are_refused(string text, string place)
    {
        var path = Tool.File("bad.unit.json", $"{{ \"ohmstead\": \"unit/1\", {text} }}");
        Refusal.Expect(path, place, "predict", Tool.Sample, "--unit", path, "--json");
    }
}
