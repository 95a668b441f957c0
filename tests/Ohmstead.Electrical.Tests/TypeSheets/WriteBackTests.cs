using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>A sheet is written back as it was read, with what this program does not know.</summary>
public class WriteBackTests
{
    public static TheoryData<string> Sheets() => ["tests/Reference/sample/twin-160.sheet.json", .. Reference.DemoSheets];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Nothing_is_lost_between_reading_and_writing(string file) =>
        Assert.True(JsonNode.DeepEquals(Reference.Json(file), JsonNode.Parse(TypeSheetFile.Write(Reference.Sheet(file)))));

    [Fact]
    public void Fields_that_nobody_knows_stay_where_they_were()
    {
        var edit = new SheetEdit();
        edit.Json["maker's remark"] = "Ω, ° and ½ as they are";
        edit.Element("pilot")["socket"] = new JsonObject { ["thread"] = "E10", ["digits"] = 0.1234567890123456 };
        edit.Reading("volts-5")["remark"] = new JsonArray(1, null, "x");
        edit.Element("main")["taps"]![0]!["colour"] = "green";
        var sheet = TypeSheetFile.Read(edit.Json.ToJsonString()).Required;
        var written = TypeSheetFile.Write(sheet);
        Assert.True(JsonNode.DeepEquals(edit.Json, JsonNode.Parse(written)));
        Assert.Contains("Ω, ° and ½ as they are", written, StringComparison.Ordinal);
        Assert.Contains("0.1234567890123456", written, StringComparison.Ordinal);
        Assert.DoesNotContain("0,123", written, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_written_is_written_the_same_again()
    {
        var once = TypeSheetFile.Write(Reference.Twin160);
        Assert.Equal(once, TypeSheetFile.Write(TypeSheetFile.Read(once).Required));
    }

    [Fact]
    public void What_a_sheet_says_beside_the_circuit_is_in_its_records()
    {
        var edit = new SheetEdit();
        edit.Json["rating"] = new JsonObject { ["inputWatts"] = 160, ["usableWatts"] = 112.5 };
        edit.Json["draftedFrom"] = new JsonArray("00ff00ff00ff00ff", 7, null);
        edit.Element("w-5")["colour"] = "white";
        edit.Element("w-17")["colour"] = 5;
        var sheet = TypeSheetFile.Read(edit.Json.ToJsonString()).Required;
        Assert.Equal((160, 112.5), (sheet.InputWatts, sheet.UsableWatts));
        Assert.Equal(["00ff00ff00ff00ff"], sheet.DraftedFrom);
        Assert.Equal("white", sheet.Elements.Single(e => e.Id == "w-5").Colour);
        Assert.Equal("", sheet.Elements.Single(e => e.Id == "w-17").Colour);
    }

    /// <summary>Watts that are none count as not given; a sheet is not refused for what is said beside the circuit.</summary>
    [Theory]
    [InlineData("-160")]
    [InlineData("1e5")]
    [InlineData("1e400")]
    [InlineData("\"160\"")]
    public void Watts_that_are_none_count_as_not_given(string watts)
    {
        var edit = new SheetEdit();
        edit.Json["rating"] = new JsonObject { ["inputWatts"] = JsonNode.Parse(watts) };
        Assert.Equal(0, TypeSheetFile.Read(edit.Json.ToJsonString()).Required.InputWatts);
    }

    [Fact]
    public void Defaults_are_those_that_are_documented()
    {
        var sheet = TypeSheetFile
            .Read(
                """
                { "ohmstead": "type-sheet/1", "id": "least", "supply": { "volts": 120, "hertz": 60 },
                  "cores": [{ "id": "core", "referenceWinding": "coil", "lossOhms": 1000, "magnetisingHenries": 1 }],
                  "controls": [{ "id": "s", "kind": "selector", "positions": ["off", "on"] }],
                  "elements": [
                    { "id": "w", "kind": "wire", "from": "a", "to": "b" },
                    { "id": "j", "kind": "joint", "from": "b", "to": "c" },
                    { "id": "k", "kind": "switch", "from": "c", "to": "d", "control": "s", "closedIn": ["on"] },
                    { "id": "coil", "kind": "winding", "core": "core", "turns": 10, "ohms": 1, "from": "d", "to": "a" } ],
                  "readings": [{ "id": "r", "quantity": "ohms", "between": ["a", "b"] }] }
                """
            )
            .Required;
        Assert.Equal(0.004, ((Resistive)sheet.Elements[0]).Ohms);
        Assert.Equal(0.002, ((Resistive)sheet.Elements[1]).Ohms);
        Assert.Equal((0.01, 1e8), (((Switch)sheet.Elements[2]).Ohms, ((Switch)sheet.Elements[2]).OpenOhms));
        Assert.Equal(0, ((Winding)sheet.Elements[3]).LeakageHenries);
        Assert.Equal("off", sheet.Controls[0].Rest);
        Assert.Equal(
            (20.0, 1.0, ReadingSpec.Closed),
            (sheet.Readings[0].State.Celsius, sheet.Readings[0].Minutes, sheet.Readings[0].Access)
        );
    }
}
