using System.Text.Json.Nodes;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>What is odd in a sound sheet is remarked on: a supply that does not scale, unknown fields, windings ten times off.</summary>
public class SheetRemarkTests
{
    [Fact]
    public void The_sheets_that_come_along_give_no_cause_for_a_remark() =>
        Assert.All(Reference.DemoSheets, s => Assert.Empty(SheetRemarks.Of(Reference.Sheet(s))));

    [Fact]
    public void Mains_is_the_volts_of_the_sheets_own_supply_and_follows_the_line()
    {
        var sheet = Changed(_ => { });
        var spec = sheet.FindReading("volts-14")!;
        Assert.Equal(117, spec.State.Source!.Volts);
        var taken = new UnitReadings(sheet.Id, 121.4, null, Meter.Usual, [], []);
        Assert.Equal(121.4, taken.StateOf(sheet, spec).Source!.Volts);
        Assert.Equal(12, taken.StateOf(sheet, sheet.FindReading("low-14")!).Source!.Volts);
    }

    [Fact]
    public void Another_word_than_mains_is_refused_at_its_place()
    {
        var json = Json();
        Source(json, "volts-14")["volts"] = "line";
        Assert.EndsWith(
            ".state.source.volts",
            Assert.Single(TypeSheetFile.Read(json.ToJsonString()).Problems).Path,
            StringComparison.Ordinal
        );
    }

    /// <summary>15 % of 117 V are 17.55 V: 99.45 V is the last that is taken for a slip.</summary>
    [Theory]
    [InlineData(115, true)]
    [InlineData(99.5, true)]
    [InlineData(134.5, true)]
    [InlineData(99.4, false)]
    [InlineData(135, false)]
    [InlineData(117, false)]
    public void A_source_within_15_percent_of_the_supply_that_is_not_it_does_not_scale_and_is_remarked_on(double volts, bool isOdd)
    {
        var sheet = Changed(j => Source(j, "volts-14")["volts"] = volts);
        var found = SheetRemarks.Of(sheet).Where(r => r.Path.EndsWith("source.volts", StringComparison.Ordinal)).ToList();
        Assert.Equal(isOdd ? 1 : 0, found.Count);
        Assert.Equal(isOdd, SheetRemarks.IsAlmostMains(sheet, sheet.FindReading("volts-14")!));
        if (isOdd)
            Assert.Equal("write \"mains\"", found[0].Right);
    }

    [Fact]
    public void Fields_that_the_language_does_not_know_are_remarked_on_and_notes_are_not()
    {
        var sheet = Changed(j =>
        {
            j["titels"] = new JsonObject { ["x"] = "y" };
            j["notes"] = "mine";
            Element(j, "pilot")["ohms"] = 5;
            Element(j, "pilot")["notes"] = new JsonObject { ["bought"] = "at a fair" };
            Source(j, "volts-14")["seriesOhm"] = 4;
        });
        var at = sheet.Readings.IndexOf(sheet.FindReading("volts-14")!);
        var pilot = sheet.Elements.IndexOf(sheet.Elements.First(e => e.Id == "pilot"));
        Assert.Equal(
            new[]
            {
                "$.titels",
                "$.titels.x",
                FormattableString.Invariant($"$.elements[{pilot}].ohms"),
                FormattableString.Invariant($"$.readings[{at}].state.source.seriesOhm"),
            }.Order(StringComparer.Ordinal),
            SheetRemarks
                .Of(sheet)
                .Where(r => r.Wrong.StartsWith("is a field", StringComparison.Ordinal))
                .Select(r => r.Path)
                .Order(StringComparer.Ordinal)
        );
    }

    /// <summary>The 14 V post has 48 of the 54 turns against 400 of the primary: 117 · 48/400 = 14.0 V; with 40 turns of primary 140 V less what the pilot lamp then draws.</summary>
    [Fact]
    public void Turns_ten_times_off_are_remarked_on_by_the_volts_of_the_posts()
    {
        var remarks = SheetRemarks
            .Of(Changed(j => Element(j, "primary")["turns"] = 40))
            .Where(r => r.Right.StartsWith("turns", StringComparison.Ordinal))
            .ToList();
        Assert.Contains(remarks, r => r.Wrong.StartsWith("would show 13", StringComparison.Ordinal));
        Assert.DoesNotContain(
            SheetRemarks.Of(Changed(j => Element(j, "primary")["turns"] = 200)),
            r => r.Right.StartsWith("turns", StringComparison.Ordinal)
        );
    }

    /// <summary>
    /// The 14 V post at 5 Ω: 48/54 of the winding's ohms are in its way. 15.5 Ω instead of 0.155 Ω leave 14 · 5/(5 + 13.8) = 3.7 V;
    /// ten times 0.155 Ω leave 14 · 5/(5 + 1.38 + the primary's share) = 10.5 V or so, which is not half.
    /// </summary>
    [Theory]
    [InlineData(15.5, true)]
    [InlineData(1.55, false)]
    [InlineData(0.155, false)]
    public void A_winding_that_would_drop_most_of_its_volts_is_remarked_on(double ohms, bool isOdd) =>
        Assert.Equal(
            isOdd,
            SheetRemarks
                .Of(Changed(j => Element(j, "main")["ohms"] = ohms))
                .Any(r => r.Wrong.Contains("by more than half", StringComparison.Ordinal))
        );

    private static JsonObject Json() => Reference.Json("demo/solo-110.sheet.json");

    private static TypeSheet Changed(Action<JsonObject> change)
    {
        var json = Json();
        change(json);
        return TypeSheetFile.Read(json.ToJsonString()).Required;
    }

    private static JsonObject Element(JsonObject sheet, string id) => Of(sheet, "elements", id);

    private static JsonObject Source(JsonObject sheet, string reading) => Of(sheet, "readings", reading)["state"]!["source"]!.AsObject();

    private static JsonObject Of(JsonObject sheet, string list, string id) =>
        sheet[list]!.AsArray().Select(e => e!.AsObject()).First(e => (string?)e["id"] == id);
}
