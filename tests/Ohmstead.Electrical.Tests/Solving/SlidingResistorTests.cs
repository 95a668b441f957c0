namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>A resistor with a slider and a tap, sound and faulted, against series resistances: closed forms.</summary>
public class SlidingResistorTests
{
    private const double Ohms = 12,
        Contact = 0.1,
        Open = 1e7;

    private static BenchUnit Unit(object? slider = null, double bridges = 0) =>
        new SheetDraft()
            .Throttle("lever")
            .Element(
                "resistor",
                "wire",
                "feed",
                "free",
                new
                {
                    ohms = Ohms,
                    turns = 200,
                    taps = new[] { new { turn = 50, to = "tap" } },
                    sliders = new[]
                    {
                        slider
                            ?? new
                            {
                                id = "brush",
                                control = "lever",
                                fromTurn = 200,
                                toTurn = 0,
                                to = "arm",
                                contactOhms = Contact,
                                bridgesTurns = bridges,
                            },
                    },
                }
            )
            .Unit();

    private static object At(double x) => new { controls = new { lever = x } };

    [Theory]
    [InlineData(0, Ohms + Contact)]
    [InlineData(0.25, (0.75 * Ohms) + Contact)]
    [InlineData(1, Contact)]
    public void The_ohms_go_with_the_length_that_is_in_use(double x, double expected) =>
        Assert.Equal(expected, Unit().Read("ohms", ["feed", "arm"], At(x)), 1e-6);

    [Fact]
    public void A_tap_has_its_share_and_the_rest_beyond_the_slider_is_not_in_the_path()
    {
        Assert.Equal(Ohms * 50 / 200, Unit().Read("ohms", ["feed", "tap"]), 1e-6);
        Assert.Equal((Ohms * 100 / 200) + Contact, Unit().Read("ohms", ["arm", "tap"], At(0.25)), 1e-6);
    }

    [Fact]
    public void It_goes_by_a_hundred_parts_where_the_sheet_does_not_say()
    {
        var unit = new SheetDraft()
            .Throttle("lever")
            .Element("resistor", "wire", "feed", "free", new { ohms = Ohms, taps = new[] { new { turn = 25, to = "tap" } } })
            .Unit();
        Assert.Equal(Ohms / 4, unit.Read("ohms", ["feed", "tap"]), 1e-6);
    }

    /// <summary>Copper gains (234.5 + 75)/254.5 at 75 °C; resistance wire is taken to stay.</summary>
    [Fact]
    public void It_does_not_follow_copper() => Assert.Equal(Ohms, Unit().Read("ohms", ["feed", "free"], new { celsius = 75 }), 1e-6);

    /// <summary>Half a part to each side of the middle, twice the contact each: R/2 − δ and R/2 + δ side by side from either end.</summary>
    [Fact]
    public void A_brush_on_two_parts_touches_both()
    {
        var (part, wide) = (Ohms / 200, Unit(bridges: 1));
        var (near, far) = ((Ohms / 2) - (part / 2), 2 * Contact);
        Assert.Equal(near + (far * (part + far) / (part + (2 * far))), wide.Read("ohms", ["feed", "arm"], At(0.5)), 1e-6);
    }

    [Theory]
    [InlineData("brush:worn=4", 0.5, (0.5 * Ohms) + 4)]
    [InlineData("wire:shorted", 0.5, 0.005 + Contact)]
    [InlineData("wire:drifted=2", 0.5, Ohms + Contact)]
    [InlineData("wire:open=120", 0.5, (0.5 * Ohms) + Contact)]
    [InlineData("wire:open=60", 0.5, Open + (0.5 * Ohms) + Contact)]
    [InlineData("wire:open", 0.5, Open + (0.5 * Ohms) + Contact)]
    [InlineData("brush:open", 0.5, Open + (0.5 * Ohms))]
    public void A_fault_does_to_it_what_it_says(string fault, double x, double expected) =>
        Assert.Equal(expected, Unit().Read("ohms", ["feed", "arm"], At(x), fault), 1e-6 * expected);

    [Fact]
    public void It_has_the_faults_of_a_resistor_and_not_those_of_a_winding() =>
        Assert.Equal(["wire:open", "wire:shorted", "wire:drifted", "brush:worn", "brush:open"], Unit().Catalogue.Modes.Select(m => m.Name));

    [Theory]
    [InlineData(0, true)]
    [InlineData(0.049, true)]
    [InlineData(0.05, false)]
    [InlineData(0.9, false)]
    [InlineData(0.91, true)]
    public void Where_it_is_off_it_touches_nothing(double x, bool isOff)
    {
        var unit = Unit(
            new
            {
                id = "brush",
                control = "lever",
                fromTurn = 200,
                toTurn = 0,
                to = "arm",
                contactOhms = Contact,
                bridgesTurns = 1,
                offBelow = 0.05,
                offAbove = 0.9,
            }
        );
        // 10 MΩ are less than a meter's over-range; worn or not, it makes no difference there.
        var ohms = unit.Read("ohms", ["feed", "arm"], At(x), "brush:worn=9");
        Assert.Equal(isOff, ohms > 1e6);
        if (isOff)
            Assert.Equal(1e7, ohms, 1e3);
    }

    /// <summary>A divider: the slider's share of the volts, with alternating current too; nothing is induced in it.</summary>
    [Fact]
    public void It_divides_alternating_volts() =>
        Assert.Equal(
            120 * 0.3,
            Unit()
                .Read(
                    "ac-volts",
                    ["arm", "free"],
                    new
                    {
                        source = new
                        {
                            from = "feed",
                            to = "free",
                            volts = 120,
                        },
                        controls = new { lever = 0.3 },
                    }
                ),
            1e-6
        );
}
