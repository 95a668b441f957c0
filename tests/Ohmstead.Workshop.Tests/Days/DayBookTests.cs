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
        var left = Book(new("Repair", 30, "glue sets", 60, 545), new("Put together", 20, "", 0, null)).Left.Single();
        Assert.Equal(("Put together", 605, 700), (left.Tasks.Single().Words, left.ReadyAt, left.DueAt!.Value));
        Assert.Empty(Book(new DayBookTask("Repair", 30, "", 0, 545)).Left);
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
