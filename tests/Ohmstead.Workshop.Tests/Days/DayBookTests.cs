using Ohmstead.Workshop.Days;

namespace Ohmstead.Workshop.Tests.Days;

/// <summary>A day as a person set it up.</summary>
public class DayBookTests
{
    private static readonly Guid Unit = new(1, 0, 0, new byte[8]);

    private static DayBook Book(params DayBookTask[] tasks) => DayBook.Usual with { Units = [new(Unit, "F-1", [.. tasks], 700)] };

    [Fact]
    public void A_book_is_read_back_as_it_was_written()
    {
        var book = Book(new("Repair", 30, "glue sets", 60, 545), new("Put together", 20, "", 0, null));
        Assert.Equal(book.Write(), DayBook.Read(book.Write()).Write());
        Assert.Equal(DayBook.Usual.Write(), DayBook.Read("{}").Write());
        Assert.Equal(DayBook.Usual.Write(), DayBook.Read("of next year").Write());
    }

    /// <summary>Glue that was put on at 9:05 sets for an hour from then on, not from the end of the next task.</summary>
    [Fact]
    public void What_is_done_is_left_out_and_its_wait_goes_on()
    {
        var left = Book(new("Repair", 30, "glue sets", 60, 545), new("Put together", 20, "", 0, null)).LeftAt(600).Single();
        Assert.Equal(("Put together", 605, 700), (left.Tasks.Single().Words, left.ReadyAt, left.DueAt!.Value));
        Assert.Empty(Book(new DayBookTask("Repair", 30, "", 0, 545)).LeftAt(600));
    }

    private static DayBook Club(params DayBookTask[] tasks) => Book(tasks).With("Ann").With(" Ben ").With("ann").With("");

    [Fact]
    public void Each_name_is_there_once_and_kept()
    {
        var book = Club();
        Assert.Equal(["Ann", "Ben"], book.People.Select(p => p.Name));
        Assert.Equal(["Ann", "Ben"], DayBook.Read(book.Write()).People.Select(p => p.Name));
        Assert.Empty(DayBook.Read(Book().Write()).People);
    }

    /// <summary>Ann is at a task from 10:00 for half an hour with the load bank, which then runs for an hour by itself.</summary>
    [Fact]
    public void Whoever_is_at_a_task_is_free_when_it_ends_and_its_tool_after_the_wait()
    {
        var heat = new DayBookTask("Heat run", 30, "runs hot", 60, null)
        {
            Tool = "load bank",
            KeepsTool = true,
            StartedAt = 600,
            By = "Ann",
        };
        var book = Club(heat, new("Return", 10, "", 0, null));
        var team = book.TeamAt(610);
        Assert.Equal([("Ann", 630), ("Ben", 610)], team.People.Select(p => (p.Name, p.Hours.StartsAt)));
        Assert.Equal(("load bank", 690), (team.Tools.Single().Name, team.Tools.Single().FreeAt));
        Assert.Equal(1020, team.ClosesAt);
        var left = book.LeftAt(610).Single();
        Assert.Equal(("Return", 690), (left.Tasks.Single().Words, left.ReadyAt));
        Assert.Equal((0, 1), (book.GoingOn("Ann")!.Value.Task, book.PlaceOf(Unit, 0)));
        Assert.Null(book.GoingOn("Ben"));
        // Ten minutes over and not said to be done: nobody else may begin on it now.
        Assert.Equal([641, 640], book.TeamAt(640).People.Select(p => p.Hours.StartsAt));
        Assert.Equal(701, book.TeamAt(640).Tools.Single().FreeAt);
        Assert.Equal(701, book.LeftAt(640).Single().ReadyAt);
        Assert.True(book.IsTaken(Unit, 1));
        Assert.False(Club(heat with { DoneAt = 640 }, new("Return", 10, "", 0, null)).IsTaken(Unit, 1));
    }

    /// <summary>One unit at its last task until 15:00, one to do until 10:30: all is ready when the later of them is.</summary>
    [Fact]
    public void A_unit_at_its_last_task_counts_until_it_is_ready()
    {
        var ending = new DayBookUnit(new(2, 0, 0, new byte[8]), "F-2", [new("Heat run", 60, "cools", 60, null) { StartedAt = 780 }], null);
        var book = Club(new DayBookTask("Return", 30, "", 0, null)) with { };
        book = book with { Units = book.Units.Add(ending) };
        var plan = new DayPlan([new(0, 0, 800, 830, 830)], 0, 830, 830, 1, true);
        Assert.Equal("All 2 units ready by 15:00.", DayWords.Outcome(plan, book, 790));
        Assert.Equal("1 of 2 units ready late. The last one is ready 17:41.", DayWords.Outcome(plan, book, 1000));
        Assert.Equal("The one unit ready by 13:50.", DayWords.Outcome(plan, Club(new DayBookTask("Return", 30, "", 0, null)), 790));
    }

    [Fact]
    public void A_tool_by_another_capital_letter_is_the_same_one()
    {
        DayTask test = new("test", 60, Tool: "Load bank");
        DayUnit[] units = [new(Unit, "", [test]), new(Unit, "", [test with { Tool = "load bank" }])];
        var team = new DayTeam([new("", new([(540, 1020)])), new("", new([(540, 1020)]))], [new("LOAD BANK", 600)]);
        Assert.Equal(720, DayPlanner.Plan([.. units], team, DayBudget.Usual, TestContext.Current.CancellationToken).EndsAt);
    }

    /// <summary>Without the wait the tool goes back with the hands; one who is alone has no closing hour.</summary>
    [Fact]
    public void A_tool_that_is_not_kept_is_free_with_the_hands()
    {
        var test = new DayBookTask("Insulation", 10, "dries", 50, 600) { Tool = "insulation tester" };
        Assert.Equal(600, Club(test).TeamAt(605).Tools.Single().FreeAt);
        Assert.Null(Book(test).TeamAt(605).ClosesAt);
        Assert.Single(Book(test).TeamAt(605).People);
    }

    [Fact]
    public void Somebody_who_is_never_there_is_named()
    {
        var book = Club(new DayBookTask("Repair", 100, "", 0, null));
        Assert.Equal("", book.Problem);
        var late = book with { People = [new("Ann", 1030, null), new("Ben", null, null)] };
        Assert.Equal("Ann is never there within the hours of the day. Change one of the two.", late.Problem);
        var short_ = book with { People = [new("Ann", 600, 690)] };
        Assert.StartsWith(
            "F-1: “Repair” takes 100 min at one go. Your longest stretch is 90 min.",
            short_.Problem,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_task_longer_than_the_longest_stretch_is_named()
    {
        Assert.Equal("", Book(new DayBookTask("Repair", 240, "", 0, null)).Problem);
        Assert.Equal(
            "F-1: “Repair” takes 241 min at one go. Your longest stretch is 240 min. Split it, or free more time.",
            Book(new DayBookTask("Repair", 241, "", 0, null)).Problem
        );
        Assert.Equal("", Book(new DayBookTask("Repair", 241, "", 0, 600)).Problem);
    }

    [Theory]
    [InlineData("09:00", "12:30", "", "", "540-750")]
    [InlineData("09:00", "17:00", "12:00", "13:00", "540-720 780-1020")]
    [InlineData("09:00", "17:00", "13:00", "12:00", "The break must lie within your hours.")]
    [InlineData("09:00", "17:00", "12:00", "", "The break must lie within your hours.")]
    [InlineData("09:00", "17:00", "08:00", "10:00", "The break must lie within your hours.")]
    [InlineData("17:00", "09:00", "", "", "Your hours must begin before they end.")]
    [InlineData("", "09:00", "", "", "Your hours must begin before they end.")]
    public void Hours_are_stretches_or_what_is_wrong_with_them(string from, string to, string off, string on, string expected)
    {
        var (free, problem) = DayBook.Hours(from, to, off, on);
        Assert.Equal(
            expected,
            problem.Length > 0 ? problem : string.Join(' ', free.Select(f => FormattableString.Invariant($"{f.From}-{f.To}")))
        );
    }

    [Fact]
    public void A_chart_shows_whole_hours_from_the_first_hands_on()
    {
        var hours = new DayHours([(540, 720), (780, 1020)]);
        var plan = new DayPlan([new(0, 0, 565, 600, 700), new(0, 1, 790, 830, 830)], 0, 830, 830, 1, true);
        Assert.Equal((540, 840, 60), DayWords.Axis(plan, hours));
        Assert.Equal((540, 1020, 60), DayWords.Axis(plan with { EndsAt = 3000 }, hours));
        var tomorrow = plan with { Tasks = plan.Tasks.Add(new(0, 2, 1440 + 540, 1440 + 600, 1440 + 600)), EndsAt = 1440 + 600 };
        Assert.Equal((540, 1440 + 600, 240), DayWords.Axis(tomorrow, hours));
    }
}
