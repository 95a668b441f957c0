using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Workshop.Tests.Stores;

public class SearchTextTests
{
    [Theory]
    [InlineData("  Müller,\tÉlan\nØre ", "muller, elan ore")]
    [InlineData("Mu\u0308ller", "muller")]
    [InlineData("4.7 Ω", "4.7 ω")]
    [InlineData("", "")]
    public void Text_is_searched_in_small_letters_without_accents(string text, string searched) =>
        Assert.Equal(searched, SearchText.Of(text));

    [Fact]
    public void Words_are_asked_for_and_kept_once()
    {
        Assert.Equal(["brass", "left"], SearchText.Words("Brass  left BRASS"));
        Assert.Equal("a b c", SearchText.Merge(["a b", "b  c", "a"]));
    }

    [Fact]
    public void A_fact_is_found_by_its_words_and_numbers_not_by_hashes_or_the_bench()
    {
        var reading = new ReadingEntered("left-full", Shown.Number(18.6), BenchState.AsSheet with { MeterId = "own-meter" });
        var searched = SearchText.Of(reading).Split(' ');
        Assert.Contains("left-full", searched);
        Assert.Contains("18.6", searched);
        Assert.DoesNotContain("own-meter", searched);
        Assert.Equal("front", SearchText.Of(new PhotoAdded(new string('a', 64), "Front", "")));
        Assert.Equal("not json", SearchText.Of(new Unread("not json")));
    }
}
