using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests.Reckoning.Proving;

/// <summary>A thermal breaker from its trips.</summary>
public class BreakerTests
{
    private const string Rest = "\"testAmps\": 20, \"usableAmps\": 8";

    /// <summary>Seconds of one heated mass, by small steps: dx/dt = ((I/F)² − x)/τ, tripping at 1.</summary>
    private static double Stepped(double amps, double floor, double tau, double heat)
    {
        var (x, seconds, drive) = (heat, 0.0, amps * amps / (floor * floor));
        while (x < 1)
            (x, seconds) = (x + ((drive - x) * 0.001 / tau), seconds + 0.001);
        return seconds;
    }

    private static JsonObject Breaker(string fields) => Asked.Answer($"\"question\": \"breaker\", {fields}");

    [Fact]
    public void The_curve_is_that_of_one_heated_mass()
    {
        var answer = Breaker(
            $"\"trips\": [], \"typical\": {{ \"floorAmps\": 11, \"tauSeconds\": 120 }}, \"atAmps\": [15, 20, 55], \"beforeAmps\": 5, {Rest}"
        );
        foreach (var (amps, n) in new[] { 15.0, 20, 55 }.Select((a, n) => (a, n)))
            Assert.Equal(
                Stepped(amps, 11, 120, 25.0 / 121),
                answer.Number($"at[{n.ToString(System.Globalization.CultureInfo.InvariantCulture)}].seconds"),
                0.01
            );
    }

    [Fact]
    public void Two_trips_and_three_of_one_curve_give_it_back()
    {
        string Trip(double amps) => FormattableString.Invariant($"{{ \"amps\": {amps}, \"seconds\": {Stepped(amps, 9.5, 100, 0):R} }}");
        foreach (var amps in new[] { new[] { 14.0, 22 }, [12, 18, 25], [11, 14, 20, 30] })
        {
            var answer = Breaker($"\"trips\": [{string.Join(',', amps.Select(Trip))}], {Rest}");
            Assert.Equal(9.5, answer.Number("floorAmps"), 0.01);
            Assert.Equal(100, answer.Number("tauSeconds"), 0.2);
        }
    }

    [Fact]
    public void Trips_at_the_same_amps_count_as_one()
    {
        var twice = Breaker(
            $"\"trips\": [ {{ \"amps\": 20, \"seconds\": 50 }}, {{ \"amps\": 20.1, \"seconds\": 40 }} ], \"typical\": {{ \"floorAmps\": 11, \"tauSeconds\": 120 }}, {Rest}"
        );
        var once = Breaker(
            $"\"trips\": [ {{ \"amps\": 20.05, \"seconds\": 45 }} ], \"typical\": {{ \"floorAmps\": 11, \"tauSeconds\": 120 }}, {Rest}"
        );
        Assert.Equal(once.Number("floorAmps"), twice.Number("floorAmps"), 1e-12);
    }

    [Fact]
    public void After_the_wait_the_next_trip_is_within_so_many_percent_of_the_cold_one()
    {
        var answer = Breaker(
            $"\"trips\": [ {{ \"amps\": 15, \"seconds\": 92.6 }}, {{ \"amps\": 20, \"seconds\": 43.2 }} ], \"coolTauSeconds\": 200, {Rest}"
        );
        var (wait, floor, tau) = (answer.Number("waitSeconds"), answer.Number("floorAmps"), answer.Number("tauSeconds"));
        // Tripped, it cools from 1 with 200 s for as long as it waits; then it is heated again.
        Assert.Equal(0.95 * 43.2, Stepped(20, floor, tau, Math.Exp(-wait / 200)), 0.02);
    }

    [Fact]
    public void The_count_to_switch_off_is_half_as_long_again_as_the_slowest_that_the_readings_allow()
    {
        var answer = Breaker(
            $"\"trips\": [ {{ \"amps\": 20, \"seconds\": 40 }} ], \"typical\": {{ \"floorAmps\": 11, \"tauSeconds\": 120 }}, \"ampsPercent\": 0, \"stopwatchSeconds\": 1, \"atAmps\": [20], {Rest}"
        );
        Assert.Equal(1.5 * 41, answer.Number("stopSeconds"), 1e-9);
        Assert.Equal((39.0, 41.0), (Math.Round(answer.Number("at[0].lowSeconds"), 9), Math.Round(answer.Number("at[0].highSeconds"), 9)));
    }

    [Fact]
    public void One_that_never_trips_at_the_test_amps_is_held_to_the_count_and_has_no_wait()
    {
        var answer = Breaker(
            "\"trips\": [], \"typical\": { \"floorAmps\": 21, \"tauSeconds\": 60 }, \"testAmps\": 20, \"usableAmps\": 8, \"waitsSeconds\": [60], \"atAmps\": [20]"
        );
        Assert.Equal(90, answer.Number("stopSeconds"));
        Assert.Null(answer.At("waitSeconds"));
        Assert.Null(answer.At("at[0].seconds"));
        Assert.Empty(answer.At("after")!.AsArray());
        Assert.Equal(("[\"slow\"]", "leave, add outside"), (answer.At("why")!.ToJsonString(), answer.Text("verdict")));
    }

    [Theory]
    [InlineData(7, 60, true, "trips early", "renew")]
    [InlineData(30, 300, true, "slow|slow on a short", "renew")]
    [InlineData(11, 60, true, "", "leave")]
    [InlineData(11, 60, false, "", "leave, add outside")]
    public void The_verdict_follows_from_what_speaks_against_it(double floor, double tau, bool all, string why, string verdict)
    {
        var answer = Breaker(
            FormattableString.Invariant(
                $"\"trips\": [], \"typical\": {{ \"floorAmps\": {floor}, \"tauSeconds\": {tau} }}, \"everyOutputThroughIt\": {(all ? "true" : "false")}, {Rest}"
            )
        );
        Assert.Equal(
            (why, verdict),
            (string.Join('|', answer.At("why")!.AsArray().Select(w => w!.GetValue<string>())), answer.Text("verdict"))
        );
    }

    /// <remarks>
    /// Check values 6.1 to 6.8 are of fuses and other breakers; 6.10, UL 1077 and UL 489 from memory, gives 200 % in two minutes: one that
    /// carries about 10 A and trips at 20 A within 60 s (common practice, no source) keeps it.
    /// </remarks>
    [Fact]
    public void One_that_the_shop_leaves_trips_at_twice_what_it_carries_within_two_minutes()
    {
        var answer = Breaker(
            "\"trips\": [ { \"amps\": 20, \"seconds\": 59 } ], \"typical\": { \"floorAmps\": 10, \"tauSeconds\": 200 }, \"testAmps\": 20, \"usableAmps\": 8, \"atAmps\": [20]"
        );
        Assert.Equal("leave", answer.Text("verdict"));
        Assert.True(answer.Number("at[0].highSeconds") <= 120);
    }

    [Theory]
    [InlineData("\"trips\": [ { \"amps\": 15, \"seconds\": 70 }, { \"amps\": 20, \"seconds\": 43 } ]", "$.trips")]
    [InlineData(
        "\"trips\": [ { \"amps\": 15, \"seconds\": 40 }, { \"amps\": 20, \"seconds\": 30 }, { \"amps\": 25, \"seconds\": 25 } ]",
        "$.trips"
    )]
    [InlineData("\"trips\": [ { \"amps\": 15, \"seconds\": 0 }, { \"amps\": 20, \"seconds\": 30 } ]", "$.trips[0].seconds")]
    [InlineData("\"trips\": [ { \"amps\": 15, \"seconds\": 70 } ]", "$.typical")]
    public void Trips_that_are_not_of_one_cold_breaker_are_refused(string trips, string path) =>
        Assert.Equal([path], Asked.Refused($"\"question\": \"breaker\", {trips}, {Rest}"));
}
