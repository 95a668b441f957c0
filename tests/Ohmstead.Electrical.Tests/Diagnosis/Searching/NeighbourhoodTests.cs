using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>
/// A set of faults as the place from which neighbours are judged, and what a candidate does there: a row of two wires, a resistor of 100 Ω
/// and one more wire beside them, with a symptom of the first wire.
/// </summary>
public class NeighbourhoodTests
{
    private readonly Pieces pieces;
    private readonly FittedHypothesis both;
    private readonly Worker worker;

    public NeighbourhoodTests()
    {
        var unit = new SheetDraft()
            .Wire("w1", "a", "b", 0.01)
            .Wire("w2", "b", "c", 0.01)
            .Element("resistor", "r", "c", "d", new { ohms = 100, spread = new { ohms = 0.02 } })
            .Wire("w3", "x", "y", 0.01)
            .Reading("short", "ohms", ["a", "c"])
            .Reading("long", "ohms", ["a", "d"])
            .Reading("second", "ohms", ["b", "c"])
            .Reading("third", "ohms", ["x", "y"])
            .Observation("warm", new() { ["w1:resistive"] = 0.7 }, 0.2)
            .Unit();
        var taken = new[] { ("short", 8.0), ("long", 108.0), ("second", 3.1), ("third", 0.03) };
        pieces = new Pieces(
            unit,
            [.. taken.Select(t => WireBench.Value(unit, t.Item1, t.Item2))],
            symptoms: [new(unit.Model.Sheet.Observations[0], true)]
        );
        both = pieces.Fitted(pieces.Set(("w1:resistive", 0.6), ("w2:resistive", 0.5)));
        worker = new Worker(pieces.Evidence.Set);
    }

    private Neighbourhood Whole(FittedHypothesis set) => new(set, [], set.Members, set.Predicted, pieces.Evidence, worker);

    [Fact]
    public void With_nobody_gone_it_is_the_set_itself()
    {
        var place = Whole(both);
        Assert.Equal(both.LogEvidence, place.LogEvidence, 1e-9);
        Assert.Equal(both.LogPosterior, place.LogPosterior, 1e-9);
        Assert.True(place.HasFree);
        Assert.False(Whole(pieces.Fitted(Members.None)).HasFree);
    }

    /// <summary>Who leaves takes nothing with it but its fit, and what the symptoms say of it.</summary>
    [Fact]
    public void Who_leaves_takes_its_fit_with_it()
    {
        var (left, gone) = (both.Members.Without(0), both.Classes[0]);
        var origin = worker.Predict(left, both.Predicted, gone);
        var place = new Neighbourhood(both, [0], left, origin, pieces.Evidence, worker);
        var free = pieces.Evidence.Free(both.Spread, both.Directions.OfType<double[]>(), 0.25);
        var rest = pieces.Evidence.Free(both.Spread, [both.Directions[1]!], 0.25);
        double Log(Spread spread, double[] at) => pieces.Judge(spread).LogLikelihood(at);
        Assert.Equal(Log(rest, origin), place.LogFit, 1e-9);
        Assert.Equal(Math.Log(0.2), place.LogSymptoms, 1e-9);
        var expected = both.LogEvidence - Math.Log(0.7) - Log(free, both.Predicted) + place.LogFit + Math.Log(0.2);
        Assert.Equal(expected, place.LogEvidence, 1e-9);
        Assert.Equal(expected + left.LogPrior, place.LogPosterior, 1e-9);
    }

    /// <summary>What a candidate takes of the readings the free sizes give: their mean under a deviation of a quarter.</summary>
    [Fact]
    public void Free_sizes_give_way_within_their_range()
    {
        var place = Whole(both);
        double[] more = [.. both.Predicted.Select((v, r) => v + (r < 3 ? 1.5 : 0))];
        using var judged = pieces.Judge(place.Spread).At(more);
        var moved = place.Moved(judged);
        for (var k = 0; k < 2; k++)
            Assert.Equal(both.Shares[k] + judged.ShareMove(both.Directions[k]!, 0.25), moved.Shares[k], 1e-9);
        Assert.True(moved.Shares.Min() > 0 && moved.Shares[1] < both.Shares[1] - 0.001);
        double[] far = [.. both.Predicted.Select((v, r) => v + (r < 3 ? 150 : 0))];
        using var hopeless = pieces.Judge(place.Spread).At(far);
        Assert.All(place.Moved(hopeless).Shares, s => Assert.InRange(s, 0, 1));
    }

    [Fact]
    public void What_touches_nobody_there_does_what_it_does_alone()
    {
        var third = pieces.Class("w3:resistive");
        Assert.Same(third.Curve, CandidateCurve.Quick(Whole(both), third, true, worker));
    }

    /// <summary>Two more ohms beside 100 are two more ohms whoever is there; beside 8 Ω they are less on the meter's scale.</summary>
    [Fact]
    public void In_company_that_changes_it_a_candidate_is_solved()
    {
        var drift = pieces.Class("r:drifted");
        var one = pieces.Fitted(pieces.Set(("w1:resistive", 0.2)));
        Assert.Same(drift.Curve, CandidateCurve.Quick(Whole(one), drift, true, worker));
        var second = pieces.Class("w2:resistive");
        var first = pieces.Fitted(pieces.Set(("w1:resistive", 0.7)));
        var quick = CandidateCurve.Quick(Whole(first), second, true, worker);
        Assert.NotSame(second.Curve, quick);
        // A company that has sizes is not asked where only a glance is wanted.
        Assert.Same(second.Curve, CandidateCurve.Quick(Whole(first), second, false, worker));
        var open = pieces.Fitted(pieces.Set(("w1:open", 0)));
        Assert.NotSame(second.Curve, CandidateCurve.Quick(Whole(open), second, false, worker));
    }

    /// <summary>
    /// Ohms before a resistor of 100 Ω that breaks take from what the break adds: by hand ln(1 + 0.16·v)/0.008 on the scale of a meter of 0.8 % and
    /// 0.05 Ω. From 0.7 limits on a candidate is solved.
    /// </summary>
    [Theory]
    [InlineData(0.52, false)]
    [InlineData(0.68, true)]
    [InlineData(1, true)]
    public void A_glance_is_enough_up_to_seven_tenths_of_a_limit(double before, bool isSolved)
    {
        var open = pieces.Class("r:open");
        var one = At(pieces.Fitted(Members.None), WireShare(before));
        static double Scale(double ohms) => Math.Log(1 + (0.16 * ohms)) / 0.008;
        Assert.Equal(isSolved, Scale(100 + before) - Scale(100.01) > 0.7);
        Assert.Equal(isSolved, CandidateCurve.Quick(Whole(one), open, true, worker) != open.Curve);
    }

    private static double WireShare(double ohms) => Math.Log(ohms / 0.4) / Math.Log(30 / 0.4);

    /// <summary>The first wire poor at a share, not fitted.</summary>
    private FittedHypothesis At(FittedHypothesis sound, double share)
    {
        var set = pieces.Set(("w1:resistive", share));
        return new(set, sound.Spread, sound)
        {
            Predicted = pieces.Predict(set),
            LeftOut = [],
            LogEvidence = 0,
            Deviations = [0.01],
            Directions = [new double[pieces.Sound.Length]],
        };
    }

    /// <summary>At every point of its size: solved outright where that changes much, else to a tenth of the meter's limit.</summary>
    [Theory]
    [InlineData("w1:resistive", 0.7, "w2:resistive", 1e-9)]
    [InlineData("w1:resistive", 0.7, "w2:open", 1e-9)]
    [InlineData("w1:resistive", 0.2, "r:drifted", 0.1)]
    [InlineData("w1:resistive", 0.55, "r:drifted", 0.1)]
    public void Its_curve_there_is_what_solutions_give(string company, double share, string mode, double within)
    {
        var (set, c) = (pieces.Fitted(pieces.Set((company, share))), pieces.Class(mode));
        var curve = CandidateCurve.Exact(Whole(set), c, worker);
        Assert.Equal(c.PointShares.Length, curve.Length);
        var corrected = 0.0;
        for (var k = 0; k < curve.Length; k++)
        {
            var there = pieces.Predict(set.Members.With(c, c.PointShares[k]));
            for (var r = 0; r < there.Length; r++)
            {
                Assert.Equal(there[r] - set.Predicted[r], curve[k][r], within);
                corrected = Math.Max(corrected, Math.Abs(there[r] - set.Predicted[r] - c.Curve[k][r]));
            }
        }
        Assert.True(corrected > 0.15, FormattableString.Invariant($"{corrected}"));
    }
}
