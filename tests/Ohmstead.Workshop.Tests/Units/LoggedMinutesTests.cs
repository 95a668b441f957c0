using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Units;

/// <summary>The clock of a journal: from the last entry before it that is no photo; more than 20 minutes is a pause.</summary>
public class LoggedMinutesTests
{
    private static readonly DateTimeOffset Noon = new(2026, 1, 5, 12, 0, 0, TimeSpan.Zero);

    internal static BenchUnit Unit(params (double Minute, Fact Fact)[] entries) =>
        UnitHistory.Fold([
            .. entries.Select(
                (e, n) =>
                    new Entry(
                        new Guid(n + 1, 0, 0, new byte[8]),
                        new Guid(9, 9, 9, new byte[8]),
                        n + 1,
                        Noon.AddMinutes(e.Minute),
                        "bench",
                        e.Fact
                    )
            ),
        ]);

    [Fact]
    public void A_photo_stops_no_clock_and_a_pause_has_no_minutes()
    {
        var unit = Unit(
            (0, new TakenIn("1", "twin-160", "", "")),
            (4, new TakenOff("cover", 1, 2, "")),
            (6, new PhotoAdded(new string('a', 64), "", "")),
            (9.5, new TakenOff("screen", 1, 1, "")),
            (29.5, new Noted("twenty is none yet")),
            (49.6, new PutBack("screen", 1, 0, "", ""))
        );
        double?[] expected = [0, 4, 5.5, 20, null];
        Assert.Equal(expected, LoggedMinutes.Of(unit).Select(e => e.Minutes is { } m ? Math.Round(m, 6) : (double?)null));
    }

    /// <summary>Somebody was at the bench when it was entered, and when it was undone.</summary>
    [Fact]
    public void What_was_undone_is_no_work_but_its_time_is_not_given_to_the_next()
    {
        var unit = Unit(
            (0, new TakenIn("1", "twin-160", "", "")),
            (4, new TakenOff("cover", 1, 2, "")),
            (5, new Corrected(new Guid(2, 0, 0, new byte[8]), null)),
            (12, new TakenOff("screen", 1, 1, ""))
        );
        var logged = LoggedMinutes.Of(unit).ToImmutableArray();
        Assert.Null(logged[1].Fact);
        Assert.Equal(7, logged[3].Minutes);
    }
}
