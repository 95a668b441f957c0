using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>Two and more units on one layout.</summary>
public class TogetherTests
{
    /// <param name="units">Ids, a star behind those with a polarized plug.</param>
    private static JsonObject Together(string units, params (string A, string B, double Volts)[] pairs)
    {
        var all = units
            .Split(' ')
            .Select(u =>
                $"{{ \"id\": \"{u.TrimEnd('*')}\", \"volts\": 18, \"supplyVolts\": 120, \"sourceOhms\": 0.3, \"polarised\": {(u.EndsWith('*') ? "true" : "false")} }}"
            );
        var read = pairs.Select(p => FormattableString.Invariant($"{{ \"a\": \"{p.A}\", \"b\": \"{p.B}\", \"volts\": {p.Volts} }}"));
        return Asked.Answer($"\"question\": \"together\", \"units\": [{string.Join(',', all)}], \"pairs\": [{string.Join(',', read)}]");
    }

    private static string Words(JsonObject answer, string list) =>
        string.Join(' ', answer.At(list)!.AsArray().Select(w => w!.GetValue<string>()));

    /// <remarks>Two phasors of 18 V: the side opposite the angle is 2·18·sin(angle/2).</remarks>
    [Theory]
    [InlineData(0, "in phase")]
    [InlineData(19.9, "in phase")]
    [InlineData(20.1, "neither")]
    [InlineData(159.9, "neither")]
    [InlineData(160.1, "opposed")]
    [InlineData(180, "opposed")]
    public void The_angle_is_that_of_the_triangle_of_three_voltages(double degrees, string verdict)
    {
        var answer = Together("a b", ("a", "b", 36 * Math.Sin(degrees * Math.PI / 360)));
        Assert.Equal(degrees, answer.Number("pairs[0].degrees"), 1e-5);
        Assert.Equal(verdict, answer.Text("pairs[0].verdict"));
    }

    /// <remarks>18 + 18 V with the usual meter: 0.8 % of 18, 18 and V, and three times 0.03 V may be added.</remarks>
    [Theory]
    [InlineData(36.67, "opposed")]
    [InlineData(36.68, "not possible")]
    public void More_than_both_together_is_not_possible_beyond_the_meters_error(double volts, string verdict) =>
        Assert.Equal(verdict, Together("a b", ("a", "b", volts)).Text("pairs[0].verdict"));

    [Theory]
    [InlineData("b a", "a", "")]
    [InlineData("a* b", "b", "")]
    [InlineData("a* b*", "", "a")]
    public void The_side_with_fewer_polarized_plugs_is_turned_then_the_earlier(string units, string cord, string inside)
    {
        var answer = Together(units, ("a", "b", 36));
        Assert.Equal((cord, inside), (Words(answer, "turnCord"), Words(answer, "exchangeInside")));
    }

    [Fact]
    public void Of_three_the_odd_one_is_turned_and_when_all_agree_none()
    {
        Assert.Equal("c", Words(Together("a b c", ("a", "b", 0.2), ("b", "c", 35.9)), "turnCord"));
        Assert.Equal("", Words(Together("a b c", ("a", "b", 0.2), ("b", "c", 0.1)), "turnCord"));
    }

    [Fact]
    public void Pairs_that_do_not_join_all_leave_some_to_read()
    {
        var answer = Together("a b c d", ("a", "b", 36));
        Assert.Equal(2, answer.At("missing")!.GetValue<int>());
        Assert.Equal("", Words(answer, "turnCord"));
        // One that lies across says nothing of sides.
        Assert.Equal(1, Together("a b", ("a", "b", 20)).At("missing")!.GetValue<int>());
    }

    [Fact]
    public void A_ring_that_contradicts_itself_is_a_clash()
    {
        var answer = Together("a b c", ("a", "b", 36), ("b", "c", 36), ("c", "a", 36));
        Assert.True(answer.At("clash")!.GetValue<bool>());
        Assert.Equal(0, answer.At("missing")!.GetValue<int>());
        Assert.Equal("", Words(answer, "turnCord"));
        Assert.False(Together("a b c", ("a", "b", 36), ("b", "c", 36), ("c", "a", 0)).At("clash")!.GetValue<bool>());
    }

    [Fact]
    public void A_pulled_plug_carries_what_the_other_unit_drives_back_through_it()
    {
        var answer = Asked.Answer(
            """
            "question": "together", "pairs": [], "bridges": [ { "a": "a", "b": "b" } ],
            "units": [ { "id": "a", "volts": 12, "supplyVolts": 120, "sourceOhms": 0.3 }, { "id": "b", "volts": 18, "supplyVolts": 115, "sourceOhms": 0.3 } ]
            """
        );
        // a turns 18 V of b up by 120/12; b turns 12 V of a up by 115/18.
        Assert.Equal(180, answer.Number("barePlug[0].barePlugVolts"), 1e-9);
        Assert.Equal(12 * 115 / 18.0, answer.Number("barePlug[1].barePlugVolts"), 1e-9);
        Assert.Contains("180 V", answer.At("cautions[0]")!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Null(answer.At("bridges[0].amps"));
    }

    [Fact]
    public void A_pair_of_one_unit_and_one_unknown_are_refused()
    {
        string[] refused = Asked.Refused(
            """
            "question": "together", "units": [ { "id": "a", "volts": 12, "supplyVolts": 120, "sourceOhms": 0 }, { "id": "b", "volts": 18, "supplyVolts": 115, "sourceOhms": 0 } ],
            "pairs": [ { "a": "a", "b": "a", "volts": 1 }, { "a": "a", "b": "c", "volts": 1 } ], "bridges": [ { "a": "a", "b": "b", "pathOhms": 0 } ]
            """
        );
        Assert.Equal(["$.pairs[0].b", "$.pairs[1].b", "$.bridges[0].pathOhms"], refused);
    }
}
