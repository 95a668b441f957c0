using Ohmstead.Workshop.Stores;

namespace Ohmstead.Workshop.Tests.Stores;

/// <summary>What is kept in memory: at most so much, and counted.</summary>
public class BoundedCacheTests
{
    [Fact]
    public void What_nobody_asked_for_longest_goes_first()
    {
        var cache = new BoundedCache<string, int>("numbers", 2);
        cache.Keep("one", 1);
        cache.Keep("two", 2);
        Assert.Equal(1, cache.Find("one", _ => true));
        cache.Keep("three", 3);
        Assert.Equal(["one", "three"], cache.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_look_beside_counts_nothing_and_keeps_nothing_longer()
    {
        var cache = new BoundedCache<string, int>("numbers", 2);
        cache.Keep("one", 1);
        cache.Keep("two", 2);
        Assert.Equal(1, cache.Peek("one"));
        cache.Keep("three", 3);
        Assert.Equal(["three", "two"], cache.Keys.Order(StringComparer.Ordinal));
        Assert.Equal((0, 0), (cache.Counted.Hits, cache.Counted.Misses));
    }

    [Fact]
    public void It_counts_what_was_there_and_what_had_to_be_made()
    {
        var cache = new BoundedCache<string, int>("numbers", 5);
        var made = 0;
        for (var n = 0; n < 3; n++)
            Assert.Equal(1, cache.GetOrAdd("one", _ => ++made));
        Assert.Equal(new CacheCount("numbers", 5, 1, 2, 1), cache.Counted);
    }

    [Fact]
    public void What_is_out_of_date_counts_as_missing_and_is_replaced_in_its_place()
    {
        var cache = new BoundedCache<string, string>("texts", 5);
        cache.Keep("a", "old");
        Assert.Null(cache.Find("a", kept => kept == "new"));
        cache.Keep("a", "new");
        Assert.Equal("new", cache.Find("a", kept => kept == "new"));
        Assert.Equal(new CacheCount("texts", 5, 1, 1, 1), cache.Counted);
    }

    [Fact]
    public void What_may_not_go_yet_stays_over_the_limit_and_goes_when_it_may()
    {
        var busy = new HashSet<string> { "one", "two" };
        var cache = new BoundedCache<string, int>("numbers", 1, mayGo: key => !busy.Contains(key));
        cache.Keep("one", 1);
        cache.Keep("two", 2);
        cache.Keep("three", 3);
        Assert.Equal(3, cache.Counted.Count);
        busy.Clear();
        cache.Keep("four", 4);
        Assert.Equal(["four"], cache.Keys);
    }

    [Fact]
    public void Keys_are_the_same_as_it_was_told()
    {
        var cache = new BoundedCache<string, int>("numbers", 5, StringComparer.OrdinalIgnoreCase);
        cache.Keep("one", 1);
        Assert.Equal(1, cache.Find("ONE", _ => true));
    }
}
