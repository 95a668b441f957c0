using System.Text.Json.Nodes;
using MathNet.Numerics.LinearAlgebra;

namespace Ohmstead.Electrical.Tests.Reckoning.Deciding;

/// <summary>A roller on one turn and on two, against the equations of its little network.</summary>
public class RollerTests
{
    private const string Usual = "\"question\": \"roller\", \"newMillimetres\": 10, \"turnVolts\": 0.357";

    private static JsonObject Roller(string now, string side, string rest = "") =>
        Asked.Answer($"{Usual}, \"nowMillimetres\": {now}, \"sideOhms\": {side}{rest}");

    /// <remarks>
    /// Two contacts a turn apart, the middle of the turn being where the load's current comes from: from there half a turn (half its volts and
    /// ohms) leads to either contact, and from each through a side into the body. Kirchhoff's laws for the two branch currents.
    /// </remarks>
    [Theory]
    [InlineData(0.06, 0.003, 2.5)]
    [InlineData(0.0036, 0.003, 5)]
    [InlineData(0.4, 0.1, 1)]
    public void What_it_takes_is_what_Kirchhoff_says(double side, double turn, double amps)
    {
        FormattableString rest = $", \"turnOhms\": {turn}, \"loadAmps\": [{amps}]";
        var answer = Roller("10", side.ToString(System.Globalization.CultureInfo.InvariantCulture), FormattableString.Invariant(rest));
        (double Lost, double Watts, double Above) Solve(double load)
        {
            // above·(R + r/2) − below·(R + r/2) = V; above + below = load.
            var branch = side + (turn / 2);
            var i = Matrix<double>
                .Build.DenseOfArray(
                    new[,]
                    {
                        { branch, -branch },
                        { 1, 1 },
                    }
                )
                .Solve(Vector<double>.Build.Dense([0.357, load]));
            return ((i[0] * branch) - (0.357 / 2), side * ((i[0] * i[0]) + (i[1] * i[1])), i[0]);
        }
        var (idle, loaded) = (Solve(0), Solve(amps));
        Assert.Equal(idle.Above, answer.Number("loopAmps"), 1e-9);
        Assert.Equal(idle.Watts, answer.Number("loopWatts"), 1e-9);
        Assert.Equal(loaded.Lost - idle.Lost, answer.Number("loads[0].bridgingVoltsLost"), 1e-9);
        Assert.Equal(loaded.Watts, answer.Number("loads[0].bridgingWatts"), 1e-9);
        Assert.Equal(amps * side, answer.Number("loads[0].oneTurnVoltsLost"), 1e-12);
        Assert.Equal(amps * side * amps, answer.Number("loads[0].oneTurnWatts"), 1e-12);
    }

    /// <remarks>A flat as wide as 6 across a circle of 10 lies 4 from its center (3-4-5): it is 1 deep.</remarks>
    [Fact]
    public void Its_flat_is_as_deep_as_the_chord_says_and_the_arm_sinks_by_half_of_what_is_gone()
    {
        var answer = Asked.Answer(
            "\"question\": \"roller\", \"newMillimetres\": 13, \"nowMillimetres\": 10, \"flatMillimetres\": 6, \"turnVolts\": 0, \"sideOhms\": 1"
        );
        Assert.Equal(1, answer.Number("flatDepthMillimetres"), 1e-12);
        Assert.Equal(1.5, answer.Number("armSinksMillimetres"), 1e-12);
        Assert.Equal(100.0 * 10 / 13, answer.Number("remainingPercent"), 1e-9);
        Assert.Equal(0, answer.Number("loopWatts"));
    }

    [Theory]
    [InlineData("7.6", "0.1", "", "leave", "")]
    [InlineData("7.5", "0.1", "", "watch", "")]
    [InlineData("7.1", "0.1", "", "watch", "")]
    [InlineData("6.9", "0.1", "", "renew", "worn")]
    [InlineData("8", "0.1", ", \"flatMillimetres\": 0.6", "renew", "flat")]
    [InlineData("8", "0.51", "", "renew", "contact")]
    [InlineData("10", "0.04", "", "watch", "")]
    [InlineData("10", "0.02", "", "renew", "loop")]
    [InlineData("6", "0.6", ", \"flatMillimetres\": 1", "renew", "worn, flat, contact")]
    [InlineData("6", "0.6", ", \"leastPercent\": 40, \"mostSideOhms\": 1", "leave", "")]
    [InlineData("10", "0.02", ", \"mostLoopWatts\": 4", "watch", "")]
    [InlineData("10", "0.04", ", \"watchLoopWatts\": 2", "leave", "")]
    public void The_verdict_follows_its_limits(string now, string side, string rest, string verdict, string why)
    {
        var answer = Roller(now, side, rest);
        Assert.Equal((verdict, why), (answer.Text("verdict"), string.Join(", ", answer["why"]!.AsArray())));
    }

    [Fact]
    public void Left_out_loads_are_two_and_a_half_and_five_amps() =>
        Assert.Equal([2.5, 5], Roller("9", "0.1")["loads"]!.AsArray().Select(l => l!.Number("amps")));

    [Fact]
    public void What_is_missing_is_named_and_nothing_is_held_against_it() =>
        Assert.Equal(
            ["$.newMillimetres", "$.sideOhms"],
            Asked.Refused("\"question\": \"roller\", \"nowMillimetres\": 7, \"turnVolts\": 1")
        );

    [Fact]
    public void What_cannot_be_is_refused() =>
        Assert.Equal(
            ["$.nowMillimetres", "$.flatMillimetres", "$.sideOhms"],
            Asked.Refused($"{Usual}, \"nowMillimetres\": 11, \"flatMillimetres\": 12, \"sideOhms\": 0")
        );
}
