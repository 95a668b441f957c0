using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Findings;

/// <summary>What a way through readings costs, added up by hand from the sheet's minutes.</summary>
public class PracticeWayTests
{
    private static readonly TypeSheet Sheet = OnTheBench.SheetOf("demo/twin-175.sheet.json");

    private static BenchUnit Unit(params Fact[] more) =>
        UnitHistory.Fold([
            .. new Fact[] { new TakenIn("P-1", "twin-175", "", ""), new PracticeBegun(7) }
                .Concat(more)
                .Select((f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), Guid.Empty, n + 1, default, "bench", f)),
        ]);

    private static ReadingEntered Read(string id) => new(id, Shown.Number(1), BenchState.AsSheet);

    private static double Minutes(string id) => Sheet.FindReading(id)!.Minutes;

    [Fact]
    public void Every_reading_costs_its_minutes_one_that_was_undone_or_read_again_too()
    {
        Assert.Equal(0, PracticeWay.Own(Unit(), Sheet).Minutes);
        var way = PracticeWay.Own(
            Unit(
                Read("blades"),
                Read("ohms-1"),
                new Corrected(new Guid(4, 0, 0, new byte[8]), null),
                Read("ohms-1"),
                new ReadingEntered("ohms-2", Shown.NotTaken("no time"), BenchState.AsSheet)
            ),
            Sheet
        );
        Assert.Equal(["blades", "ohms-1", "ohms-1"], way.Steps.Select(s => s.Spec.Id));
        Assert.Equal(Minutes("blades") + (2 * Minutes("ohms-1")), way.Minutes, 9);
        Assert.Equal(Minutes("blades"), way.Steps[0].AtMinutes, 9);
    }

    [Fact]
    public void What_has_to_come_off_for_a_reading_is_paid_once()
    {
        var open = Sheet.Readings.First(r => r.IsOpenCase);
        var once = PracticeWay.None.With(Sheet, open, Shown.Number(1));
        var twice = once.With(Sheet, open, Shown.Number(1));
        var first = Sheet.TakeApart.Single(s => s.Id == open.Access);
        Assert.True(once.Minutes >= open.Minutes + first.MinutesOut);
        Assert.Equal(once.Minutes + open.Minutes, twice.Minutes, 9);
    }
}
