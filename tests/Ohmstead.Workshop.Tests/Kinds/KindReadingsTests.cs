using Ohmstead.Electrical.Circuits;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Kinds;

public class KindReadingsTests
{
    private static BenchUnit Unit(int number, params Fact[] facts)
    {
        var id = new Guid(number, 0, 0, new byte[8]);
        Fact[] all = [new TakenIn($"F-{number.ToString(System.Globalization.CultureInfo.InvariantCulture)}", "pair", "", ""), .. facts];
        return UnitHistory.Fold([
            .. all.Select((f, n) => new Entry(new Guid(number, (short)n, 1, new byte[8]), id, n + 1, DateTimeOffset.UnixEpoch, "bench", f)),
        ]);
    }

    private static ReadingEntered Read(string id, double value, double line = 120, string load = "") =>
        new(id, Shown.Number(value), BenchState.AsSheet with { SupplyVolts = line, LoadId = load });

    private static KindReading Of(string id, params BenchUnit[] units) =>
        KindReadings.Of(new UnitModel(Kind.Sheet), units, Shop.Usual).First(r => r.Spec.Id == id);

    [Fact]
    public void Volts_are_brought_to_the_line_of_the_sheet()
    {
        // 20.4 V at 122.4 V of line are 20 V at 120 V: both by 1.02.
        var reading = Of("idle", Unit(1, Read("idle", 20.4, 122.4)), Unit(2, Read("idle", 20)), Unit(3, Read("idle", 19)));
        Assert.Equal([19, 20, 20], reading.Values.Select(v => Math.Round(v.Value, 9)));
        Assert.Equal(20, reading.Median, 9);
    }

    [Fact]
    public void Ohms_do_not_follow_the_line() => Assert.Equal(3.3, Of("cold", Unit(1, Read("cold", 3.3, 130))).Median);

    [Fact]
    public void The_spread_of_a_normal_row_is_its_deviation()
    {
        // The quartiles of 1, 2, 3, 4, 5 lie one from the median: 1.4826 (closed form, 1/Φ⁻¹(3/4)).
        var reading = Of("cold", [.. Enumerable.Range(1, 5).Select(n => Unit(n, Read("cold", n)))]);
        Assert.Equal(1.4826, reading.Spread, 4);
        Assert.Equal(2 / 1.4826, reading.Deviations(5)!.Value, 3);
    }

    [Fact]
    public void Two_values_have_no_spread() => Assert.Null(Of("cold", Unit(1, Read("cold", 3)), Unit(2, Read("cold", 4))).Deviations(5));

    [Fact]
    public void The_last_value_of_a_unit_counts_and_none_from_before_a_repair()
    {
        var unit = Unit(1, Read("cold", 5), Read("cold", 3), new PartChanged("primary", PartChange.Rewired, null, ""));
        Assert.Empty(Of("cold", unit).Values);
        Assert.Equal([3], Of("cold", Unit(1, Read("cold", 5), Read("cold", 3))).Values.Select(v => v.Value));
    }

    [Fact]
    public void Another_load_is_another_reading()
    {
        Assert.Empty(Of("loaded", Unit(1, Read("loaded", 19, load: "r-5"))).Values);
        Assert.Single(Of("loaded", Unit(1, Read("loaded", 19, load: "r-4"))).Values);
    }

    [Fact]
    public void OL_is_counted_apart()
    {
        var reading = Of("cold", Unit(1, new ReadingEntered("cold", Shown.OverRange, BenchState.AsSheet)));
        Assert.Equal((0, 1), (reading.Values.Length, reading.Open));
    }

    [Fact]
    public void A_unit_is_found_sound_when_its_findings_are_closed_and_what_was_confirmed_was_repaired()
    {
        var closed = new StageClosed(Stage.Findings, true, "");
        var confirmed = new FindingJudged("primary", "open", Judgement.Confirmed, "");
        Assert.False(KindFit.IsFoundSound(Unit(1, Read("cold", 3))));
        Assert.True(KindFit.IsFoundSound(Unit(1, Read("cold", 3), closed)));
        Assert.False(KindFit.IsFoundSound(Unit(1, confirmed, closed)));
        Assert.True(KindFit.IsFoundSound(Unit(1, confirmed, new PartChanged("primary", PartChange.Renewed, null, ""), closed)));
    }

    [Fact]
    public void A_fit_to_units_of_three_and_a_half_ohms_finds_them()
    {
        var units = Enumerable.Range(1, 12).Select(n => Unit(n, Read("cold", 3.5 + (0.2 * Math.Sin(n)) + 0.2)));
        var fitted = KindFit.Run(new UnitModel(Kind.Sheet), units, Shop.Usual).Parameters.First(p => p.Path == "elements.primary.ohms");
        // The usual meter's leads, 0.2 Ω, are in the readings; the mean of sin over twelve is −0.01.
        Assert.InRange(fitted.Value, 3.4, 3.6);
        Assert.True(fitted.Determined);
    }
}
