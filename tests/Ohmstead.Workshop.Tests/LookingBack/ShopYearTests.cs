using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.LookingBack;
using Ohmstead.Workshop.Tests.Drawers;
using Ohmstead.Workshop.Tests.Readings;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.LookingBack;

/// <summary>A year: what came and went, how long it took, what was found and used, and what it teaches of faults.</summary>
public class ShopYearTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 12, 0, 0, TimeSpan.Zero);

    private static BenchUnit Unit(params (double Minutes, Fact Fact)[] facts) =>
        UnitHistory.Fold([
            .. facts
                .Prepend((0, new TakenIn("F-1", "twin-160", "An owner", "")))
                .Select(
                    (f, n) =>
                        new Entry(
                            new Guid(n + 1, 0, 0, new byte[8]),
                            default,
                            n + 1,
                            Now.AddDays(-40).AddMinutes(f.Item1),
                            "bench",
                            f.Item2
                        )
                ),
        ]);

    private static UnitYear Seen(
        DateTimeOffset at,
        DateTimeOffset? back,
        int looked,
        int found,
        string mode = "worn",
        double percent = 4
    ) =>
        new(
            at,
            back,
            60,
            90,
            [.. Enumerable.Repeat(("slider", mode, at), found)],
            [.. Enumerable.Repeat(("slider", mode, percent), looked)]
        );

    /// <summary>Ten minutes, then a night away, then twenty: thirty. The usual time: look-over 15, one reading of the sheet, a repair.</summary>
    [Fact]
    public void Time_at_the_bench_is_from_entry_to_entry_without_the_nights()
    {
        var reading = OnTheBench.Sheet.Readings[0];
        var unit = Unit(
            (10, new StageClosed(Stage.LookOver, true, "")),
            (900, OnTheBenchReading(reading.Id)),
            (920, new PartChanged("nothing-listed", PartChange.Serviced, null, ""))
        );
        var year = UnitYear.Of(unit, OnTheBench.Sheet);
        Assert.Equal(30, year.Minutes, 6);
        Assert.Equal(15 + reading.Minutes + 20, year.UsualMinutes, 6);
        Assert.Null(year.Returned);
    }

    private static ReadingEntered OnTheBenchReading(string id) => new(id, Shown.Number(1), BenchState.AsSheet);

    [Fact]
    public void A_found_fault_is_told_by_kind_and_mode_and_counts_as_looked_for_once_the_findings_are_done()
    {
        var slider = OnTheBench.Sheet.Windings.SelectMany(w => w.Sliders).First().Id;
        var found = new FindingJudged(slider, "worn", Judgement.Confirmed, "");
        var open = UnitYear.Of(Unit((5, found)), OnTheBench.Sheet);
        Assert.Equal(("slider", "worn"), (open.Found.Single().Kind, open.Found.Single().Mode));
        Assert.Empty(open.Looked);
        var done = UnitYear.Of(Unit((5, found), (6, new StageClosed(Stage.Findings, true, ""))), OnTheBench.Sheet);
        Assert.Equal(OnTheBench.Sheet.Windings.Sum(w => w.Sliders.Length), done.Looked.Count(l => l is { Kind: "slider", Mode: "worn" }));
    }

    /// <summary>In closed form: 40 parts at 4 % and 10 with 3 found are 4.6 in 50.</summary>
    [Fact]
    public void A_chance_is_shrunk_towards_the_sheets_and_is_never_nothing_and_never_certain()
    {
        LearnedChance Of(int looked, int found, double percent = 4) =>
            LearnedChance.Of([Seen(Now, null, looked, found, percent: percent)], 40, 0.1).Single();
        Assert.Equal(9.2, Of(10, 3).Percent, 9);
        Assert.Equal(3.2, Of(10, 0).Percent, 9);
        Assert.Equal(9.2 / 90.8 / (4 / 96.0), Of(10, 3).Odds, 9);
        Assert.InRange(Of(5000, 5000).Percent, 90, 99.999);
        Assert.InRange(Of(5000, 0).Percent, 0.0001, 0.1);
        Assert.True(Of(10, 0, percent: 0).Percent > 0);
        Assert.Equal("Worn roller", Of(10, 3).Name);
    }

    /// <summary>Shops made with three times, and a third of, the sheet's chance: what is learned lies between the two, nearer with more units.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(1.3)]
    public void Learned_from_a_made_shop_a_chance_moves_to_the_truth(double truth)
    {
#pragma warning disable CA5394 // A made shop keeps no secret.
        var dice = new Random(7);
        List<UnitYear> units = [.. Enumerable.Range(0, 400).Select(_ => Seen(Now, null, 1, dice.NextDouble() * 100 < truth ? 1 : 0))];
#pragma warning restore CA5394
        var (few, many) = (LearnedChance.Of(units.Take(40), 40, 0.1).Single(), LearnedChance.Of(units, 40, 0.1).Single());
        Assert.True(Math.Abs(many.Percent - truth) < Math.Abs(4 - truth) / 2);
        Assert.Equal(truth > 4, many.Percent > 4);
        Assert.InRange(few.Percent, 0.5, 30);
    }

    [Fact]
    public void Twelve_months_are_told_with_what_came_went_was_found_and_used()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Roller", 10);
        draft.Do(new PartsUsed(bin, 2, ""));
        draft.Fit(bin, null, 1, draft.Id(), Now.AddDays(-3), null, false);
        draft.Fit(bin, null, 4, draft.Id(), Now.AddDays(-700), null, false);
        UnitYear[] units =
        [
            Seen(Now.AddDays(-1), null, 2, 1),
            Seen(Now.AddDays(-35), Now.AddDays(-2), 2, 1),
            Seen(Now.AddDays(-800), Now.AddDays(-700), 2, 2),
        ];
        var year = ShopYear.Of(units, draft.Drawer, Now, TimeZoneInfo.Utc);
        Assert.Equal((12, "Dec", "Nov"), (year.Months.Length, year.Months[0].Month, year.Months[^1].Month));
        Assert.Equal((1, 1), (year.Months[^1].In, year.Months[^1].Back));
        Assert.Equal((1, 0), (year.Months[^2].In, year.Months[^2].Back));
        Assert.Equal((2.0, 3.0), (year.Hours, year.UsualHours));
        Assert.Equal([("Roller", 3)], year.Parts);
        var fault = Assert.Single(year.Faults);
        Assert.Equal((2, 4, 6), (fault.InYear, fault.Found, fault.Parts));
        Assert.Equal(3, year.Learned);
        Assert.Equal(fault.Odds, Assert.Single(year.Chances).Odds);
    }

    [Fact]
    public void A_year_adds_up_its_months()
    {
        var year = new ShopYear([("Jan", 2, 1), ("Feb", 3, 5)], 0, 0, [], [], [], 0);
        Assert.Equal((5, 6), year.Units);
    }
}
