using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Outlines;

/// <summary>
/// The numbers before any reading, each worked out here for a plate of 230 V, 50 Hz, 300 W: VA/150 is 2. The constants are common
/// practice, no source (docs/methods/outline.md).
/// </summary>
public class PriorTests
{
    private const double Close = 1e-5;

    private static readonly OutlineKind Kind = OutlineText.Kind(
        OutlineText.Of(
            OutlineText.Main
                + ","
                + OutlineText.Roller
                + """
                , { "block": "winding", "id": "lamp", "volts": 6.3 }, { "block": "whistle", "throttle": "t", "boost": 6, "cell": "selenium" }, { "block": "range", "throttle": "t", "boost": 3 }, { "block": "breaker", "in": "common", "amps": 5 }, { "block": "breaker", "in": "primary", "amps": 2 }, { "block": "breaker", "in": "c" }, { "block": "pilot", "across": ["a", "c"] }
                """,
            """{ "volts": 230, "watts": 300 }"""
        )
    );

    private static TypeSheet Sheet => Kind.Sheet;

    private static Winding Of(string id) => Sheet.Windings.Single(w => w.Id == id);

    private static void Near(double expected, double actual) => Assert.InRange(actual / expected, 1 - Close, 1 + Close);

    // 230/(0.0034·√(300·50)) = 230/(0.0034·122.474) = 552.336
    private static double Turns => 230 / (0.0034 * Math.Sqrt(15_000));

    // 0.042·2^(−¼)·230²/300 = 0.042·0.840896·176.333 = 6.22768
    private const double PrimaryOhms = 0.042 * 0.8408964153 * 230 * 230 / 300;

    [Fact]
    public void The_primary_and_the_core_follow_the_plate()
    {
        Near(552.336, Turns);
        Near(Turns, Of("primary").Turns);
        Near(6.22768, Of("primary").Ohms);
        Near(0.36 * PrimaryOhms / (2 * Math.PI * 50), Of("primary").LeakageHenries);
        var core = Sheet.Cores.Single();
        // 230²/(9.5·2^¾) = 52900/(9.5·1.681793)
        Near(52900 / (9.5 * 1.6817928305), core.LossOhms);
        // 24·2^¾/230 at 230 V
        var amps = 24 * 1.6817928305 / 230;
        Assert.Equal([0, 115, 207, 230, 253], core.Excitation.Select(p => Math.Round(p.Volts, 6)));
        Near(amps * 0.30, core.Excitation[1].Amps);
        Near(amps * 0.76, core.Excitation[2].Amps);
        Near(amps, core.Excitation[3].Amps);
        Near(amps * 1.46, core.Excitation[4].Amps);
        Near(double.Hypot(0.10, 0.25), core.Spread.Of("lossOhms", 0));
        Near(double.Hypot(0.12, 0.35), core.Spread.Of("excitation", 0));
        Near(double.Hypot(0.08, 0.25), Of("primary").Spread.Of("ohms", 0));
        Near(double.Hypot(0.2, 0.4), Of("primary").Spread.Of("leakageHenries", 0));
        // Only ratios can be measured: no doubt about the primary's turns.
        Assert.Equal(0, Of("primary").KindError.Of("turns", 0));
    }

    [Fact]
    public void A_winding_and_its_taps_follow_their_volts()
    {
        var main = Of("main");
        Near(1.005 * 16 / 230 * Turns, main.Turns);
        Near(1.005 * 6 / 230 * Turns, main.Taps[0].Turn);
        Near(1.005 * 14 / 230 * Turns, main.Taps[1].Turn);
        Near(1.005 * 5 / 230 * Turns, main.Sliders[0].FromTurn);
        Near(1.005 * 16 / 230 * Turns, main.Sliders[0].ToTurn);
        var ohms = 1.35 * PrimaryOhms * Math.Pow(1.005 * 16 / 230, 2);
        Near(ohms, main.Ohms);
        Near(0.18 * ohms / (2 * Math.PI * 50), main.LeakageHenries);
        // 0.03 of the winding and, on the mean, 0.03 of its taps, beside the units' 0.006.
        Near(Math.Sqrt(0.0009 + 0.0009), main.KindError.Of("turns", 0));
        Near(Math.Sqrt(0.000036 + 0.0018), main.Spread.Of("turns", 0));
        Near(0.3, main.KindError.Of("ohms", 0));
        Near(0.6, main.KindError.Of("leakageHenries", 0));
        Near(0.09, main.Sliders[0].ContactOhms);
        Near(double.Hypot(0.4, 0.35), main.Sliders[0].Spread.Of("contactOhms", 0));
    }

    [Fact]
    public void A_winding_without_a_throttle_has_a_quarter_of_the_watts()
    {
        var lamp = Of("lamp");
        Near(1.35 * PrimaryOhms * Math.Pow(1.005 * 6.3 / 230, 2) * 4, lamp.Ohms);
        Near(0.06, lamp.KindError.Of("turns", 0));
        Near(0.45, lamp.KindError.Of("ohms", 0));
    }

    [Fact]
    public void Boost_and_range_are_wound_like_the_main_winding()
    {
        var (boost, extra, main) = (Of("boost-t"), Of("extra-t"), Of("main"));
        Near(1.005 * 6 / 230 * Turns, boost.Turns);
        Near(1.005 * 3 / 230 * Turns, extra.Turns);
        Near(1.45 * main.Ohms / main.Turns * boost.Turns, boost.Ohms);
        Near(boost.Ohms / 2, extra.Ohms);
        Near(0.09 * boost.Ohms / (2 * Math.PI * 50), boost.LeakageHenries);
        Near(0.10, boost.KindError.Of("turns", 0));
        Near(0.35, extra.KindError.Of("ohms", 0));
    }

    [Fact]
    public void A_breaker_drops_three_tenths_of_a_volt_and_seven_in_the_primary()
    {
        double Ohms(string id) => Assert.IsType<Resistive>(Sheet.Elements.Single(e => e.Id == id)).Ohms;
        double Doubt(string id) => Sheet.Elements.Single(e => e.Id == id).KindError.Of("ohms", 0);
        Near(0.3 / 5, Ohms("breaker"));
        Near(0.7 / 2, Ohms("breaker-primary"));
        // Nobody knows its amps: 1.35·0.72·300/16.
        Near(0.3 / (1.35 * 216 / 16), Ohms("breaker-c"));
        Assert.Equal((0.35, 0.35, 0.5), (Doubt("breaker"), Doubt("breaker-primary"), Doubt("breaker-c")));
    }

    [Theory]
    [InlineData("disc", 2.2e-3, 0.12, 0.12, 110, 0.6, 0.1, 0.35, 0.6)]
    [InlineData("selenium", 1.5e-3, 0.14, 0.15, 300, 0.8, 0.15, 0.5, 0.9)]
    [InlineData("silicon", 1e-8, 0.05, 0.03, 2e6, 1, 0.05, 0.5, 1)]
    public void A_cell_is_of_its_sort(
        string cell,
        double saturation,
        double slope,
        double series,
        double leakage,
        double doubtSaturation,
        double doubtSlope,
        double doubtSeries,
        double doubtLeakage
    )
    {
        var d = OutlineText
            .Sheet(OutlineText.Of(OutlineText.Main + $$""", { "block": "rectifier", "post": "d", "from": "c", "cell": "{{cell}}" }"""))
            .Elements.OfType<Rectifier>()
            .Single();
        Assert.Equal((saturation, slope, series, leakage), (d.SaturationAmps, d.SlopeVolts, d.SeriesOhms, d.LeakageOhms));
        Assert.Equal(
            (doubtSaturation, doubtSlope, doubtSeries, doubtLeakage),
            (
                d.KindError.Of("saturationAmps", 0),
                d.KindError.Of("slopeVolts", 0),
                d.KindError.Of("seriesOhms", 0),
                d.KindError.Of("leakageOhms", 0)
            )
        );
    }

    [Fact]
    public void Small_parts_are_as_they_usually_are()
    {
        double Ohms(string id) => Assert.IsType<Resistive>(Sheet.Elements.Single(e => e.Id == id)).Ohms;
        Assert.Equal((0.05, 0.004, 0.002, 1.5), (Ohms("cord-1"), Ohms("w-a"), Ohms("joint-main"), Ohms("ballast-t")));
        Near(double.Hypot(0.25, 0.3), Sheet.Elements.Single(e => e.Id == "w-a").Spread.Of("ohms", 0));
        var pilot = Sheet.Elements.OfType<Lamp>().Single();
        Near(1.12 * 14, pilot.Volts);
        Assert.Equal((0.12, 0.3), (pilot.Amps, pilot.KindError.Of("amps", 0)));
        // One that lights when the breaker in the primary opens has the line across it.
        var across = OutlineText
            .Sheet(
                OutlineText.Of(
                    OutlineText.Main + """, { "block": "breaker", "in": "primary" }, { "block": "pilot", "across": "breaker" }"""
                )
            )
            .Elements.OfType<Lamp>()
            .Single();
        Near(1.12 * 120, across.Volts);
        Assert.Equal(
            (2, 3),
            (
                Sheet.Elements.First(e => e.Id == "cord-2").Percents["open"],
                Sheet.Elements.First(e => e.Id == "cord-2").Percents["resistive"]
            )
        );
        // Half to twice 6.22768 + two cords, two joints and the breaker: 6.68168.
        var blades = Sheet.FindReading("blades")!.Limits!;
        Near(6.68168 / 2, blades.Min);
        Near(6.68168 * 2, blades.Max);
    }

    [Fact]
    public void A_plate_without_watts_is_taken_for_100_W_with_more_doubt()
    {
        var sheet = OutlineText.Sheet(OutlineText.Of(OutlineText.Main, """{ "volts": 120 }"""));
        var primary = sheet.Windings.Single(w => w.Id == "primary");
        Near(120 / (0.0034 * Math.Sqrt(6000)), primary.Turns);
        Near(0.042 * Math.Pow(100 / 150.0, -0.25) * 144, primary.Ohms);
        Near(double.Hypot(0.25, 0.4), primary.KindError.Of("ohms", 0));
        // A ratio does not hang on the watts.
        Near(Math.Sqrt(0.0018), sheet.Windings.Single(w => w.Id == "main").KindError.Of("turns", 0));
    }

    [Fact]
    public void A_range_of_volts_is_its_middle_and_widens_the_spread()
    {
        var main = OutlineText
            .Sheet(OutlineText.Of("""{ "block": "winding", "id": "main", "from": "a", "posts": { "b": { "between": [4, 9] } } }"""))
            .Windings.Single(w => w.Id == "main");
        var turns = 120 / (0.0034 * Math.Sqrt(9000));
        // Middle √(4·9) = 6; ln(9/4) are 2·1.96 deviations.
        Near(1.005 * 6 / 120 * turns, main.Turns);
        Near(double.Hypot(0.03, Math.Log(9.0 / 4) / (2 * 1.959964)), main.KindError.Of("turns", 0));
    }

    [Fact]
    public void A_plate_between_two_volts_is_its_middle_and_widens_what_hangs_on_it()
    {
        // Middle √(100·144) = 120; ln(1.44) are 2·1.96 deviations. A ratio goes with V, ohms and core loss with V².
        var (kind, plain) = (
            OutlineText.Kind(OutlineText.Of(OutlineText.Main, """{ "volts": { "between": [100, 144] }, "watts": 150 }""")).Sheet,
            OutlineText.Sheet(OutlineText.Of(OutlineText.Main))
        );
        var doubt = Math.Log(1.44) / (2 * 1.959964);
        Near(120, kind.SupplyVolts);
        Near(plain.Windings.Single(w => w.Id == "main").Turns, kind.Windings.Single(w => w.Id == "main").Turns);
        Near(double.Hypot(0.25, 2 * doubt), kind.Windings.Single(w => w.Id == "primary").KindError.Of("ohms", 0));
        Near(double.Hypot(0.25, 2 * doubt), kind.Cores.Single().KindError.Of("lossOhms", 0));
        Near(Math.Sqrt(0.0018 + (2 * doubt * doubt)), kind.Windings.Single(w => w.Id == "main").KindError.Of("turns", 0));
    }

    [Fact]
    public void Where_a_number_comes_from_is_kept()
    {
        Origin Of(string path) => Kind.Values.Single(v => v.Path == path).Origin;
        Assert.Equal(Origin.Stated, Of("elements.main.turns"));
        Assert.Equal(Origin.Stated, Of("elements.roller-t.toTurn"));
        Assert.Equal(Origin.Derived, Of("elements.primary.ohms"));
        Assert.Equal(Origin.Derived, Of("elements.breaker.ohms"));
        Assert.Equal(Origin.Assumed, Of("elements.breaker-c.ohms"));
        Assert.Equal(Origin.Assumed, Of("elements.roller-t.contactOhms"));
        Assert.Equal(Origin.Assumed, Of("supply.hertz"));
        Assert.Equal(Origin.Stated, Of("rating.inputWatts"));
        var guessed = OutlineText.Kind(OutlineText.Of(OutlineText.Main, """{ "volts": 120 }"""));
        Assert.Equal(Origin.Assumed, guessed.Values.Single(v => v.Path == "elements.primary.ohms").Origin);
        Assert.Equal(0.35, Kind.Values.Single(v => v.Path == "elements.breaker.ohms").RelativeError);
    }

    [Fact]
    public void A_line_tap_above_the_plate_makes_the_whole_primary_longer()
    {
        var primary = OutlineText.Sheet(OutlineText.Direct).Windings.Single(w => w.Id == "primary");
        var atPlate = 110 / (0.0034 * Math.Sqrt(3600));
        Near(atPlate * 120 / 110, primary.Turns);
        Near(atPlate, primary.Taps.Single(t => t.To == "primary-110").Turn);
        // Excitation is that of the whole primary: at 120 V of it the part in use has 110 V.
        var core = OutlineText.Sheet(OutlineText.Direct).Cores.Single(c => c.Id == "core");
        Near(120, core.Excitation[3].Volts);
        Near(24 * Math.Pow(60 / 150.0, 0.75) / 110 * 110 / 120, core.Excitation[3].Amps);
    }
}
