using Ohmstead.Workshop.Proving;

namespace Ohmstead.Workshop.Tests.Proving;

/// <summary>
/// Two units, three voltages. 18.2, 17.9 and 36.0 V are opposed: cos = (18.2² + 17.9² − 36²)/(2·18.2·17.9). Bridged, 36 V lie across
/// 0.3 + 0.3 + 0.05 Ω. A pulled plug is fed backward: 17.9 · 120/18.2 = 118 V on the first, 18.2 · 120/17.9 = 122 V on the other.
/// </summary>
public class PhaseEntryTests
{
    private static readonly bool[] Neither = [false, false];

    [Fact]
    public void Opposed_units_have_one_cord_to_turn_and_the_bare_plug_comes_first()
    {
        var (answer, problem) = PhaseEntry.Judge("F-1", "F-2 ", ["18.2", "17,9", "36"], "120", Neither);
        Assert.Equal("", problem);
        Assert.Equal("opposed", answer!.Pairs[0].Verdict);
        Assert.Equal(["F-1"], answer.TurnCord);
        Assert.Contains("its blades carry up to 122 V", answer.Cautions[0], StringComparison.Ordinal);
        // 36 V / 0.65 Ω = 55.4 A.
        Assert.Contains("bridged: 55 A", answer.Cautions[1], StringComparison.Ordinal);
        Assert.Equal("Turn the plug of F-1, then paint a dot on plug and outlet.", Assert.Single(answer.Words));
    }

    [Fact]
    public void A_plug_that_goes_in_one_way_only_is_not_the_one_to_turn()
    {
        var (answer, _) = PhaseEntry.Judge("F-1", "F-2", ["18.2", "17.9", "36"], "120", [true, false]);
        Assert.Equal(["F-2"], answer!.TurnCord);
        var (both, _) = PhaseEntry.Judge("F-1", "F-2", ["18.2", "17.9", "36"], "120", [true, true]);
        Assert.Empty(both!.TurnCord);
        Assert.Equal(["F-1"], both.ExchangeInside);
    }

    [Theory]
    [InlineData("0.4", "in phase")]
    [InlineData("18", "neither")]
    [InlineData("60", "not possible")]
    public void Volts_from_hot_post_to_hot_post_decide(string between, string verdict) =>
        Assert.Equal(verdict, PhaseEntry.Judge("F-1", "F-2", ["18.2", "17.9", between], "120", Neither).Answer!.Pairs[0].Verdict);

    [Theory]
    [InlineData("", "18", "18", "1", "120", "Say what the other unit is called.")]
    [InlineData("F-1", "18", "18", "1", "120", "Give the other unit another name.")]
    [InlineData("F-2", "", "18", "1", "120", "Volts, F-1: Enter a number")]
    [InlineData("F-2", "18", "0", "1", "120", "Volts, F-2: Must be")]
    [InlineData("F-2", "18", "18", "-1", "120", "Volts, hot post to hot post: Must be")]
    [InlineData("F-2", "18", "18", "1", "mains", "Line voltage: ")]
    public void What_is_missing_or_wrong_is_named(string other, string a, string b, string between, string line, string words)
    {
        var (answer, problem) = PhaseEntry.Judge("F-1", other, [a, b, between], line, Neither);
        Assert.Null(answer);
        Assert.StartsWith(words, problem, StringComparison.Ordinal);
    }
}
