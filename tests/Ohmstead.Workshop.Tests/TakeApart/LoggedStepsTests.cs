using System.Globalization;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Tests.Asking;
using Ohmstead.Workshop.Tests.Units;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.TakeApart;

/// <summary>The steps of a type out of the log of its first unit. Chances are common practice, no source.</summary>
public sealed class LoggedStepsTests
{
    private static readonly TypeSheet Sheet = Drafted(AskedUnits.Single);

    private static TypeSheet Drafted(KindAnswers answers)
    {
        var (kinds, asked, _) = TypeDraft.Read(answers, AskedUnits.Id);
        return TypeDraft.Run(kinds!, asked, [], UsualShop.Make(), new DiagnosisOptions()).Sheet;
    }

    private static TakenOff Off(int n, string title, int cup = 0, string words = "") =>
        new(string.Create(CultureInfo.InvariantCulture, $"untyped-off-{n}"), cup, 1, words) { Title = title };

    /// <summary>Half an hour of pause before the shield; a piece of it broke.</summary>
    private static readonly BenchUnit First = LoggedMinutesTests.Unit(
        (0, new PlateRead(120, 90)),
        (4, Off(1, "four brass screws", cup: 1)),
        (6.5, Off(2, "lid", words: "lift the left side first")),
        (36.5, Off(3, "fiber shield")),
        (38, new PieceNoted("untyped-off-3", PieceFate.Broke, 1, "brittle")),
        (40, Off(4, "breaker", cup: 2)),
        (45, new PutBack("untyped-off-4", 1, 0, "", ""))
    );

    [Fact]
    public void The_log_gives_order_minutes_cup_and_what_broke()
    {
        var logged = LoggedSteps.Of(First, Sheet);
        Assert.Equal(["screws", "cover", "fiber-shield", "breaker-out"], logged.Select(l => l.Step.Id));
        Assert.Equal(["Four brass screws", "Lid", "Fiber shield", "Breaker"], logged.Select(l => l.Step.Title));
        Assert.Equal(["Case screws", "Cover", "", "Breaker"], logged.Select(l => l.Replaces));
        // After the pause nothing is known of the minutes: what is usual.
        Assert.Equal([4, 2.5, 3, 2], logged.Select(l => l.Step.MinutesOut));
        Assert.Equal(5, logged[3].Step.MinutesIn);
        Assert.Equal([1, 0, 0, 2], logged.Select(l => l.Step.Cup));
        // One unit beside nine of the usual chance: nine tenths of 2 and 3 of 100; of 3 with one that broke, 127 of 1,000.
        Assert.Equal([1.8, 2.7, 12.7], logged.Take(3).Select(l => l.Step.BreakPercent));
        Assert.Equal([0, 0, 1, 0], logged.Select(l => l.Broke));
        Assert.Equal("Lift the left side first.", logged[1].Step.Trick);
        Assert.Equal("1 piece broke: brittle.", logged[2].Step.Trick);
    }

    [Fact]
    public void The_next_unit_goes_by_the_logged_order()
    {
        var text = TypeSteps.Put(TypeSheetFile.Write(Sheet), LoggedSteps.In(Sheet, LoggedSteps.Of(First, Sheet)))!;
        var steps = TypeSheetFile.Read(text).Required.TakeApart;
        Assert.Equal(
            ["screws", "cover", "fiber-shield", "breaker-out"],
            TakeApartPlanner.Plan(steps, ["breaker-out"], TakeApartPlanner.UsualRate).Steps.Select(s => s.Id)
        );
        // What nobody took off is there as before; nothing but the steps has changed.
        Assert.Equal(
            Sheet.TakeApart.Select(s => s.Id).Append("fiber-shield").Order(StringComparer.Ordinal),
            steps.Select(s => s.Id).Order(StringComparer.Ordinal)
        );
        Assert.Equal(["post-leads", "cord"], steps.Single(s => s.Id == "core-out").After.OrderDescending(StringComparer.Ordinal));
        Assert.Equal(
            TypeSheetFile.Write(Sheet),
            TypeSteps.Put(text, Sheet.TakeApart) is { } back ? TypeSheetFile.Write(TypeSheetFile.Read(back).Required) : ""
        );
    }

    [Fact]
    public void The_sheets_own_steps_keep_their_ids_and_one_step_shows_no_order()
    {
        var unit = LoggedMinutesTests.Unit(
            (0, new PlateRead(120, 90)),
            (2, new TakenOff("screws", 1, 4, "")),
            (5, new TakenOff("cover", 0, 1, ""))
        );
        Assert.Equal(["screws", "cover"], LoggedSteps.Of(unit, Sheet).Select(l => l.Step.Id));
        Assert.Equal(["Case screws", "Cover"], LoggedSteps.Of(unit, Sheet).Select(l => l.Step.Title));
        Assert.Empty(LoggedSteps.Of(LoggedMinutesTests.Unit((0, new PlateRead(120, 90)), (2, new TakenOff("screws", 1, 4, ""))), Sheet));
    }

    [Theory]
    [InlineData("sheet metal case", "cover")]
    [InlineData("two bolts of the lid", "screws")]
    [InlineData("throttle lever", "knob-a")]
    [InlineData("power cable", "cord")]
    [InlineData("coil", "core-out")]
    [InlineData("name plate", "name-plate")]
    [InlineData("§", "step")]
    public void What_a_person_calls_a_step_is_the_sheets_own_where_it_has_it(string title, string id) =>
        Assert.Equal(id, LoggedSteps.Of(LoggedMinutesTests.Unit((0, Off(1, title)), (2, Off(2, "x"))), Sheet)[0].Step.Id);

    [Fact]
    public void Without_a_step_what_came_after_it_comes_after_what_it_came_after()
    {
        var steps = TypeSteps.Without(LoggedSteps.In(Sheet, LoggedSteps.Of(First, Sheet)), "cover");
        Assert.DoesNotContain(steps, s => s.Id == "cover");
        Assert.Equal(["screws"], steps.Single(s => s.Id == "fiber-shield").After);
        // Readings with the case open need that one; what nobody needs can go.
        Assert.Null(TypeSteps.Put(TypeSheetFile.Write(Sheet), steps));
        var without = TypeSteps.Without(LoggedSteps.In(Sheet, LoggedSteps.Of(First, Sheet)), "fiber-shield");
        Assert.Equal(["cover"], without.Single(s => s.Id == "breaker-out").After);
        Assert.NotNull(TypeSteps.Put(TypeSheetFile.Write(Sheet), without));
    }

    [Fact]
    public void Steps_that_were_put_right_stay_when_the_sheet_is_drafted_anew()
    {
        var before = Sheet with { TakeApart = LoggedSteps.In(Sheet, LoggedSteps.Of(First, Sheet)) };
        var drafted = Drafted(AskedUnits.Single with { Breaker = "throttle" });
        var kept = TypeSteps.Kept(before, drafted);
        Assert.Equal(["screws", "cover", "fiber-shield"], kept.Take(3).Select(s => s.Id));
        Assert.Equal(4, kept[0].MinutesOut);
        Assert.DoesNotContain(kept, s => s.Id == "breaker-out");
        Assert.Equal(["cover"], kept.Single(s => s.Id == "breaker-a-out").After);
        Assert.NotNull(TypeSteps.Put(TypeSheetFile.Write(drafted), kept));
    }

    [Fact]
    public void Where_not_all_can_stand_each_that_can_stands_on_the_new_sheet()
    {
        var text = TypeSheetFile.Write(Sheet);
        // Readings with the case open need the cover, which is not among these; what comes after it alone cannot come before it.
        var own = TypeSteps.Without(LoggedSteps.In(Sheet, LoggedSteps.Of(First, Sheet)), "cover");
        var round = own.Single(s => s.Id == "screws") with { After = ["fiber-shield"] };
        var before = Sheet with { TakeApart = own.SetItem(own.ToList().FindIndex(s => s.Id == "screws"), round) };
        Assert.Null(TypeSteps.Put(text, TypeSteps.Kept(before, Sheet)));
        var steps = TypeSheetFile.Read(TypeSteps.PutKept(text, before, Sheet)).Required.TakeApart;
        Assert.Contains(steps, s => s.Id == "cover");
        Assert.Equal("Fiber shield", steps.Single(s => s.Id == "fiber-shield").Title);
        Assert.Equal("Breaker", steps.Single(s => s.Id == "breaker-out").Title);
        Assert.Equal(5, steps.Single(s => s.Id == "breaker-out").MinutesIn);
    }

    [Theory]
    [InlineData("", "2", "3", "4", "0", "Write what comes off.")]
    [InlineData("Lid", "much", "3", "4", "0", "Minutes off: ")]
    [InlineData("Lid", "2", "-3", "4", "0", "Minutes back on: ")]
    [InlineData("Lid", "2", "3", "101", "0", "Breaks: ")]
    [InlineData("Lid", "2", "3", "4", "1.5", "Cup: a whole number, 0 for none.")]
    [InlineData(" Lid ", "2", "3", "4", "", "")]
    public void What_is_typed_at_a_step_is_its_own(string title, string off, string on, string percent, string cup, string problem)
    {
        var (step, wrong) = TypeSteps.Typed(Sheet.TakeApart[0], title, off, on, percent, cup);
        Assert.StartsWith(problem, wrong, StringComparison.Ordinal);
        Assert.Equal(problem.Length == 0, wrong.Length == 0);
        if (problem.Length == 0)
            Assert.Equal(("Lid", 2, 3, 4, 0), (step.Title, step.MinutesOut, step.MinutesIn, step.BreakPercent, step.Cup));
    }
}
