using System.Text.Json.Nodes;
using Ohmstead.Electrical.Reckoning.Proving;

namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>What a unit can run, with which fuse and wire.</summary>
public class LoadBudgetTests
{
    private static JsonObject Budget(string post, string consumers, string more = "") =>
        Asked.Answer(
            $"\"question\": \"load-budget\", \"unit\": {{ \"usableAmps\": 8 }}, \"posts\": [ {{ \"id\": \"a\", \"volts\": 18{post} }} ], \"consumers\": [ {consumers} ]{more}"
        );

    private static string Wire(int gauge, double feet) =>
        FormattableString.Invariant($", \"wire\": {{ \"gaugeAwg\": {gauge}, \"feetOneWay\": {feet} }}");

    /// <remarks>
    /// Ohms per 1,000 ft at 20 °C, seen in public wire tables (check value 1.4): 10 AWG 0.999, 12 1.588, 14 2.525, 16 4.016, 18 6.385,
    /// 20 10.15, 22 16.14. Both conductors of 500 ft at 1 A lose just that many volts.
    /// </remarks>
    [Theory]
    [InlineData(10, 0.999)]
    [InlineData(12, 1.588)]
    [InlineData(14, 2.525)]
    [InlineData(16, 4.016)]
    [InlineData(18, 6.385)]
    [InlineData(20, 10.15)]
    [InlineData(22, 16.14)]
    public void A_wire_loses_what_the_tables_of_wire_say(int gauge, double volts) =>
        Assert.Equal(
            volts,
            Budget(Wire(gauge, 500), "{ \"what\": \"x\", \"post\": \"a\", \"amps\": 1 }").Number("posts[0].wireDropVolts"),
            volts * 0.003
        );

    /// <remarks>Flexible cord of two conductors, NEC 400.5(A) as reprinted, seen (check value 5.1): 18 AWG 10 A, 16 13 A, 14 18 A, 12 25 A.</remarks>
    [Theory]
    [InlineData(8.3, 18)]
    [InlineData(8.4, 16)]
    [InlineData(11, 14)]
    [InlineData(20, 12)]
    public void A_wire_is_proposed_that_carries_its_fuse(double amps, int gauge) =>
        // Fuses of 10, 13, 18 and 25 A; a short wire, so that its drop decides nothing.
        Assert.Equal(
            gauge,
            Budget(
                    ", \"mostAmps\": 40" + Wire(18, 1),
                    FormattableString.Invariant($"{{ \"what\": \"x\", \"post\": \"a\", \"amps\": {amps} }}"),
                    ", \"ratingsAmps\": [25, 10, 13, 18]"
                )
                .At("posts[0].gaugeAwg")!
                .GetValue<int>()
        );

    [Fact]
    public void A_wire_that_carries_less_than_the_fuse_is_too_thin()
    {
        bool TooThin(int gauge) =>
            Budget(Wire(gauge, 1), "{ \"what\": \"x\", \"post\": \"a\", \"amps\": 4 }").At("posts[0].wireTooThin")!.GetValue<bool>();
        // 4 A: fuse 5 A. 20 AWG carries 5 A, 22 AWG 3 A (common practice, no source); 21 AWG no more than 22.
        Assert.Equal((false, true, true), (TooThin(20), TooThin(21), TooThin(22)));
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(0.8, 1.0)]
    [InlineData(2.5, 3.0)]
    [InlineData(6.2, 7.5)]
    [InlineData(7, null)]
    public void The_fuse_is_the_least_that_is_a_fifth_above_the_load_and_no_more_than_the_post_may_give(double amps, double? fuse) =>
        Assert.Equal(
            fuse,
            Budget("", FormattableString.Invariant($"{{ \"what\": \"x\", \"post\": \"a\", \"amps\": {amps} }}"))
                .At("posts[0].fuseAmps")
                ?.GetValue<double>()
        );

    [Fact]
    public void Watts_become_amps_at_the_posts_volts_and_part_time_counts_in_part()
    {
        var answer = Budget(
            "",
            "{ \"what\": \"x\", \"post\": \"a\", \"watts\": 36, \"count\": 2, \"onPercent\": 25 }, { \"what\": \"lamp\", \"post\": \"a\" }"
        );
        Assert.Equal(1.2, answer.Number("totalAmps"), 1e-12);
        Assert.Equal(21.6, answer.Number("totalWatts"), 1e-12);
        Assert.Equal(15, answer.Number("usedPercent"), 1e-12);
    }

    [Fact]
    public void The_rails_lose_most_half_way_between_feeders()
    {
        // 30 ft of loop fed at 3 places: 10 ft apart, half-way 5 ft each side in parallel: 2.5 ft of both rails.
        var answer = Budget(
            ", \"sourceOhms\": 0.5, \"track\": { \"loopFeet\": 30, \"ohmsPerFoot\": 0.02, \"feeders\": 3 }",
            "{ \"what\": \"x\", \"post\": \"a\", \"amps\": 2 }"
        );
        Assert.Equal(2 * 0.02 * 2.5, answer.Number("posts[0].trackDropVolts"), 1e-12);
        Assert.Equal(18 - 1 - 0.1, answer.Number("posts[0].voltsAtTrain"), 1e-12);
    }

    [Fact]
    public void What_can_be_added_keeps_the_reserve_and_the_post()
    {
        var answer = Budget(
            ", \"mostAmps\": 5",
            "{ \"what\": \"x\", \"post\": \"a\", \"amps\": 4.4 }",
            ", \"wanted\": [ { \"what\": \"lamp\", \"post\": \"a\" }, { \"what\": \"big\", \"post\": \"a\", \"watts\": 18 } ], \"usualAmps\": { \"lamp\": 0.3 }"
        );
        Assert.Equal((2, 0), (answer.At("canAdd[0].count")!.GetValue<int>(), answer.At("canAdd[1].count")!.GetValue<int>()));
        var reserve = Budget(
            "",
            "{ \"what\": \"x\", \"post\": \"a\", \"amps\": 6 }",
            ", \"reservePercent\": 20, \"wanted\": [ { \"what\": \"lamp\", \"post\": \"a\" } ]"
        );
        Assert.Equal(2, reserve.At("canAdd[0].count")!.GetValue<int>());
    }

    [Theory]
    [InlineData("{ \"what\": \"lamp\", \"post\": \"b\" }", "", "$.consumers[0].post")]
    [InlineData("{ \"what\": \"lava lamp\", \"post\": \"a\" }", "", "$.consumers[0].what")]
    [InlineData("{ \"what\": \"lamp\", \"post\": \"a\" }", ", \"wanted\": [ { \"what\": \"x\", \"post\": \"a\" } ]", "$.wanted[0].what")]
    public void What_is_not_known_is_refused(string consumer, string more, string path) =>
        Assert.Equal(
            [path],
            Asked.Refused(
                $"\"question\": \"load-budget\", \"unit\": {{ \"usableAmps\": 8 }}, \"posts\": [ {{ \"id\": \"a\", \"volts\": 18 }} ], \"consumers\": [ {consumer} ]{more}"
            )
        );

    [Fact]
    public void A_negative_length_is_refused() =>
        Assert.Equal(
            ["$.posts[0].wire.feetOneWay"],
            Asked.Refused(
                $"\"question\": \"load-budget\", \"unit\": {{ \"usableAmps\": 8 }}, \"posts\": [ {{ \"id\": \"a\", \"volts\": 18{Wire(18, -1)} }} ], \"consumers\": []"
            )
        );

    /// <summary>Sums of decimal figures err in the sixteenth digit: on the limit is within it, and a thousandth above is not.</summary>
    [Fact]
    public void A_unit_is_within_its_amps_up_to_the_last_of_them()
    {
        Assert.True(LoadBudget.IsWithin(100 * (0.1 + 0.2) / 0.3));
        Assert.False(LoadBudget.IsWithin(100.0005));
    }
}
