using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>
/// A reading taken again under other conditions, or with another meter, is another reading: what is remembered of the first is not taken for it.
/// Held against a library that remembers nothing.
/// </summary>
public class KnownRowsTests
{
    private static readonly BenchUnit Unit = new SheetDraft()
        .Selector("lever", "on", "off")
        .Selector("knob", "low", "high")
        .Element("lamp", "bulb", "a", "m", new { volts = 120, amps = 0.5 })
        .Element("switch", "contact", "m", "b", new { control = "lever", closedIn = new[] { "on" } })
        .Element("switch", "other", "m", "b", new { control = "knob", closedIn = new[] { "high" } })
        .Resistor("bleed", "m", "b", 500)
        .Resistor("rest", "b", "g", 200)
        .Reading(
            "volts",
            "ac-volts",
            ["b", "g"],
            new
            {
                source = new
                {
                    from = "a",
                    to = "g",
                    volts = 120,
                },
            }
        )
        .Unit();

    private static readonly ReadingSpec Spec = Unit.Model.Sheet.Readings[0];
    private static readonly MeterError Usual = Meter.Usual.For(Quantity.AcVolts);

    public static TheoryData<string> Conditions => ["volts", "load", "henries", "where", "lever", "knob", "percent", "floor"];

    [Theory]
    [MemberData(nameof(Conditions))]
    public void Under_another_condition_it_is_worked_out_anew(string which)
    {
        var library = new ReadingLibrary(Unit.Model);
        var usual = Row(library, Spec.State, Usual);
        var (state, error) = Changed(which);
        var (again, fresh) = (Row(library, state, error), Row(new ReadingLibrary(Unit.Model), state, error));
        Assert.Equal(fresh.Sound, again.Sound);
        Assert.Equal(fresh.Slopes, again.Slopes);
        Assert.NotEqual(usual.Sound, again.Sound);
        // And the first is still known.
        Assert.Same(usual, Row(library, Spec.State, Usual));
    }

    /// <summary>Windings are warmer, a throttle stands elsewhere, the leads are still in the ohms, the meter averages.</summary>
    [Theory]
    [InlineData("ohms-left", "celsius")]
    [InlineData("ohms-left", "throttle")]
    [InlineData("ohms-left", "leads")]
    [InlineData("right-second-dc", "averaging")]
    public void So_it_is_on_a_sheet_with_windings_and_rectifiers(string id, string which)
    {
        var twin = new BenchUnit(Reference.Twin160);
        var library = new ReadingLibrary(twin.Model);
        var spec = Reference.Twin160.FindReading(id)! with { Quantity = id == "ohms-left" ? Quantity.Ohms : Quantity.AcVolts };
        var error = Meter.Usual.For(spec.Quantity);
        double Sound(ReadingLibrary of, ReadingState state, MeterError meter)
        {
            var set = new ReadingSet(twin.Model, of.Catalogue, [(spec, state, meter)]);
            return of.Rows(set, new Workers(set, 1), () => true)[0].Sound;
        }
        var (state, other) = which switch
        {
            "celsius" => (spec.State with { Celsius = spec.State.Celsius + 40 }, error),
            "throttle" => (spec.State with { Controls = spec.State.Controls.SetItem("throttle-left", new(0.5, "")) }, error),
            "leads" => (spec.State, error with { LeadOhms = 0.3 }),
            _ => (spec.State, error with { IsAveraging = true }),
        };
        var usual = Sound(library, spec.State, error);
        Assert.NotEqual(usual, Sound(library, state, other));
        Assert.Equal(Sound(new ReadingLibrary(twin.Model), state, other), Sound(library, state, other));
        Assert.Equal(usual, Sound(library, spec.State, error));
    }

    /// <summary>One stands where the other does not: each by itself is off its place of rest.</summary>
    [Fact]
    public void Which_control_stands_elsewhere_is_told_apart()
    {
        var library = new ReadingLibrary(Unit.Model);
        var (lever, knob) = (Changed("lever").State, Changed("knob").State);
        Assert.NotEqual(Row(library, lever, Usual).Sound, Row(library, knob, Usual).Sound);
        Assert.Equal(Row(new ReadingLibrary(Unit.Model), knob, Usual).Sound, Row(library, knob, Usual).Sound);
    }

    private static (ReadingState State, MeterError Error) Changed(string which)
    {
        var (usual, source) = (Spec.State, Spec.State.Source!);
        ReadingState Loaded(double henries, string to = "g") => usual with { Loads = [new("b", to, 150, henries)] };
        return which switch
        {
            "volts" => (usual with { Source = source with { Volts = 110 } }, Usual),
            "load" => (Loaded(0), Usual),
            "henries" => (Loaded(0.5), Usual),
            "where" => (Loaded(0, "m"), Usual),
            "lever" => (usual with { Controls = usual.Controls.SetItem("lever", new(0, "off")) }, Usual),
            "knob" => (usual with { Controls = usual.Controls.SetItem("knob", new(0, "high")) }, Usual),
            "percent" => (usual, Usual with { Percent = 2 }),
            _ => (usual, Usual with { Floor = 0.5 }),
        };
    }

    private static ReadingRow Row(ReadingLibrary library, ReadingState state, MeterError error)
    {
        var set = new ReadingSet(Unit.Model, library.Catalogue, [(Spec, state, error)]);
        return library.Rows(set, new Workers(set, 1), () => false)[0];
    }
}
