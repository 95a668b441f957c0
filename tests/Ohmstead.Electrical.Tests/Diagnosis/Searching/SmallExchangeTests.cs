using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>A trunk and two branches, the whole way read through either: what is found from a set without one of its members, or without two.</summary>
public class SmallExchangeTests
{
    private static readonly BenchUnit Unit = WireBench
        .Parts(("trunk", "a", "b", 1), ("left", "b", "c", 1), ("right", "b", "d", 1), ("aside", "x", "y", 1))
        .Reading("to-left", "ohms", ["a", "c"])
        .Reading("to-right", "ohms", ["a", "d"])
        .Reading("aside", "ohms", ["x", "y"])
        .Unit();

    private readonly Pieces pieces = new(
        Unit,
        [WireBench.Value(Unit, "to-left", 5.02), WireBench.Value(Unit, "to-right", 5.02), WireBench.Value(Unit, "aside", 0.01)]
    );

    private (FittedHypothesis From, KnownSets Known) Tried(params (string Mode, double Share)[] faults)
    {
        var (h, known) = (pieces.Fitted(pieces.Set(faults)), new KnownSets());
        known.Replace(h);
        new Exchanges(pieces.Setting, known).Try(h);
        return (h, known);
    }

    private Hypothesis? Find(KnownSets known, params string[] modes) =>
        known.All.SingleOrDefault(k => k.Key == pieces.Set([.. modes.Select(m => (m, 0.0))]).Key);

    /// <summary>Five ohms in both branches, or five in the trunk: by one fault less, and so the odds of one in ninety-nine less unlikely.</summary>
    [Fact]
    public void Two_are_exchanged_for_one_that_does_what_both_do()
    {
        var (both, known) = Tried(("left:resistive", 0.6), ("right:resistive", 0.6));
        var trunk = Find(known, "trunk:resistive");
        Assert.NotNull(trunk);
        Assert.InRange(pieces.Unit.Model.Sheet.Elements.Length, 4, 4);
        Assert.True(trunk.LogPosterior > both.LogPosterior + 3, FormattableString.Invariant($"{trunk.LogPosterior} {both.LogPosterior}"));
        Assert.Equal(5, trunk.Classes[0].SizeAt(trunk.Shares[0]), 0.2);
        // Nothing stands in their place that moves neither.
        Assert.DoesNotContain(known.All, k => k.Classes.Any(c => c.Lead.Element == "aside"));
    }

    [Theory]
    [InlineData("left", "right")]
    [InlineData("right", "left")]
    public void Each_member_alone_is_left_out_and_exchanged(string gone, string stays)
    {
        var (_, known) = Tried(("left:resistive", 0.6), ("right:resistive", 0.6));
        Assert.NotNull(Find(known, stays + ":resistive"));
        Assert.NotNull(Find(known, "trunk:resistive", stays + ":resistive"));
        Assert.Null(Find(known, gone + ":resistive", "aside:resistive"));
    }

    [Fact]
    public void A_single_fault_is_left_out_and_exchanged()
    {
        var (_, known) = Tried(("trunk:resistive", 0.6));
        Assert.NotNull(Find(known));
        Assert.NotNull(Find(known, "left:resistive"));
        Assert.NotNull(Find(known, "right:resistive"));
    }
}
