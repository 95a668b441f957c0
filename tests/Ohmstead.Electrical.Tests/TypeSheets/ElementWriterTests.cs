using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>A circuit is what its records say; its text follows them, and keeps what this program does not know.</summary>
public class ElementWriterTests
{
    public static TheoryData<string> Sheets() =>
        [
            "tests/Reference/sample/twin-160.sheet.json",
            .. Reference.DemoSheets,
            .. Reference.Names("tests/Reference/ngspice/random", "*.sheet.json"),
            .. Reference.Names("tests/Reference/units", "*.sheet.json"),
            .. Reference.Names("perf/Ohmstead.Perf/Experiments/Sheets", "*.sheet.json"),
        ];

    [Fact]
    public void The_sheets_are_there() => Assert.True(Sheets().Count > 40, $"Only {Sheets().Count} sheets are looked at.");

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_circuit_changed_and_changed_back_is_written_as_it_was_read(string file)
    {
        var text = WithUnknowns(file);
        var sheet = TypeSheetFile.Read(text).Required;
        var changed = sheet with { Elements = [.. sheet.Elements.Select(Changed)] };
        Assert.False(JsonNode.DeepEquals(JsonNode.Parse(text), TypeSheetFile.JsonOf(changed)));
        var back = changed with { Elements = [.. changed.Elements.Select((e, n) => Back(e, sheet.Elements[n]))] };
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(text), JsonNode.Parse(TypeSheetFile.Write(back))));
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void What_is_written_of_a_changed_circuit_is_what_its_records_say(string file)
    {
        var sheet = TypeSheetFile.Read(WithUnknowns(file)).Required;
        foreach (var changed in sheet.Elements.Select(Changed))
        {
            var written = ElementWriter.Of(changed);
            IsRead(changed, written);
            Assert.Equal(0.1234567890123456, (double)written["socket"]!["digits"]!);
            foreach (var part in Lists(written))
                Assert.Equal("a wheel", (string)part["remark"]!);
            // What was written is changed back like what was read.
            var again = ElementReader.Read(Cursor(written))!;
            IsRead(sheet.Elements.Single(e => e.Id == changed.Id), ElementWriter.Of(Back(again, Of(sheet, changed.Id))));
        }
    }

    /// <summary>A part that never was text is written whole.</summary>
    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_part_that_was_made_and_not_read_is_written_whole(string file)
    {
        foreach (var part in Reference.Sheet(file).Elements.SelectMany(e => new[] { e, Changed(e) }))
            IsRead(part, ElementWriter.Of(part with { AsRead = AsRead.Nothing }));
    }

    /// <summary>Two parts that differ only in what this program does not know are the same part.</summary>
    [Fact]
    public void What_is_not_known_makes_no_other_part()
    {
        var wire = Of(Reference.Twin160, "w-5");
        Assert.Equal(wire, wire with { AsRead = AsRead.Nothing });
        Assert.NotEqual(wire, wire with { Colour = "mauve" });
    }

    private static Element Of(TypeSheet sheet, string id) => sheet.Elements.Single(e => e.Id == id);

    private static void IsRead(Element expected, JsonObject written)
    {
        var problems = new List<Problem>();
        var read = ElementReader.Read(Cursor(written, problems));
        Assert.Empty(problems);
        Assert.Equivalent(expected, read, strict: true);
    }

    private static JsonCursor Cursor(JsonObject json, List<Problem>? problems = null)
    {
        Assert.True(JsonCursor.TryOpen(json.ToJsonString(), problems ?? [], out var at));
        return at;
    }

    private static IEnumerable<JsonObject> Lists(JsonObject part) =>
        new[] { "taps", "sliders" }.SelectMany(list => part[list]?.AsArray() ?? []).Select(p => p!.AsObject());

    /// <summary>A sheet with a field that nobody knows in every element, tap and slider.</summary>
    private static string WithUnknowns(string file)
    {
        var json = Reference.Json(file);
        foreach (var part in json["elements"]!.AsArray().Select(e => e!.AsObject()))
        {
            part["socket"] = new JsonObject { ["thread"] = "E10", ["digits"] = 0.1234567890123456 };
            foreach (var inside in Lists(part))
                inside["remark"] = "a wheel";
        }
        return json.ToJsonString();
    }

    private static SpreadOverrides Half { get; } = new(ImmutableDictionary<string, double>.Empty.Add("ohms", 0.5));

    private static ImmutableDictionary<string, double> Chance(ElementKind kind) =>
        ImmutableDictionary<string, double>.Empty.Add(kind.Faults().First().Mode, 7.5);

    /// <summary>The element with every one of its values at another.</summary>
    private static Element Changed(Element e)
    {
        var part = e with
        {
            From = e.From + "-x",
            To = e.To + "-x",
            Colour = e.Colour + " mauve",
            Spread = Half,
            KindError = Half,
            Percents = Chance(e.Kind),
        };
        return part.Match<Element>(
            r => r with { Ohms = r.Ohms + 1, RatedAmps = r.Kind == ElementKind.Breaker ? r.RatedAmps + 1 : 0 },
            w =>
                w with
                {
                    Core = w.IsOnCore ? w.Core + "-x" : "",
                    Turns = w.Turns + 9,
                    Ohms = w.Ohms + 1,
                    LeakageHenries = w.IsOnCore ? w.LeakageHenries + 0.5 : 0,
                    MostAmps = w.MostAmps + 1,
                    Taps = [.. w.Taps.Select(t => new Tap(t.Turn + 1, t.To + "-x"))],
                    Sliders = [.. w.Sliders.Select(Changed)],
                },
            l => l with { Volts = l.Volts + 1, Amps = l.Amps + 1 },
            r =>
                r with
                {
                    SaturationAmps = r.SaturationAmps * 2,
                    SlopeVolts = r.SlopeVolts + 1,
                    SeriesOhms = r.SeriesOhms + 1,
                    LeakageOhms = r.LeakageOhms + 1,
                },
            s =>
                s with
                {
                    Control = s.Control + "-x",
                    ClosedIn = s.ClosedIn.Add("aside"),
                    Ohms = s.Ohms + 1,
                    OpenOhms = s.OpenOhms * 2,
                    MostAmps = s.MostAmps + 1,
                },
            c => c with { Farads = c.Farads * 2 }
        );
    }

    private static Slider Changed(Slider s) =>
        s with
        {
            Control = s.Control + "-x",
            FromTurn = s.FromTurn + 1,
            ToTurn = s.ToTurn + 1,
            To = s.To + "-x",
            ContactOhms = s.ContactOhms + 1,
            BridgesTurns = 1 - s.BridgesTurns,
            OffBelow = s.OffBelow + 0.01,
            OffAbove = s.OffAbove - 0.01,
            MostAmps = s.MostAmps + 1,
            Spread = Half,
            KindError = Half,
            Percents = Chance(ElementKind.Slider),
        };

    /// <summary>Every value as it was; the text behind it is that of the changed part.</summary>
    private static Element Back(Element changed, Element was) => was with { AsRead = changed.AsRead };
}
