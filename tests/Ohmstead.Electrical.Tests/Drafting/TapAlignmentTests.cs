using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Tests.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Drafting;

/// <summary>Taps are moved against each other by no-load volts, and by nothing else.</summary>
public class TapAlignmentTests
{
    private static readonly TypeSheet Wide = OutlineText.Sheet(OutlineText.Of(OutlineText.Main + "," + OutlineText.Roller));

    private static Winding Aligned(params (string Id, double Value)[] taken) =>
        TapAlignment
            .Of(
                Wide,
                new UnitReadings(
                    "x",
                    120,
                    null,
                    Meter.Usual,
                    [
                        .. taken
                            .Select(t => (Spec: Wide.FindReading(t.Id)!, t.Value))
                            .Select(t => new TakenReading(t.Spec, Outcome.Value, t.Value, [], "", "", t.Spec.State)),
                    ],
                    []
                )
            )
            .Windings.Single(w => w.Id == "main");

    private static Winding Main => Wide.Windings.Single(w => w.Id == "main");

    [Fact]
    public void A_tap_that_is_off_against_the_others_moves_by_itself()
    {
        // Post B 5 % high, the others as the outline has them (5.99, 13.98, 15.97 and 4.99 V with no load).
        var main = Aligned(("volts-b", 6.29), ("volts-c", 13.98), ("t-full", 15.97), ("t-low", 4.99));
        // 5 % against three that agree: the winding's factor takes a fifth of it or less, for each of the five has the same doubt.
        Assert.InRange(main.Taps[0].Turn / Main.Taps[0].Turn, 1.03, 1.05);
        foreach (
            var by in new[]
            {
                main.Taps[1].Turn / Main.Taps[1].Turn,
                main.Sliders[0].FromTurn / Main.Sliders[0].FromTurn,
                main.Sliders[0].ToTurn / Main.Sliders[0].ToTurn,
            }
        )
            Assert.InRange(by, 0.985, 1.003);
        Assert.Equal(Main.Ohms, main.Ohms);
        Assert.Equal(Main.Spread.Of("turns", 0), main.Spread.Of("turns", 0));
    }

    [Fact]
    public void Loads_and_volts_that_are_a_faults_move_nothing()
    {
        Assert.Equal(Main.Taps, Aligned(("load-c", 10), ("t-load", 9)).Taps);
        // 3 V where 6 were due is no tap that is off.
        Assert.Equal(Main.Taps, Aligned(("volts-b", 3)).Taps);
        // A sheet whose turns are known is left as it is.
        Assert.Same(Reference.Twin160, TapAlignment.Of(Reference.Twin160, new UnitReadings("twin-160", 120, null, Meter.Usual, [], [])));
    }
}
