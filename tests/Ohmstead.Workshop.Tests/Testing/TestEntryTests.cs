using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;

namespace Ohmstead.Workshop.Tests.Testing;

/// <summary>What is entered in a test, and the verdict in words.</summary>
public class TestEntryTests
{
    private static readonly string Insulation = TestList.OfReading("insulation-core");

    [Theory]
    // ILAC-G8:09/2019, 4.2.3, with 2 MΩ and a meter of 5 % + 0.03 MΩ: the four words in order (docs/methods/proving.md).
    [InlineData(2.30, TestEnd.Pass, "Pass: at least 2 MΩ, with the meter’s error.")]
    [InlineData(2.10, TestEnd.ClosePass, "Close pass: inside at least 2 MΩ, but by less than the meter’s error.")]
    [InlineData(1.95, TestEnd.CloseFail, "Close fail: outside at least 2 MΩ, but by less than the meter’s error.")]
    [InlineData(1.80, TestEnd.Fail, "Fail: outside at least 2 MΩ, with the meter’s error.")]
    public void Insulation_ends_in_one_of_four_words(double megohms, TestEnd end, string words)
    {
        var unit = new TestedUnit();
        Assert.Equal("", unit.Take(Insulation, Shown.Number(megohms * 1e6)).Refused);
        var result = unit.Result(Insulation);
        Assert.Equal(end, result.End);
        Assert.StartsWith(words, result.Words[0], StringComparison.Ordinal);
        Assert.Contains("chances in 100.", result.Words[1], StringComparison.Ordinal);
        Assert.Equal("at least 2 MΩ", result.LimitWords);
        Assert.Equal("the type sheet", result.Limit!.Source);
    }

    [Fact]
    public void What_mains_depends_on_is_typed_once_and_no_mean_hides_a_bad_one()
    {
        var unit = new TestedUnit();
        var shown = new[] { 0.5, 100, 100, 100 }.Select(m => Shown.Number(m * 1e6)).ToArray();
        Assert.Contains("Type it once", unit.Take(Insulation, shown).Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void The_limit_stands_there_with_its_source_before_anything_is_read()
    {
        var unit = new TestedUnit();
        var whistle = unit.Result(TestList.OfReading("left-first-dc"));
        Assert.Equal(
            (TestEnd.ToDo, "at least 4 V", "common practice, no source"),
            (whistle.End, whistle.LimitWords, whistle.Limit!.Source)
        );
        Assert.Equal("at least 1 V", unit.Result(TestList.OfReading("left-second-dc")).LimitWords);
        // 0.1 Ω and the leads of the hand meter, 0.2 Ω.
        Assert.Equal("at most 0.3 Ω", unit.Result(TestList.Ground).LimitWords);
        Assert.Equal(
            ("at most 0.25 mA", "IEC 60950, class II, as listed"),
            (unit.Result(TestList.Touch).LimitWords, unit.Result(TestList.Touch).Limit!.Source)
        );
        Assert.Equal(TestBounds.OwnBand, unit.Result(TestList.OfReading("watts-idle")).Limit!.Source);
    }

    [Fact]
    public void Four_readings_are_entered_as_their_mean_and_judged_by_all_of_them()
    {
        // 18.10, 18.30, 18.20, 18.25 V against 18 V with 0.8 % + 0.03 V: close pass, outside in 4.18 of 100 (docs/methods/proving.md).
        var taken = new TestTaken(DateTimeOffset.UnixEpoch, [18.10, 18.30, 18.20, 18.25], null, 0.8, 0.03, null, "");
        var answer = TestQuestion
            .Verdict(new(18, null, "V", "a rule"), taken, 120)
            .Ask<Electrical.Reckoning.Proving.VerdictAnswer>()
            .Answer!;
        Assert.Equal("close-pass", answer.Verdict);
        Assert.Equal(4.18, answer.ChanceOutsidePercent!.Value, 2);

        var unit = new TestedUnit();
        var id = TestList.OfReading("left-first-dc");
        Assert.Equal("", unit.Take(id, [.. new[] { 4.1, 4.3, 4.2, 4.25 }.Select(Shown.Number)]).Refused);
        Assert.Equal(4.2125, unit.Bench.Unit.CurrentReadings.Last().Fact.Shown.Value, 9);
        Assert.Equal([4.1, 4.3, 4.2, 4.25], unit.Get(id).Taken!.Values);
        Assert.Equal("4.212 V, mean of 4", unit.Result(id).Read);
        // Another reading of the same counts, and the four are of the past.
        unit.Bench.Read("left-first-dc", 5.1);
        Assert.Equal([5.1], unit.Get(id).Taken!.Values);
    }

    [Fact]
    public void Two_readings_are_refused_and_OL_four_times()
    {
        var unit = new TestedUnit();
        Assert.Equal("Type it once, or four times.", unit.Take(Insulation, Shown.Number(1e6), Shown.Number(2e6)).Refused);
        Assert.StartsWith(
            "OL is typed once.",
            unit.Take(TestList.OfReading("left-first-dc"), Shown.OverRange, Shown.OverRange, Shown.OverRange, Shown.OverRange).Refused,
            StringComparison.Ordinal
        );
        Assert.Equal("", unit.Take(Insulation, Shown.OverRange).Refused);
        // An insulation tester that shows OL above 1 GΩ says that it is above 2 MΩ.
        Assert.Equal((TestEnd.Pass, "OL"), (unit.Result(Insulation).End, unit.Result(Insulation).Read));
    }

    /// <remarks>0.6 V on 1500 Ω is 0.4 mA; C = I/(2πf·V), closed form: 5.5 nF at 50 Hz and 230 V, 10.6 nF, said as 11, at 120 V.</remarks>
    [Theory]
    [InlineData(230.0, 120, "5.5 nF")]
    [InlineData(null, 230, "5.5 nF")]
    [InlineData(null, 120, "11 nF")]
    public void Touch_current_is_explained_by_the_mains_of_the_unit(double? kept, double ofSheet, string nanofarads)
    {
        var unit = new TestedUnit();
        Assert.Equal("", unit.TakeTouch(0.045, 0.6, new("1500-ohm", 50, true) { SupplyVolts = kept }).Refused);
        var model = new Electrical.Circuits.UnitModel(Readings.OnTheBench.Sheet with { SupplyVolts = ofSheet });
        var result = Workshop.Testing.TestResult.Of(unit.Get(TestList.Touch), unit.Bench.Unit, model, TestedUnit.Shop, null);
        Assert.Contains(result.Words, w => w.Contains($"A capacitor of {nanofarads} ", StringComparison.Ordinal));
        // The downloaded question says the same.
        Assert.Contains(
            FormattableString.Invariant($"\"supplyVolts\": {kept ?? ofSheet}"),
            result.Question!.Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void OL_of_a_ground_wire_fails()
    {
        var unit = new TestedUnit();
        unit.Take(TestList.Ground, Shown.OverRange);
        Assert.Equal(TestEnd.Fail, unit.Result(TestList.Ground).End);
        Assert.True(unit.Result(TestList.Ground).IsOfDanger);
    }

    [Theory]
    // 45 and 61 mV: 30 and 41 µA, a pass against 0.25 mA (docs/methods/proving.md). 0.6 V on 1500 Ω is 0.4 mA.
    [InlineData(0.045, 0.061, true, TestEnd.Pass)]
    [InlineData(0.045, 0.6, true, TestEnd.Fail)]
    [InlineData(0.6, 0.045, true, TestEnd.Fail)]
    [InlineData(0.045, 0.061, false, TestEnd.NotJudged)]
    public void Touch_current_is_judged_by_the_worse_way_of_the_plug_and_only_against_a_proved_ground(
        double oneWay,
        double other,
        bool isProved,
        TestEnd end
    )
    {
        var unit = new TestedUnit();
        Assert.Equal("", unit.TakeTouch(oneWay, other, new("1500-ohm-0.15-uF", 60, isProved)).Refused);
        var result = unit.Result(TestList.Touch);
        Assert.Equal(end, result.End);
        Assert.Equal(end == TestEnd.Fail, result.HasFailed);
        if (oneWay < 0.1)
            Assert.StartsWith("45 and ", result.Read, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_that_the_shop_changes_counts_from_then_on_and_the_old_verdict_keeps_its_own()
    {
        var unit = new TestedUnit();
        unit.TakeTouch(0.6, 0.6, new("1500-ohm", 60, true));
        Assert.Equal(TestEnd.Fail, unit.Result(TestList.Touch).End);
        var limit = TestBounds.InShop(TestSort.TouchCurrent, TestedUnit.Shop)!;
        Assert.Equal("Say where this limit comes from.", ShopEdit.TestLimit(TestedUnit.Shop, limit, "0.5", " ", "").Problem);
        var changed = ShopEdit.TestLimit(TestedUnit.Shop, limit, "0.5", "ANSI C101, as listed", "1 Nov 2026").Shop!;
        var bound = TestBounds.Of(unit.Get(TestList.Touch), changed, null, 0)!;
        Assert.Equal((0.5, "ANSI C101, as listed"), (bound.Max, bound.Source));
        Assert.Equal(TestedUnit.Shop.TestLimits, changed.TestLimits);
        Assert.Equal(0.25, unit.Result(TestList.Touch).Limit!.Max);
    }

    [Fact]
    public void A_post_drops_by_what_its_readings_say()
    {
        var unit = new TestedUnit();
        unit.Bench.Read("left-full", 20.0).Read("left-load", 18.6);
        // 18.6 V on 3.6 Ω are 5.1667 A: r = 1.4/5.1667 Ω; 100·5r/(20 − 5r).
        var r = 1.4 / (18.6 / 3.6);
        var drop = PostDrop.Of(unit.Get("regulation-left-full"), unit.Bench.Model, TestedUnit.Shop)!;
        Assert.Equal(r, drop.SourceOhms, 9);
        Assert.Equal(100 * 5 * r / (20 - (5 * r)), drop.Percent, 9);
        Assert.Equal(36 * r, drop.LossWatts(6), 9);
        // Both readings off by themselves, limits of 0.8 % + 0.03 V over √3, moved one after the other. The load is a resistance, so it
        // draws more amps where it reads more volts: here that is left out, for amps are what was worked out before.
        double Percent(double idle, double loaded)
        {
            var ohms = (idle - loaded) / (18.6 / 3.6);
            return 100 * 5 * ohms / (idle - (5 * ohms));
        }
        var (a, b) = (((0.008 * 20) + 0.03) / Math.Sqrt(3), ((0.008 * 18.6) + 0.03) / Math.Sqrt(3));
        Assert.Equal(
            double.Hypot(Percent(20 + a, 18.6) - Percent(20, 18.6), Percent(20, 18.6 + b) - Percent(20, 18.6)),
            drop.StandardUncertainty,
            9
        );
        Assert.Equal(TestEnd.Pass, unit.Result("regulation-left-full").End);
        unit.Bench.Read("left-load", 15.6);
        Assert.Equal(TestEnd.Fail, unit.Result("regulation-left-full").End);
    }

    [Fact]
    public void A_normal_reading_of_a_post_never_fails_its_test()
    {
        var unit = new TestedUnit();
        var id = TestList.OfReading("volts-17");
        var limit = unit.Result(id).Limit!;
        foreach (var volts in new[] { limit.Min!.Value + 1e-6, (limit.Min.Value + limit.Max!.Value) / 2, limit.Max.Value - 1e-6 })
        {
            unit.Bench.Read("volts-17", volts);
            Assert.Contains(unit.Result(id).End, new[] { TestEnd.Pass, TestEnd.ClosePass });
        }
        unit.Bench.Read("volts-17", limit.Max!.Value + 2);
        Assert.Equal(TestEnd.Fail, unit.Result(id).End);
    }
}
