using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Tests.Words;

/// <summary>Counts in words: nothing is counted as 0 things, and one thing is one.</summary>
public class CountedTests
{
    [Theory]
    [InlineData(0, "no symptoms")]
    [InlineData(1, "1 symptom")]
    [InlineData(2, "2 symptoms")]
    [InlineData(1200, "1200 symptoms")]
    public void A_noun_follows_its_count(long count, string words) => Assert.Equal(words, Counted.Of(count, "symptom"));

    [Theory]
    [InlineData(0, "no entries")]
    [InlineData(1, "1 entry")]
    [InlineData(3, "3 entries")]
    public void A_plural_that_takes_more_than_an_s_is_given(long count, string words) =>
        Assert.Equal(words, Counted.Of(count, "entry", "entries"));

    [Theory]
    [InlineData(0, "none")]
    [InlineData(1, "1")]
    [InlineData(14, "14")]
    public void Where_the_noun_stands_beside_it_nothing_is_none(long count, string words) => Assert.Equal(words, Counted.Bare(count));

    [Theory]
    [InlineData(0, 7, "0 of 7 readings")]
    [InlineData(0, 1, "0 of 1 reading")]
    [InlineData(1, 7, "1 of 7 readings")]
    [InlineData(7, 7, "7 of 7 readings")]
    public void Of_a_share_the_noun_goes_with_the_whole(long done, long all, string words) =>
        Assert.Equal(words, Counted.Share(done, all, "reading"));

    [Theory]
    [InlineData(0, "No checks")]
    [InlineData(1, "The one check")]
    [InlineData(15, "All 15 checks")]
    public void All_of_one_is_the_one(long count, string words) => Assert.Equal(words, Counted.All(count, "check"));

    /// <summary>Half a minute was once proposed as "0 min".</summary>
    [Theory]
    [InlineData(0, "under 1 min")]
    [InlineData(0.5, "under 1 min")]
    [InlineData(0.94, "under 1 min")]
    [InlineData(1, "1 min")]
    [InlineData(2.5, "3 min")]
    [InlineData(12.4, "12 min")]
    public void Nothing_takes_no_minutes(double minutes, string words) => Assert.Equal(words, Counted.Minutes(minutes));
}
