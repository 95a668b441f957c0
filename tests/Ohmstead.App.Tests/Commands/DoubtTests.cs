using System.Text.Json;
using Ohmstead.App.Commands;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Tests.Commands;

/// <summary>What a diagnosis doubts, as <c>diagnose</c> prints it: results by hand, so that each doubt and each slip is there.</summary>
public sealed class DoubtTests
{
    private static readonly TypeSheet Sheet = TypeSheetFile.Read(File.ReadAllText(Tool.Sample)).Required;

    private static readonly UnitReadings Taken = ReadingsFile
        .Read(
            """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [ { "id": "blades", "value": 4.1 }, { "id": "ohms-left", "value": 35 } ] }""",
            Sheet
        )
        .Required;

    private static DiagnosisResult Result(ProbableSlip[] slips, params Doubt[] doubts) =>
        new(
            0,
            [],
            [],
            [],
            [.. Taken.Readings.Select(r => new ExplainedReading(r.Spec, r.Value, false, r.Value, 0))],
            [.. slips.Select(s => s.Id)],
            false,
            [new(Sheet.FindReading("left-full")!, 0.5, 2, ["blades"])],
            new SearchEffort(1, 1, 1, SearchStop.Complete)
        )
        {
            Slips = [.. slips],
            Doubts = [.. doubts],
        };

    private static JsonElement Json(DiagnosisResult result) =>
        JsonDocument
            .Parse(DiagnosisJson.Of(Sheet, Taken with { Doubts = Gates.DoubtsOf(Taken, result) }, result, 10).ToJsonString())
            .RootElement;

    [Fact]
    public void The_fields_of_slips_and_doubts_are_those_of_the_formats()
    {
        var answer = Json(
            Result(
                [new("ohms-left", SlipKind.TimesTen, null, 3.5, 0.93), new("blades", SlipKind.Exchanged, "ohms-left", null, 0.6)],
                new Doubt(DoubtAbout.Leads, 0.97, 0.31, ["ohms-left"], [])
            )
        );
        Assert.False(answer.GetProperty("isExplained").GetBoolean());
        var (first, second) = (answer.List("slips")[0], answer.List("slips")[1]);
        Assert.Equal(["id", "kind", "with", "meant", "probability"], first.Fields());
        Assert.Equal(
            ("ohms-left", "times-ten", 3.5, 0.93),
            (first.Text("id"), first.Text("kind"), first.Number("meant"), first.Number("probability"))
        );
        Assert.Equal(JsonValueKind.Null, first.GetProperty("with").ValueKind);
        Assert.Equal("ohms-left", second.Text("with"));
        Assert.Equal(JsonValueKind.Null, second.GetProperty("meant").ValueKind);
        var doubt = Assert.Single(answer.List("doubts"));
        Assert.Equal(["about", "probability", "value", "unit", "readings", "parameters"], doubt.Fields());
        Assert.Equal(
            ("leads", 0.97, 0.31, "ohm"),
            (doubt.Text("about"), doubt.Number("probability"), doubt.Number("value"), doubt.Text("unit"))
        );
        Assert.Equal("ohms-left", doubt.List("readings").Single().GetString());
    }

    [Theory]
    [InlineData(SlipKind.TimesTen, "times-ten")]
    [InlineData(SlipKind.Tenth, "tenth")]
    [InlineData(SlipKind.TimesThousand, "times-thousand")]
    [InlineData(SlipKind.Thousandth, "thousandth")]
    [InlineData(SlipKind.Exchanged, "exchanged")]
    [InlineData(SlipKind.Sign, "sign")]
    [InlineData(SlipKind.Quantity, "quantity")]
    [InlineData(SlipKind.Place, "place")]
    [InlineData(SlipKind.Control, "control")]
    [InlineData(SlipKind.Unknown, "unknown")]
    public void Each_kind_of_slip_has_its_name(SlipKind kind, string name) =>
        Assert.Equal(name, Json(Result([new("blades", kind, null, null, 0.9)])).List("slips")[0].Text("kind"));

    [Theory]
    [InlineData(DoubtAbout.Line, "line", "volt")]
    [InlineData(DoubtAbout.Leads, "leads", "ohm")]
    [InlineData(DoubtAbout.Meter, "meter", "limits")]
    [InlineData(DoubtAbout.Unit, "unit", "deviations")]
    [InlineData(DoubtAbout.Internal, "internal", "watt")]
    [InlineData(DoubtAbout.Kind, "kind", "nat")]
    public void Each_doubt_has_its_name_and_unit(DoubtAbout about, string name, string unit)
    {
        var doubt = Json(Result([], new Doubt(about, 0.8, 1.5, [], ["main.ohms"]))).List("doubts")[0];
        Assert.Equal((name, unit, "main.ohms"), (doubt.Text("about"), doubt.Text("unit"), doubt.List("parameters")[0].GetString()));
    }

    [Fact]
    public void A_doubted_check_comes_first_among_the_next_readings()
    {
        Assert.Equal(["left-full"], Json(Result([])).List("next").Select(n => n.Text("id")));
        var next = Json(Result([new("blades", SlipKind.TimesTen, null, 0.41, 0.9)])).List("next");
        Assert.Equal(["blades", "left-full"], next.Select(n => n.Text("id")));
        Assert.Empty(next[0].List("blockedBy"));
        Assert.Contains("blades", next[1].List("blockedBy").Select(b => b.GetString()));
    }

    [Fact]
    public void The_text_says_doubts_then_slips_each_with_what_to_do_and_once_that_findings_count_less()
    {
        var result = Result(
            [new("ohms-left", SlipKind.TimesTen, null, 3.47, 0.93)],
            new(DoubtAbout.Internal, 0.9, 11.2, [], []),
            new(DoubtAbout.Leads, 0.7, 0.31, [], [])
        );
        Assert.Equal(
            [
                "Your test leads were probably not taken off: about 0.31 Ω. Touch the leads together and read the ohms. Enter that as test leads of this meter, under Shop. Findings count less until then.",
                "This unit makes about 11 W more heat than it should. Do not return it until you find the cause. Smell, smoke or a growl: plug out at once. At the low-voltage supply, not on mains: lift the rollers or the shoe, read the amps again. Then unhook each disc and lamp in turn. Still high: it is the coil or the core.",
                $"Possible slip: {Sheet.FindReading("ohms-left")!.Title}. Ten times too high? 35 Ω where 3.5 Ω belongs. Read it again.",
            ],
            DoubtLines.Of(Sheet, Taken, result)
        );
        Assert.Empty(DoubtLines.Of(Sheet, Taken, Result([])));
    }
}
