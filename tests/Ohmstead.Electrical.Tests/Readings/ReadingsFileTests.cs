using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>What was measured, under which conditions, with which meter.</summary>
public class ReadingsFileTests
{
    [Fact]
    public void Values_OL_jumps_and_what_was_not_taken_are_told_apart()
    {
        var read = Read(
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "expectedFaults": 2, "readings": [
              { "id": "blades", "value": 4.1 }, { "id": "blades-posts", "value": "OL" }, { "id": "ohms-left", "value": { "jumps": [0.4, "OL"] } },
              { "id": "insulation-core", "value": null, "why": "no tester", "waived": { "by": "J.", "instead": "nothing" } }, { "id": "blades", "value": 4.2 } ] }
            """
        ).Required;
        Assert.Equal(
            [Outcome.Value, Outcome.OverRange, Outcome.Jumps, Outcome.NotTaken, Outcome.Value],
            read.Readings.Select(r => r.Outcome)
        );
        Assert.Equal([4.1, 4.2], read.Readings.Where(r => r.Spec.Id == "blades").Select(r => r.Value));
        Assert.Equal([0.4, double.PositiveInfinity], read.Readings[2].JumpValues);
        Assert.Equal("J.", read.Readings[3].WaivedBy);
        Assert.Equal(2, read.ExpectedFaults);
    }

    [Fact]
    public void What_the_mains_really_gave_stands_in_for_the_supply_but_not_for_a_low_source()
    {
        var read = Read(
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "supplyVolts": 121.4, "readings": [
              { "id": "volts-17", "value": 17.5 }, { "id": "low-17", "value": 1.7 }, { "id": "volts-5", "value": 5, "supplyVolts": 119.0 },
              { "id": "left-load", "value": 15.9, "celsius": 45, "controls": { "throttle-left": 0.5 }, "loads": [ { "from": "post-left", "to": "post-common", "ohms": 4.2 } ] } ] }
            """
        ).Required;
        double Volts(string id) => read.Readings.Single(r => r.Spec.Id == id).State.Source!.Volts;
        Assert.Equal((121.4, 12.0, 119.0, 121.4), (Volts("volts-17"), Volts("low-17"), Volts("volts-5"), Volts("left-load")));
        var load = read.Readings[3].State;
        Assert.Equal((45.0, 0.5, 4.2), (load.Celsius, load.Controls["throttle-left"].Throttle, load.Loads.Single().Ohms));
        Assert.Equal(121.4, read.StateOf(Reference.Twin160, Reference.Twin160.FindReading("left-full")!).Source!.Volts);
    }

    [Fact]
    public void What_the_owner_told_is_yes_or_no_and_unsure_says_nothing()
    {
        var read = Read(
            """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "told": { "left-slow": "yes", "left-whistle-dead": "no", "jumps-when-flexed": "unsure" } }"""
        ).Required;
        Assert.Equal([("left-slow", true), ("left-whistle-dead", false)], read.Symptoms.Select(t => (t.Observation.Id, t.Yes)));
        var refused = Read(
            """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "told": { "left-slow": "maybe", "smells": "yes" } }"""
        );
        Assert.Equal(["$.told.left-slow", "$.told.smells"], refused.Problems.Select(p => p.Path));
    }

    [Fact]
    public void An_averaging_meter_is_one_of_alternating_volts_only()
    {
        var read = Read(
            """{ "ohmstead": "readings/1", "sheet": "twin-160", "meter": { "ac-volts": { "averaging": true } }, "readings": [] }"""
        ).Required;
        Assert.True(read.Meter.IsAveraging);
        Assert.False(Meter.Usual.IsAveraging);
        var refused = Read(
            """{ "ohmstead": "readings/1", "sheet": "twin-160", "meter": { "ohms": { "averaging": true } }, "readings": [] }"""
        );
        Assert.Equal("$.meter.ohms.averaging", Assert.Single(refused.Problems).Path);
    }

    [Fact]
    public void A_reading_with_a_meter_of_its_own_is_judged_with_that_one()
    {
        var read = ReadingsFile
            .Read(
                """
                { "ohmstead": "readings/1", "sheet": "twin-160", "meter": { "ohms": { "percent": 1, "floor": 0.01 } },
                  "readings": [ { "id": "blades", "value": 5.1 }, { "id": "blades", "value": 5.1, "meter": { "percent": 5, "floor": 0.1 } } ] }
                """,
                Reference.Twin160
            )
            .Required;
        Assert.Equal([(1, 0.01), (5, 0.1)], read.Readings.Select(r => (read.ErrorOf(r).Percent, read.ErrorOf(r).Floor)));
        // At most 5.2 Ω: 5.1 ± 0.061 passes, 5.1 ± 0.355 does not, and the last reading is the one that counts.
        Assert.False(Gates.Stands(read, Reference.Twin160.FindReading("blades")!));
        Assert.True(Gates.Stands(read with { Readings = [read.Readings[0]] }, Reference.Twin160.FindReading("blades")!));
    }

    [Fact]
    public void A_meter_is_as_said_and_otherwise_the_usual_one()
    {
        var meter = Read(
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "readings": [],
              "meter": { "ohms": { "percent": 0.5, "floor": 0.02, "shared": 0.25, "leadOhms": 0.2 }, "watts": { "floor": 1 } } }
            """
        ).Required.Meter;
        Assert.Equal(new MeterError(0.5, 0.02, 0.25, 0.2), meter.For(Quantity.Ohms));
        // The usual figures are common practice, without a source.
        Assert.Equal(new MeterError(0.8, 1, 0, 0), meter.For(Quantity.Watts));
        Assert.Equal(new MeterError(0.8, 0.03, 0, 0), meter.For(Quantity.AcVolts));
        Assert.Equal(new MeterError(0.8, 0.03, 0, 0), meter.For(Quantity.DcVolts));
        Assert.Equal(new MeterError(0.8, 0.01, 0, 0), meter.For(Quantity.AcAmps));
        Assert.Equal(new MeterError(5, 20e3, 0, 0), meter.For(Quantity.InsulationOhms));
    }

    [Theory]
    [InlineData("", "$")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160" }""", "$.readings")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "solo-110", "readings": [] }""", "$.sheet")]
    [InlineData("""{ "ohmstead": "unit/1", "sheet": "twin-160", "readings": [] }""", "$.ohmstead")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "supplyVolts": -3, "readings": [] }""", "$.supplyVolts")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "expectedFaults": 0, "readings": [] }""", "$.expectedFaults")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "volts-6", "value": 6 }] }""", "$.readings[0].id")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "volts-5" }] }""", "$.readings[0].value")]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "volts-5", "value": "5" }] }""",
        "$.readings[0].value"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "volts-5", "value": true }] }""",
        "$.readings[0].value"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "volts-5", "value": "OL" }] }""",
        "$.readings[0].value"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "volts-5", "value": 1e300 }] }""",
        "$.readings[0].value"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "ohms-5", "value": { "jumps": "often" } }] }""",
        "$.readings[0].value.jumps"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "ohms-5", "value": { "leaps": [1] } }] }""",
        "$.readings[0].value"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "ohms-5", "value": 1, "supplyVolts": 12 }] }""",
        "$.readings[0].supplyVolts"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "low-17", "value": 1.7, "supplyVolts": 120 }] }""",
        "$.readings[0].supplyVolts"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "blades", "value": 1, "waived": { "by": "J." } }] }""",
        "$.readings[0].waived"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "left-load", "value": 1, "loads": [{ "from": "post-6", "to": "post-common", "ohms": 4 }] }] }""",
        "$.readings[0].loads"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [{ "id": "left-load", "value": 1, "controls": { "throttle-left": 2 } }] }""",
        "$.readings[0].controls"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "meter": { "farads": { "percent": 1 } } }""",
        "$.meter.farads"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "meter": { "ohms": { "percent": -1 } } }""",
        "$.meter.ohms.percent"
    )]
    [InlineData(
        """{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "meter": { "ohms": { "percent": 0, "floor": 0 } } }""",
        "$.meter.ohms"
    )]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "told": { "smells": "yes" } }""", "$.told.smells")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": [], "told": { "smells": 1 } }""", "$.told.smells")]
    [InlineData("""{ "ohmstead": "readings/1", "sheet": "twin-160", "readings": {} }""", "$.readings")]
    public void A_problem_is_reported_at_its_place(string text, string path)
    {
        var parsed = Read(text);
        Assert.Null(parsed.Value);
        Assert.True(parsed.Problems.Any(p => p.Path.StartsWith(path, StringComparison.Ordinal)), string.Join('\n', parsed.Problems));
    }

    [Fact]
    public void Several_problems_are_reported_at_once()
    {
        var problems = Read(
            """
            { "ohmstead": "readings/1", "sheet": "twin-160", "supplyVolts": "much", "readings": [{ "id": "volts-6", "value": 6 }, { "id": "volts-5" }, { "id": "blades", "value": "open" }], "told": { "smells": "yes" } }
            """
        ).Problems;
        foreach (var path in new[] { "$.supplyVolts", "$.readings[0].id", "$.readings[1].value", "$.readings[2].value", "$.told.smells" })
            Assert.Contains(problems, p => p.Path == path);
    }

    [Fact]
    public void The_cases_of_the_sample_and_of_the_drawn_units_are_read()
    {
        foreach (
            var file in Reference
                .Names("tests/Reference/sample/cases", "*.readings.json")
                .Concat(Reference.Names("tests/Reference/units/twin-160", "*.readings.json"))
        )
            Assert.True(Read(Reference.Text(file)).IsSound, file);
    }

    private static Parsed<UnitReadings> Read(string text) => ReadingsFile.Read(text, Reference.Twin160);
}
