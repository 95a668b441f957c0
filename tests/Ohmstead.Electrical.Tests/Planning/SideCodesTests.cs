using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The words that put every two groups on different leads, against trying every assignment and published counts.</summary>
public class SideCodesTests
{
    private const double Clip = 0.5;
    private const double Check = 0.25;

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 1, 2)]
    [InlineData(1, 1, 1)]
    [InlineData(2, 7, 3)]
    [InlineData(1, 1, 1, 1)]
    [InlineData(5, 1, 2, 1)]
    public void No_assignment_costs_less_clips_left_off_included(params int[] clips)
    {
        var words = SideCodes.Of(clips);
        var mine = Minutes([.. Enumerable.Range(0, clips.Length).Select(g => words.Select(w => w[g] ? 1 : 0).ToArray())], clips);
        Assert.Equal(Enumerable.Range(1, 3).Min(checks => Least(clips, checks)), mine, 9);
    }

    /// <summary>⌈log₂ N⌉ tests find every short among N nets, and no fewer do (key kautz, from memory).</summary>
    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    [InlineData(4, 2)]
    [InlineData(8, 3)]
    [InlineData(9, 4)]
    [InlineData(200, 8)]
    public void There_are_never_fewer_checks_than_Kautz_gives_and_no_two_words_are_alike(int groups, int least)
    {
        var words = SideCodes.Of([.. Enumerable.Repeat(1, groups)]);
        Assert.InRange(words.Length, least, groups - 1);
        Assert.Equal(
            groups,
            Enumerable.Range(0, groups).Select(g => string.Concat(words.Select(w => w[g] ? '1' : '0'))).Distinct().Count()
        );
        if (groups <= 4)
            Assert.Equal(least, words.Length);
    }

    /// <remarks>
    /// Eight groups of one clip: in three checks their words change 0, 0, 1, 1, 1, 1, 2 and 2 times, 0.75 + 0.5·(8 + 8) minutes; in four 0, 0 and
    /// six times 1, 1 + 0.5·(8 + 6). Of heavy groups the heaviest get the words without a change.
    /// </remarks>
    [Fact]
    public void A_check_more_is_made_where_it_spares_clips()
    {
        Assert.Equal(4, SideCodes.Of([1, 1, 1, 1, 1, 1, 1, 1]).Length);
        var words = SideCodes.Of([1, 9, 1, 9]);
        Assert.Equal(2, words.Length);
        Assert.Equal(words[0][1], words[1][1]);
        Assert.Equal(words[0][3], words[1][3]);
        Assert.NotEqual(words[0][0], words[1][0]);
    }

    [Fact]
    public void One_group_needs_no_check() => Assert.Empty(SideCodes.Of([4]));

    private static double Least(int[] clips, int checks)
    {
        var letters = clips.Length * checks;
        var least = double.PositiveInfinity;
        for (var n = 0; n < (int)Math.Pow(3, letters); n++)
        {
            var rest = n;
            var words = new int[clips.Length][];
            for (var g = 0; g < clips.Length; g++)
            {
                words[g] = new int[checks];
                for (var k = 0; k < checks; k++)
                    (words[g][k], rest) = (rest % 3, rest / 3);
            }
            if (
                Enumerable
                    .Range(0, clips.Length)
                    .All(a => Enumerable.Range(0, a).All(b => Enumerable.Range(0, checks).Any(k => words[a][k] + words[b][k] == 1)))
            )
                least = Math.Min(least, Minutes(words, clips));
        }
        return least;
    }

    /// <summary>Letters: 0 one lead, 1 the other, 2 left off; a clip that comes off costs nothing, one that goes on does.</summary>
    private static double Minutes(int[][] words, int[] clips) =>
        (Check * words[0].Length)
        + words.Select((w, g) => Clip * clips[g] * w.Where((letter, k) => letter < 2 && (k == 0 || w[k - 1] != letter)).Count()).Sum();
}
