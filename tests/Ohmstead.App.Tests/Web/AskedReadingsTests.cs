using Ohmstead.App.Web;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Tests.Web;

/// <summary>What a second screen shows: what is asked for, or what was entered after that.</summary>
public class AskedReadingsTests
{
    private static readonly Guid Id = new(9, 0, 0, new byte[8]);

    /// <summary>The unit was taken in as entry 1; its readings are 2, 3 and so on.</summary>
    private static BenchUnit Unit(params string[] read) =>
        UnitHistory.Fold([
            .. new Fact[] { new TakenIn("1", "twin-175", "", "") }
                .Concat(read.Select(r => new ReadingEntered(r, Shown.Number(1), BenchState.AsSheet)))
                .Select((f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), Id, n + 1, default, "bench", f)),
        ]);

    [Fact]
    public void What_was_entered_after_the_bench_turned_to_a_reading_comes_first_and_what_it_turned_to_since_before_that()
    {
        var asked = new AskedReadings();
        Assert.Null(asked.Of(Unit()));
        Assert.Equal(("a", true), asked.Of(Unit("a")));
        asked.Ask(Id, "b", 2);
        Assert.Equal(("b", false), asked.Of(Unit("a")));
        Assert.Equal(("b", true), asked.Of(Unit("a", "b")));
        // A phone entered another one meanwhile.
        Assert.Equal(("c", true), asked.Of(Unit("a", "c")));
        asked.Ask(Id, "c", 3);
        Assert.Equal(("c", true), asked.Of(Unit("a", "c")));
        asked.Ask(Id, "b", 1);
        Assert.Equal(("b", false), asked.Of(Unit()));
    }

    [Fact]
    public void Whoever_shows_it_is_called()
    {
        var (asked, called) = (new AskedReadings(), new List<Guid>());
        asked.Changed += called.Add;
        asked.Ask(Id, "a", 1);
        Assert.Equal([Id], called);
    }
}
