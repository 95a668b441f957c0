using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>Measured parts and what they speak for, on the numbers of the examples in docs/methods/deciding.md and in closed form.</summary>
public class PartMeasureTests
{
    private static PartMeasure Of(string about, params (string Name, string Text)[] typed) =>
        typed.Aggregate(PartMeasure.For(OnTheBench.Sheet, about)!, (m, t) => m.With(t.Name, t.Text));

    private static PartMeasure Roller(params (string Name, string Text)[] typed) =>
        Of("roller-left", [("new", "9.5"), ("turn", "0.357"), ("side", "0.06"), .. typed]);

    /// <summary>7.0 of 9.5 mm is 73.7 %: within five points of 70 %. 0.357 V over 0.12 Ω is 2.98 A.</summary>
    [Theory]
    [InlineData("7.0", "0", "0.06", DecidedAct.Watch, "74 % of its size left")]
    [InlineData("9.3", "0.4", "0.06", DecidedAct.Leave, "98 % of its size left")]
    [InlineData("6.5", "0", "0.06", DecidedAct.Replace, "68 % of its size left")]
    [InlineData("9.3", "0.6", "0.06", DecidedAct.Replace, "a flat of 0.6 mm")]
    [InlineData("9.3", "0", "0.6", DecidedAct.Replace, "poor contact")]
    [InlineData("9.3", "0", "0.0036", DecidedAct.Replace, "of heat in the loop")]
    public void A_roller_is_judged_by_size_flat_contact_and_loop(string now, string flat, string side, DecidedAct act, string why)
    {
        var verdict = Roller(("now", now), ("flat", flat), ("side", side)).Verdict()!;
        Assert.Equal(act, verdict.Act);
        Assert.Contains(why, verdict.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_roller_cannot_grow_and_nothing_is_said_before_it_was_measured()
    {
        Assert.Null(Roller().Verdict());
        Assert.Null(Roller(("now", "9.6")).Verdict());
        Assert.Contains(Roller(("now", "9.6")).Problems, p => p.Contains("only wears down", StringComparison.Ordinal));
        Assert.Contains(Roller(("now", "5"), ("flat", "6")).Problems, p => p.Contains("no wider", StringComparison.Ordinal));
        Assert.Contains(Roller(("now", "7..0")).Problems, p => p.Contains("is not a number", StringComparison.Ordinal));
    }

    /// <summary>18 AWG carries 10 A at 30 °C (table), at 40 °C 10·√(20/30) = 8.16 A; a 6.6 mm cord does not go through 6.0 mm.</summary>
    [Fact]
    public void A_cord_is_judged_by_its_amps_and_by_the_holes_it_goes_through()
    {
        PartMeasure Cord(params (string, string)[] typed) => Of("cord-1", [("gauge", "18"), ("amps", "1.58"), ("around", "40"), .. typed]);
        Assert.Equal(DecidedAct.Replace, Cord().Verdict()!.Act);
        Assert.Contains(Cord().Verdict()!.Rows, r => r is { Name: "carries here", Value: "8.16 A" });
        var tight = Cord(("outside", "6.6"), ("grommet", "6.0")).Verdict()!;
        Assert.Equal(DecidedAct.Open, tight.Act);
        Assert.Contains("grommet", tight.Why, StringComparison.Ordinal);
        Assert.Contains("too thin", Cord(("amps", "8.2")).Verdict()!.Why, StringComparison.Ordinal);
        Assert.Contains(Cord(("gauge", "17.5")).Problems, p => p.Contains("whole number", StringComparison.Ordinal));
    }

    /// <summary>A wire more than a tenth off is replaced, more than 7 % off watched. Common practice, no source.</summary>
    [Theory]
    [InlineData(1.00, DecidedAct.Leave)]
    [InlineData(1.06, DecidedAct.Leave)]
    [InlineData(0.92, DecidedAct.Watch)]
    [InlineData(1.12, DecidedAct.Replace)]
    [InlineData(0.50, DecidedAct.Replace)]
    public void A_resistance_wire_is_judged_by_its_own_ohms(double share, DecidedAct act)
    {
        var wire = (WireMeasure)PartMeasure.For(OnTheBench.Sheet, Resistor)!;
        var typed = Ohmstead.Workshop.Shops.ShopEdit.Show(share * wire.SoundOhms);
        Assert.Equal(act, wire.With("ohms", typed).Verdict()!.Act);
        Assert.Equal(DecidedAct.Open, wire.Verdict()!.Act);
        Assert.Contains(wire.Verdict()!.Cautions, c => c.Contains("asbestos", StringComparison.Ordinal));
    }

    private static string Resistor =>
        OnTheBench.Sheet.Elements.First(e => e.Kind == Ohmstead.Electrical.TypeSheets.ElementKind.Resistor).Id;

    /// <summary>An 18 V 0.2 A lamp at 16 V: 0.2·(16/18)^0.55 = 0.187 A, 3.00 W; a 14 V 0.25 A one there draws 4.31 W.</summary>
    [Fact]
    public void A_lamp_is_judged_by_its_heat_at_the_socket()
    {
        var id = OnTheBench.Sheet.Elements.OfType<Ohmstead.Electrical.TypeSheets.Lamp>().First().Id;
        var lamp = ((LampMeasure)PartMeasure.For(OnTheBench.Sheet, id)!) with { OriginalVolts = 14, OriginalAmps = 0.25 };
        var cool = (LampMeasure)lamp.With("socket", "16").With("volts", "18").With("amps", "0.2");
        Assert.Equal("18.0 V, 0.200 A", cool.Marked);
        Assert.Equal(DecidedAct.Replace, cool.Verdict()!.Act);
        Assert.Contains(cool.Verdict()!.Rows, r => r.Name == "draws" && r.Value == "0.187 A, 3.00 W");
        Assert.Equal([new PartFigure("volts", 18), new PartFigure("amps", 0.2)], cool.Figures);
        Assert.Equal(DecidedAct.Open, cool.With("amps", "0.5").Verdict()!.Act);
        Assert.Empty(((LampMeasure)lamp.With("volts", "14").With("amps", "0.25")).Figures);
    }

    [Fact]
    public void A_joint_has_nothing_to_measure_here() =>
        Assert.Null(
            PartMeasure.For(
                OnTheBench.Sheet,
                OnTheBench.Sheet.Elements.First(e => e.Kind == Ohmstead.Electrical.TypeSheets.ElementKind.Joint).Id
            )
        );
}
