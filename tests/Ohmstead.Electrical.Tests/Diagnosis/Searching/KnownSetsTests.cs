using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>Of each set the best that is known: found, until it is fitted; what was tried is not tried again where it would be no better.</summary>
public class KnownSetsTests
{
    private readonly Pieces pieces;
    private readonly FittedHypothesis sound;
    private readonly KnownSets known = new();

    public KnownSetsTests()
    {
        var unit = WireBench.Chain(2);
        pieces = new Pieces(unit, [WireBench.Value(unit, "whole", 5)]);
        sound = pieces.Fitted(Members.None);
        known.Replace(sound);
    }

    private FoundHypothesis Found(string mode, double log) =>
        new(pieces.Set((mode, 0.5)), sound)
        {
            Predicted = pieces.Sound,
            LeftOut = [],
            LogEvidence = log,
        };

    [Fact]
    public void The_better_of_two_that_were_found_is_kept_until_one_is_fitted()
    {
        var (poor, good) = (Found("w0:resistive", -50), Found("w0:resistive", -40));
        known.Register(good);
        known.Register(poor);
        Assert.Same(good, known.All.Single(h => h.Key == good.Key));
        var better = Found("w0:resistive", -30);
        known.Register(better);
        Assert.Same(better, known.All.Single(h => h.Key == good.Key));
        var fitted = pieces.Fitted(pieces.Set(("w0:resistive", 0.5)));
        known.Replace(fitted);
        known.Register(Found("w0:resistive", 1000));
        Assert.Same(fitted, known.All.Single(h => h.Key == good.Key));
        Assert.Same(fitted, known.Best);
        Assert.Equal(2, known.All.Count);
    }

    [Fact]
    public void What_was_found_from_elsewhere_is_good_enough_where_it_is_hardly_worse_than_it_looks_from_here()
    {
        var place = new Neighbourhood(sound, [], sound.Members, sound.Predicted, pieces.Evidence, new Worker(pieces.Evidence.Set));
        var (c, found) = (pieces.Class("w0:resistive"), Found("w0:resistive", -20));
        Assert.Null(known.AsGood(place, c, -1000));
        known.Register(found);
        Assert.Same(found, known.AsGood(place, c, found.LogPosterior + 1.9));
        Assert.Null(known.AsGood(place, c, found.LogPosterior + 2.1));
        var fitted = pieces.Fitted(pieces.Set(("w0:resistive", 0.5)));
        known.Replace(fitted);
        Assert.Same(fitted, known.AsGood(place, c, fitted.LogPosterior + 100));
    }

    [Fact]
    public void The_highest_come_first_and_of_equals_the_earlier()
    {
        double[] scores = [1, 5, double.NegativeInfinity, 5, 3, 2];
        Assert.Equal([1, 3, 4], KnownSets.Highest(scores, 3, double.NegativeInfinity));
        Assert.Equal([1, 3, 4], KnownSets.Highest(scores, 9, 2));
    }

    /// <summary>By the evidence it was made by the total is its own; on the bench of a poor meter every set is weighed by what it is worth there.</summary>
    [Fact]
    public void All_sets_of_a_search_are_weighed_on_another_bench()
    {
        var search = pieces.Searched();
        var worker = new Worker(pieces.Evidence.Set);
        Assert.Equal(search.LogTotal, search.LogTotalBy(pieces.Evidence, worker), 1e-9);
        var poor = pieces.Evidence.On(pieces.Evidence.Bench with { ErrorVariance = 9, Chance = 0.015 });
        var sum = 0.0;
        foreach (var h in search.Known)
        {
            var there = new Judge(poor, poor.SpreadOf(h.Spread.Slopes, h.Spread.Shift), worker).LogLikelihood(h.Predicted);
            sum += Math.Exp(h.LogPosterior - pieces.Judge(h.Spread).LogLikelihood(h.Predicted) + there);
        }
        Assert.Equal(Math.Log(sum), search.LogTotalBy(poor, worker), 1e-9);
        Assert.Equal((Math.Log(0.805), Math.Log(0.015)), (search.LogBench, new Search(pieces.Setting with { Evidence = poor }).LogBench));
        Assert.Equal(search.Known.Count(h => h is ExpandedHypothesis), search.Expanded);
    }
}
