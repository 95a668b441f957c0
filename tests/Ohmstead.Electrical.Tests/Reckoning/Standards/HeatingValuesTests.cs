using System.Globalization;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Tests.Reckoning.Standards;

/// <summary>Heating of windings against published values (tests/Reference/published/heating.json, check values 2.7–2.16).</summary>
public class HeatingValuesTests
{
    private static TheoryData<string> Ids(string begin) => [.. Published.All("heating", begin).Select(p => p.Id)];

    public static TheoryData<string> HottestSpots => Ids("2.8-");

    public static TheoryData<string> OldClasses => Ids("2.9-");

    public static TheoryData<string> Normal => Ids("2.10-");

    public static TheoryData<string> Overloads => Ids("2.11-");

    /// <summary>What the question <c>rise</c> says of a class: a winding at 20 °C in a room of 20 °C.</summary>
    private static double OfClass(string id, string field) =>
        Asked
            .Answer(
                $"\"question\": \"rise\", \"cold\": {{ \"ohms\": 1, \"celsius\": 20 }}, \"hotOhms\": 1, \"endCelsius\": 20, \"insulation\": \"{id.Split('-')[1]}\""
            )
            .Number($"insulation.{field}");

    [Theory]
    [MemberData(nameof(HottestSpots))]
    public void A_class_bears_its_published_hottest_spot(string id) =>
        Published.Case("heating", id).Agrees("celsius", OfClass(id, "hottestSpotCelsius"), 1e-9);

    [Theory]
    [MemberData(nameof(OldClasses))]
    public void The_old_rule_by_resistance_lies_below_it(string id) =>
        Published.Case("heating", id).Agrees("celsius", OfClass(id, "byResistanceCelsius"), 1e-9);

    [Theory]
    [MemberData(nameof(Normal))]
    public void A_winding_in_normal_use_has_its_limit(string id) =>
        Published.Case("heating", id).Agrees("celsius", OfClass(id, "normalCelsius"), 1e-9);

    [Theory]
    [MemberData(nameof(Overloads))]
    public void In_an_overload_it_has_another(string id)
    {
        var p = Published.Case("heating", id);
        p.Agrees("celsius", OfClass(id, "overloadCelsius"), 1e-9);
        p.Agrees("firstHourCelsius", OfClass(id, "firstHourCelsius"), 1e-9);
    }

    [Fact]
    public void Where_a_table_has_no_class_nothing_is_said()
    {
        Assert.Null(InsulationClass.Of("E").OldByResistance);
        Assert.Null(InsulationClass.Of("Y").Normal);
        Assert.Same(InsulationClass.Of("Y"), InsulationClass.Of("O"));
    }

    /// <remarks>2.14, closed form: falls of 0.10 and 0.08 Ω keep the ratio 0.8; what is left to fall is 0.08·0.8/0.2 = 0.32 Ω.</remarks>
    [Fact]
    public void Three_readings_while_it_cools_are_carried_back_one_step()
    {
        var p = Published.Case("heating", "2.14");
        var answer = Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"rise\", \"cold\": {{ \"ohms\": 5, \"celsius\": 20 }}, \"endCelsius\": 20, \"after\": [ {{ \"seconds\": 30, \"ohms\": {p.Given("first")} }}, {{ \"seconds\": 60, \"ohms\": {p.Given("second")} }}, {{ \"seconds\": 90, \"ohms\": {p.Given("third")} }} ]"
            )
        );
        p.Agrees("backOhms", answer.Number("atSwitchOffOhms"), 1e-9);
        p.Agrees("endOhms", answer.Number("coolsToOhms"), 1e-9);
        Assert.Equal(
            p.Expected("ratio"),
            (p.Given("third") - answer.Number("coolsToOhms")) / (p.Given("second") - answer.Number("coolsToOhms")),
            1e-9
        );
        // The rise is that of the ohms carried back: 1.025/5 of 254.5 K.
        Assert.Equal(1.025 / 5 * 254.5, answer.Number("riseKelvin"), 1e-9);
    }

    /// <remarks>An exponential of any first moment: R = 5 + 1·e^(−t/70), read at 20, 50 and 80 s, had 6 Ω at 0.</remarks>
    [Fact]
    public void They_may_begin_at_any_moment()
    {
        string At(double t) => (5 + Math.Exp(-t / 70)).ToString("R", CultureInfo.InvariantCulture);
        var answer = Asked.Answer(
            $"\"question\": \"rise\", \"cold\": {{ \"ohms\": 5, \"celsius\": 20 }}, \"endCelsius\": 20, \"after\": [ {{ \"seconds\": 20, \"ohms\": {At(20)} }}, {{ \"seconds\": 50, \"ohms\": {At(50)} }}, {{ \"seconds\": 80, \"ohms\": {At(80)} }} ]"
        );
        Assert.Equal(6, answer.Number("atSwitchOffOhms"), 1e-9);
    }

    private const string Cooling = "\"question\": \"rise\", \"cold\": { \"ohms\": 5, \"celsius\": 20 }, \"endCelsius\": 20";

    [Theory]
    [InlineData("\"after\": [ { \"seconds\": 30, \"ohms\": 5.9 }, { \"seconds\": 60, \"ohms\": 5.8 } ]", "$.after")]
    [InlineData(
        "\"after\": [ { \"seconds\": 30, \"ohms\": 5.9 }, { \"seconds\": 60, \"ohms\": 5.8 }, { \"seconds\": 120, \"ohms\": 5.72 } ]",
        "$.after"
    )]
    [InlineData(
        "\"after\": [ { \"seconds\": 30, \"ohms\": 5.9 }, { \"seconds\": 60, \"ohms\": 5.8 }, { \"seconds\": 90, \"ohms\": 5.68 } ]",
        "$.after"
    )]
    [InlineData(
        "\"hotOhms\": 6, \"after\": [ { \"seconds\": 30, \"ohms\": 5.9 }, { \"seconds\": 60, \"ohms\": 5.8 }, { \"seconds\": 90, \"ohms\": 5.72 } ]",
        "$.after"
    )]
    [InlineData("\"hotOhms\": 6, \"insulation\": \"C\"", "$.insulation")]
    public void What_no_cooling_winding_reads_is_refused(string rest, string path) =>
        Assert.Equal([path], Asked.Refused($"{Cooling}, {rest}"));

    /// <remarks>
    /// 2.15: Kosow, example 13-1. At 125 °C a winding of class A lasts a quarter of its 10 years. That is its hottest spot, of 105 °C; its
    /// average by resistance, of 100 °C, is then 5 °C lower.
    /// </remarks>
    [Fact]
    public void Twenty_kelvin_too_warm_leave_a_quarter_of_its_life()
    {
        var p = Published.Case("heating", "2.15");
        var hot =
            (234.5 + p.Given("celsius") - (OfClass("2.15-A", "hottestSpotCelsius") - OfClass("2.15-A", "limitCelsius"))) / (234.5 + 20);
        var answer = Asked.Answer(
            FormattableString.Invariant(
                $"\"question\": \"rise\", \"cold\": {{ \"ohms\": 1, \"celsius\": 20 }}, \"hotOhms\": {hot:R}, \"endCelsius\": 20, \"insulation\": \"A\", \"usualYears\": {p.Given("years")}"
            )
        );
        p.Agrees("factor", 1 / answer.Number("insulation.lifeTimes10"), 1e-6);
        p.Agrees("years", answer.Number("insulation.lifeYears"), 1e-6);
        Assert.Contains(answer["words"]!.AsArray(), w => w!.GetValue<string>().Contains("20 °C over", StringComparison.Ordinal));
    }

    /// <remarks>Limits by resistance of the old rule (check value 2.9); of E, which it has not, that of IEC 61558-1, table 1, from memory.</remarks>
    [Theory]
    [InlineData("Y", 85)]
    [InlineData("O", 85)]
    [InlineData("A", 100)]
    [InlineData("E", 115)]
    [InlineData("B", 120)]
    [InlineData("F", 140)]
    public void An_average_is_held_against_the_limit_by_resistance_and_not_against_the_hottest_spot(string letter, double limit)
    {
        var answer = Asked.Answer(
            $"\"question\": \"rise\", \"cold\": {{ \"ohms\": 1, \"celsius\": 20 }}, \"hotOhms\": 1, \"endCelsius\": 20, \"insulation\": \"{letter}\""
        );
        Assert.Equal((limit, 20 - limit), (answer.Number("insulation.limitCelsius"), answer.Number("insulation.overKelvin")));
        Assert.Contains(
            answer["words"]!.AsArray(),
            w =>
                w!
                    .GetValue<string>()
                    .EndsWith(
                        FormattableString.Invariant($"by resistance: {limit - 20} °C left. The hottest spot is hotter than this average."),
                        StringComparison.Ordinal
                    )
        );
    }

    /// <remarks>Falls of 1 and 0.01 Ω carried back by one step come to 110 Ω: no winding had eleven times its ohms.</remarks>
    [Fact]
    public void Readings_that_carried_back_make_a_winding_glow_are_refused() =>
        Assert.Equal(
            ["$.after"],
            Asked.Refused(
                $"{Cooling}, \"after\": [ {{ \"seconds\": 30, \"ohms\": 10.00 }}, {{ \"seconds\": 60, \"ohms\": 9.00 }}, {{ \"seconds\": 90, \"ohms\": 8.99 }} ]"
            )
        );

    /// <remarks>2.16: two pages; the rules differ by half, so that whoever prints one names it.</remarks>
    [Fact]
    public void The_two_rules_of_life_are_not_the_same()
    {
        var p = Published.Case("heating", "2.16");
        p.Agrees("ten", InsulationClass.LifeTimes(-p.Given("kelvinBelow"), 10), 0.01);
        p.Agrees("eight", InsulationClass.LifeTimes(-p.Given("kelvinBelow"), 8), 0.05);
    }

    private const string Run =
        "\"question\": \"rise-elsewhere\", \"noLoadWatts\": 11, \"loadWattsAt20\": 14, \"testAmps\": 6, \"testCelsius\": 22, \"finalRiseKelvin\": 52, \"limitKelvin\": 65";

    /// <remarks>2.7: to 1.06 times the rated input, the circuit unchanged: amps go with the volts. The rise is found by turns.</remarks>
    [Fact]
    public void The_rise_on_a_raised_line_is_that_of_the_same_circuit()
    {
        var p = Published.Case("heating", "2.7");
        var answer = Asked.Answer(
            FormattableString.Invariant($"{Run}, \"testVolts\": {p.Given("ratedVolts")}, \"ratedVolts\": {p.Given("ratedVolts")}")
        );
        p.Agrees("volts", answer.Number("atRaisedInput.volts"), 1e-9);
        Assert.Equal(6 * p.Expected("times"), answer.Number("atRaisedInput.amps"), 1e-9);
        var (square, rise) = (p.Expected("times") * p.Expected("times"), 0.0);
        for (var n = 0; n < 500; n++)
            rise = answer.Number("kelvinPerWatt") * square * (11 + (14 * (234.5 + 22 + rise) / 254.5));
        Assert.Equal(rise, answer.Number("atRaisedInput.riseKelvin"), 1e-6);
        Assert.InRange(rise, 58, 64);
    }

    [Fact]
    public void On_the_raised_line_itself_the_rise_is_that_of_the_test() =>
        Assert.Equal(52, Asked.Answer($"{Run}, \"testVolts\": 127.2, \"ratedVolts\": 120").Number("atRaisedInput.riseKelvin"), 1e-9);

    /// <remarks>The rise there is 58 to 64 °C, as above.</remarks>
    [Theory]
    [InlineData("65", "within the limit of 65 °C.")]
    [InlineData("55", "over the limit of 55 °C.")]
    public void The_rise_there_is_held_against_the_limit_too(string limit, string said) =>
        Assert.Contains(
            Asked.Answer(
                $"{Run.Replace("\"limitKelvin\": 65", $"\"limitKelvin\": {limit}", StringComparison.Ordinal)}, \"testVolts\": 120, \"ratedVolts\": 120"
            )["words"]!.AsArray(),
            w => w!.GetValue<string>().EndsWith(said, StringComparison.Ordinal)
        );

    [Fact]
    public void Without_its_line_nothing_is_said_of_a_raised_one() => Assert.False(Asked.Answer(Run).ContainsKey("atRaisedInput"));
}
