using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>How one unit differs from its sheet.</summary>
public class UnitFileTests
{
    [Fact]
    public void Parts_are_replaced_removed_added_and_moved()
    {
        var unit = Read(
            """
            { "ohmstead": "unit/1", "sheet": "twin-160", "changes": [
              { "replace": { "id": "pilot", "kind": "lamp", "from": "lead-17", "to": "post-common", "volts": 18, "amps": 0.15 } },
              { "remove": "ballast-right" },
              { "add": { "id": "w-extra", "kind": "wire", "from": "lead-5", "to": "post-5", "ohms": 0.01 } },
              { "move": "w-5.to", "to": "post-17" } ] }
            """
        ).Required;
        Assert.Equal((18.0, 0.15), (((Lamp)Element(unit, "pilot")).Volts, ((Lamp)Element(unit, "pilot")).Amps));
        Assert.DoesNotContain(unit.Elements, e => e.Id == "ballast-right");
        Assert.Equal(0.01, ((Resistive)Element(unit, "w-extra")).Ohms);
        Assert.Equal(("lead-5", "post-17"), (Element(unit, "w-5").From, Element(unit, "w-5").To));
    }

    /// <summary>The text behind the records is what the next change starts from: it has every change too.</summary>
    [Fact]
    public void The_text_of_a_changed_unit_says_what_its_records_say()
    {
        var unit = Read(
            """
            { "ohmstead": "unit/1", "sheet": "twin-160", "changes": [
              { "replace": { "id": "pilot", "kind": "lamp", "from": "lead-17", "to": "post-common", "volts": 18, "amps": 0.15 } },
              { "remove": "ballast-right" },
              { "add": { "id": "w-extra", "kind": "wire", "from": "lead-5", "to": "post-5", "ohms": 0.01 } },
              { "move": "w-5.to", "to": "post-17" }, { "move": "w-extra.from", "to": "lead-17" }, { "move": "main.tap-1", "to": "lead-17" } ] }
            """
        ).Required;
        var texts = TypeSheetFile.JsonOf(unit)["elements"]!.AsArray().ToDictionary(e => (string)e!["id"]!, e => e!);
        Assert.Equal(unit.Elements.Select(e => e.Id), texts.Keys);
        Assert.All(unit.Elements, e => Assert.Equal((e.From, e.To), ((string)texts[e.Id]["from"]!, (string)texts[e.Id]["to"]!)));
        Assert.Equal("lead-17", (string)texts["main"]["taps"]![0]!["to"]!);
        Assert.Equal((0.15, 0.01), ((double)texts["pilot"]["amps"]!, (double)texts["w-extra"]["ohms"]!));
        Assert.DoesNotContain("w-extra", TypeSheetFile.Write(Reference.Twin160), StringComparison.Ordinal);
    }

    [Fact]
    public void A_renewed_or_replaced_part_carries_a_tenth_of_its_kinds_chances_but_may_be_the_wrong_way_round()
    {
        var unit = Read(
            """
            { "ohmstead": "unit/1", "sheet": "twin-160", "renewed": ["cord-1", "roller-left", "disc-left"], "changes": [
              { "replace": { "id": "pilot", "kind": "lamp", "from": "lead-17", "to": "post-common", "volts": 18, "amps": 0.15 } } ] }
            """
        ).Required;
        var (old, renewed) = (Percents(Reference.Twin160), Percents(unit));
        Assert.Equal(0.05, renewed["cord-1:open"], 1e-9);
        foreach (var fault in new[] { "pilot:open", "roller-left:worn", "roller-left:open", "disc-left:high-drop", "disc-left:shorted" })
            Assert.Equal(Kind(fault) / 10, renewed[fault], 1e-9);
        Assert.Equal(2, renewed["disc-left:reversed"], 1e-9);
        Assert.Equal(old["disc-right:high-drop"], renewed["disc-right:high-drop"]);

        static double Kind(string fault) => (
                fault.StartsWith("pilot", StringComparison.Ordinal) ? ElementKind.Lamp
                : fault.StartsWith("roller", StringComparison.Ordinal) ? ElementKind.Slider
                : ElementKind.Rectifier
            ).Faults().First(m => fault.EndsWith(":" + m.Mode, StringComparison.Ordinal)).Percent;
    }

    [Fact]
    public void A_rewired_part_carries_the_chances_of_a_rewire()
    {
        var unit = Read(
            """{ "ohmstead": "unit/1", "sheet": "twin-160", "rewired": ["w-5", "joint-tap-5", "boost-left", "disc-left", "breaker"] }"""
        ).Required;
        var chances = Percents(unit);
        // docs/formats.md, mistakes of a rewire: a wire left off 2, cold 3, a winding or rectifier by the wrong ends 8, a breaker bypassed 1.
        Assert.Equal((2.0, 3.0), (chances["w-5:open"], chances["w-5:resistive"]));
        Assert.Equal(3, chances["joint-tap-5:resistive"]);
        Assert.Equal((8.0, 8.0, 1.0), (chances["boost-left:reversed"], chances["disc-left:reversed"], chances["breaker:bypassed"]));
        Assert.Equal(Percents(Reference.Twin160)["w-17:open"], chances["w-17:open"]);
    }

    [Theory]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-200" }""", "$.sheet")]
    [InlineData("""{ "ohmstead": "type-sheet/1", "sheet": "twin-160" }""", "$.ohmstead")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "remove": "w-6" }] }""", "$.changes[0].remove")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "move": "w-5.middle", "to": "x" }] }""", "$.changes[0].move")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "move": "w-5.to", "to": "post-typo" }] }""", "$")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "swap": "w-5" }] }""", "$.changes[0]")]
    [InlineData(
        """{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "replace": { "id": "w-6", "kind": "wire", "from": "a", "to": "b" } }] }""",
        "$.changes[0].replace.id"
    )]
    [InlineData(
        """{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "add": { "id": "w-6", "kind": "wire", "from": "lead-5", "to": "post-5", "ohms": -1 } }] }""",
        "$.changes[0].add.ohms"
    )]
    [InlineData(
        """{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "add": { "id": "w-5", "kind": "wire", "from": "lead-5", "to": "post-5" } }] }""",
        "$"
    )]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": [{ "remove": "primary" }] }""", "$")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "renewed": ["w-6"] }""", "$.renewed[0]")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "rewired": [7] }""", "$.rewired[0]")]
    [InlineData("""{ "ohmstead": "unit/1" }""", "$.sheet")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "changes": "none" }""", "$.changes")]
    [InlineData("", "$")]
    public void A_problem_is_reported_at_its_place(string text, string path)
    {
        var parsed = Read(text);
        Assert.Null(parsed.Value);
        Assert.Contains(parsed.Problems, p => p.Path.StartsWith(path, StringComparison.Ordinal));
    }

    private static Parsed<TypeSheet> Read(string text) => UnitFile.Read(text, Reference.Twin160);

    private static Element Element(TypeSheet sheet, string id) => sheet.Elements.Single(e => e.Id == id);

    private static Dictionary<string, double> Percents(TypeSheet sheet) =>
        new FaultCatalogue(new UnitModel(sheet)).Modes.ToDictionary(m => m.Name, m => m.Percent, StringComparer.Ordinal);
}
