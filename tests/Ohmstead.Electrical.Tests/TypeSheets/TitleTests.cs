using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>What parts are called in a sentence, as a sheet or a unit file says it.</summary>
public class TitleTests
{
    private static string Sheet(string titles, string own = "") =>
        $$"""
            { "ohmstead": "type-sheet/1", "id": "s", "supply": { "volts": 120, "hertz": 60 }, {{titles}}
              "controls": [{ "id": "d1", "kind": "selector", "positions": ["a", "mid-way"] }],
              "elements": [ { "id": "w-1", {{own}} "kind": "wire", "from": "lug-1", "to": "n2" }, { "id": "r", "kind": "resistor", "from": "n2", "to": "lug-1", "ohms": 5 } ],
              "readings": [] }
            """;

    [Fact]
    public void Titles_are_read_and_kept_and_the_map_wins_over_a_parts_own()
    {
        var sheet = TypeSheetFile
            .Read(Sheet("\"titles\": { \"w-1\": \"red wire\", \"d1=a\": \"lever up\" },", "\"title\": \"wire\","))
            .Required;
        Assert.Equal(("red wire", "lever up"), (sheet.Titles["w-1"], sheet.Titles["d1=a"]));
        Assert.Equal("wire", TypeSheetFile.Read(Sheet("", "\"title\": \"wire\",")).Required.Titles["w-1"]);
        Assert.Contains("\"d1=a\": \"lever up\"", TypeSheetFile.Write(sheet));
    }

    [Fact]
    public void A_title_that_is_no_text_is_a_problem_with_its_place() =>
        Assert.Equal(
            ["$.titles.r", "$.elements[0].title"],
            TypeSheetFile
                .Read(Sheet("\"titles\": { \"r\": 5 },", "\"title\": [],"))
                .Problems.Select(p => p.Path)
                .OrderByDescending(p => p, StringComparer.Ordinal)
        );

    [Fact]
    public void A_unit_file_names_the_parts_it_adds_or_puts_in_anothers_place()
    {
        var sheet = TypeSheetFile.Read(Sheet("\"titles\": { \"w-1\": \"red wire\", \"r\": \"dropper\" },")).Required;
        var unit = UnitFile
            .Read(
                """
                { "ohmstead": "unit/1", "sheet": "s", "changes": [
                  { "replace": { "id": "w-1", "title": "new green wire", "kind": "wire", "from": "lug-1", "to": "n2" } },
                  { "replace": { "id": "r", "kind": "resistor", "from": "n2", "to": "lug-1", "ohms": 6 } },
                  { "add": { "id": "x", "title": "jumper", "kind": "wire", "from": "lug-1", "to": "n2" } } ] }
                """,
                sheet
            )
            .Required;
        Assert.Equal(("new green wire", "dropper", "jumper"), (unit.Titles["w-1"], unit.Titles["r"], unit.Titles["x"]));
    }

    [Fact]
    public void A_missing_title_and_a_title_of_nothing_are_remarked_on()
    {
        Assert.Equal(
            [
                "$.titles: no title for 2 parts: w-1, r; they are called by what they lie between",
                "$.titles: no title for 1 terminal: n2; they are called by a number",
                "$.titles: no title for 1 control: d1; they are called by a number",
            ],
            TitleRemarks.Of(TypeSheetFile.Read(Sheet("")).Required).Select(r => r.ToString())
        );
        Assert.Equal(
            ["\"w-1.tap-1\" is a title of nothing in this sheet", "\"w-9\" is a title of nothing in this sheet"],
            TitleRemarks
                .Of(
                    TypeSheetFile
                        .Read(
                            Sheet(
                                "\"titles\": { \"w-1\": \"red wire\", \"w-1.from\": \"its near end\", \"r\": \"dropper\", \"n2\": \"the far lug\", \"d1\": \"lever\", \"w-9\": \"x\", \"w-1.tap-1\": \"x\" },"
                            )
                        )
                        .Required
                )
                .Select(r => r.Wrong)
        );
    }
}
