using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Tests.Units;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>The price of a plan, against the log-normal's own quantiles and plain sums.</summary>
public class PlanPriceTests
{
    /// <summary>The spread of the next job's minutes without a record: s²·(1 + 1/κ) with s = 0.5 and κ = 2 (docs/methods/deciding.md).</summary>
    private static readonly double Spread = 0.5 * Math.Sqrt(1.5);

    private static readonly PlanStep Step = new("work roller", "work roller", 24, [], 100);

    private static UnitPlan Plan(params PlanLine[] lines) => new([.. lines.Where(l => l.IsDone)], [.. lines.Where(l => !l.IsDone)], []);

    private static PlanLine Work(params PlanPart[] parts) => new(PlanLineKind.Work, "Roller: replace", "", [Step], [.. parts]);

    private static PlanLine Done(double minutes, decimal price) =>
        new(PlanLineKind.Done, "Cord", "", [], [new("cord", price, 100)]) { TookMinutes = minutes };

    [Fact]
    public void One_step_comes_to_the_quantiles_of_its_law()
    {
        var price = PlanPrice.Of(Plan(Work(new PlanPart("roller", 5.10m, 100))), Shop.Usual, null);
        Assert.Equal((24 * 50 / 60.0) + 5.10, price.Low, 0.3);
        Assert.Equal((24 * Math.Exp(1.28155 * Spread) * 50 / 60) + 5.10, price.High, 0.8);
        Assert.Equal(24, price.LowMinutes, 0.4);
        Assert.Equal(5.10, price.Parts, 9);
        Assert.Equal(0, price.StoppedPercent, 9);
    }

    /// <summary>Nine of ten come to less than the upper end, so that about one of ten lies above the round sum that it is raised to.</summary>
    [Fact]
    public void Where_nobody_named_a_line_it_is_the_upper_end_raised_to_the_next_five()
    {
        var price = PlanPrice.Of(Plan(Work()), Shop.Usual, null);
        Assert.Equal(Math.Ceiling(price.High / 5) * 5, (double)price.AskAbove);
        Assert.InRange(price.AskPercent, 4, 10);
        // Half of the jobs come to more than the middle, 24 min at 50 an hour.
        Assert.Equal(50, PlanPrice.Of(Plan(Work()), Shop.Usual, 20).AskPercent, 0.8);
    }

    /// <summary>30 minutes at 50 an hour and a cord of 7.50 are 32.50, whatever comes after.</summary>
    [Fact]
    public void What_was_done_is_added_to_both_ends_as_it_was()
    {
        var rest = PlanPrice.Of(Plan(Work()), Shop.Usual, null);
        var whole = PlanPrice.Of(Plan(Done(30, 7.50m), Work()), Shop.Usual, null);
        Assert.Equal(rest.Low + 32.5, whole.Low, 6);
        Assert.Equal(rest.High + 32.5, whole.High, 6);
        Assert.Equal(rest.LowMinutes + 30, whole.LowMinutes, 6);
        // Of a line of 52.50, 20 are left.
        Assert.Equal(50, PlanPrice.Of(Plan(Done(30, 7.50m), Work()), Shop.Usual, 52.50m).AskPercent, 0.8);
        Assert.Equal(100, PlanPrice.Of(Plan(Done(30, 7.50m), Work()), Shop.Usual, 30).AskPercent, 9);
    }

    [Fact]
    public void When_all_is_done_the_price_is_one_sum()
    {
        var price = PlanPrice.Of(Plan(Done(30, 7.50m)), Shop.Usual, null);
        Assert.Equal(32.5, price.Low, 9);
        Assert.Equal(32.5, price.High, 9);
        Assert.Equal(35, price.AskAbove);
        Assert.Equal(0, price.AskPercent);
    }

    /// <summary>Two stops of 10 % each: 0.9 · 0.9 = 81 % come to the end.</summary>
    [Fact]
    public void Stop_points_end_their_share_of_the_jobs()
    {
        var stop = new PlanStop("a lug breaks", 10, 20);
        var price = PlanPrice.Of(
            Plan(Work() with { Stop = stop }, Work() with { Steps = [Step with { Id = "work disc" }], Stop = stop }),
            Shop.Usual,
            null
        );
        Assert.Equal(19, price.StoppedPercent, 6);
    }

    [Fact]
    public void The_owners_limit_is_the_line_until_a_newer_estimate_names_another()
    {
        var taken = (0.0, (Fact)new TakenIn("1", "twin-160", "", ""));
        var estimate = new EstimateMade([], 79, 106, 72, 104, 110, [], new(2026, 12, 30));
        var goAhead = new GoAheadGiven(new(2026, 11, 27), "by phone", 120, "");
        Assert.Null(PlanPrice.Named(LoggedMinutesTests.Unit(taken)));
        Assert.Equal(110, PlanPrice.Named(LoggedMinutesTests.Unit(taken, (1, estimate))));
        Assert.Equal(120, PlanPrice.Named(LoggedMinutesTests.Unit(taken, (1, estimate), (2, goAhead))));
        Assert.Equal(110, PlanPrice.Named(LoggedMinutesTests.Unit(taken, (1, goAhead), (2, estimate))));
        Assert.Equal(110, PlanPrice.Named(LoggedMinutesTests.Unit(taken, (1, estimate), (2, goAhead with { Limit = null }))));
    }

    [Fact]
    public void The_bar_keeps_the_order_of_the_sums()
    {
        PriceBar Bar(double low, double high, decimal ask) => PriceBar.Of(new(low, high, 0, 0, 0, ask, 0, 0, []));
        Assert.Equal(new PriceBar(80, 180, 280), Bar(100, 150, 200));
        Assert.Equal(new PriceBar(180, 280, 80), Bar(100, 150, 50));
        Assert.Equal(new PriceBar(180, 180, 180), Bar(50, 50, 50));
    }

    /// <summary>Half of such jobs take 24 minutes for the one step; the 30 that are done are not left. 24 + 30 minutes at 50 an hour.</summary>
    [Fact]
    public void What_is_left_is_without_what_was_done_and_the_work_goes_by_the_rate()
    {
        var price = PlanPrice.Of(Plan(Done(30, 7.50m), Work()), Shop.Usual with { RatePerHour = 50 }, null);
        Assert.Equal(price.LowMinutes - 30, price.LeftMinutes, 9);
        Assert.Equal(24, price.LeftMinutes, 0.4);
        var work = price.WorkAt(Shop.Usual with { RatePerHour = 60 });
        Assert.Equal(price.LowMinutes, work.Low, 9);
        Assert.Equal(price.HighMinutes, work.High, 9);
    }
}
