using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>What becomes of sets that were found and not expanded, and what is found by exchange alone: a row of wires, one of which is poor.</summary>
public class SettlingTests
{
    private static readonly BenchUnit Unit = WireBench.Chain(4);

    private static readonly DiagnosisOptions Options = new()
    {
        RankNext = false,
        IsBenchAsNoted = true,
        YoungExpanded = 0,
        CheapSolutions = 0,
    };

    private static Pieces Row(DiagnosisOptions options) => new(Unit, [WireBench.Value(Unit, "whole", 5)], 1e-9, options);

    /// <summary>Only the sound unit is expanded; four sets of one poor wire are as good as each other, the others explain nothing.</summary>
    [Fact]
    public void Sets_within_four_nats_of_the_best_are_judged_by_their_own_spread_in_the_end()
    {
        var pieces = Row(Options with { MostExpanded = 1, LeastExpanded = 1 });
        var search = new Search(pieces.Setting);
        Assert.Equal(SearchStop.Budget, search.Run());
        var best = search.Known.Max(h => h.LogPosterior);
        Assert.Equal(1, search.Expanded);
        Assert.Equal(
            [.. Enumerable.Range(0, 4).Select(n => pieces.Class(FormattableString.Invariant($"w{n}:resistive")).Number)],
            search.Known.Where(h => h is FittedHypothesis && h.LogPosterior > best - 4).Select(h => h.Classes.Single().Number).Order()
        );
        Assert.All(search.Known.Where(h => h is FoundHypothesis), h => Assert.True(h.LogPosterior < best - 4));
        Assert.Contains(search.Known, h => h is FoundHypothesis);
    }

    /// <summary>
    /// One addition is solved, and two more for the reading that the sound unit leaves out: the fourth wire is first found in the place of
    /// another, once that is expanded, where the set it is in is within the margin of the best.
    /// </summary>
    [Fact]
    public void A_set_that_is_among_the_best_is_exchanged_for_others()
    {
        var options = Options with { ExactAdditions = 1, LeastExpanded = 1 };
        int Poor(int expanded)
        {
            var search = new Search(Row(options with { MostExpanded = expanded }).Setting);
            search.Run();
            Assert.Equal(expanded, search.Expanded);
            return search.Known.Count(h => h.Classes is [{ HasSize: true }]);
        }
        Assert.InRange(Poor(1), 1, 3);
        Assert.Equal(4, Poor(2));
    }

    /// <summary>Nothing wrong, everything read as it should be: no set is within any margin, and few solutions are spent.</summary>
    [Fact]
    public void Where_nothing_comes_near_the_sound_unit_the_search_is_complete_at_once()
    {
        var pieces = new Pieces(Unit, [WireBench.Value(Unit, "whole", 0.04)], options: Options);
        var search = new Search(pieces.Setting);
        Assert.Equal(SearchStop.Complete, search.Run());
        Assert.Equal(1, search.Expanded);
        // Young it goes on to every set that carries something: odds of one in a hundred are not far enough below.
        var young = new Search(pieces.Setting with { Options = Options with { YoungExpanded = 3 } });
        Assert.Equal(SearchStop.Complete, young.Run());
        Assert.InRange(young.Expanded, 1, 3);
    }
}
