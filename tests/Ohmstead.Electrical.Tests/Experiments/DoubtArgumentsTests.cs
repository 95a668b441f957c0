using Ohmstead.Electrical.Readings;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Experiments.Doubted;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Electrical.Tests.Experiments;

public class DoubtArgumentsTests
{
    [Fact]
    public void A_full_run_takes_the_units_of_the_page_and_any_other_those_for_working_on_the_method()
    {
        Assert.True(DoubtArguments.Read([]) is { IsFull: true, Seed: 5000, Units: null });
        Assert.True(DoubtArguments.Read(["--verbose"]) is { IsFull: true, IsVerbose: true });
        Assert.True(DoubtArguments.Read(["--units", "8"]) is { IsFull: false, Seed: 1, Units: 8 });
        Assert.True(
            DoubtArguments.Read(["twin-160", "--condition", "batch", "--seed", "40"])
                is { IsFull: false, Seed: 40, Sheets: [{ Name: "twin-160" }], Conditions: [{ Name: "batch" }] }
        );
    }

    [Theory]
    [InlineData("--units")]
    [InlineData("--units", "none")]
    [InlineData("--condition", "rain")]
    [InlineData("no-such-sheet")]
    public void What_it_does_not_know_is_refused(params string[] arguments) => Assert.Null(DoubtArguments.Read(arguments));

    [Fact]
    public void The_sheets_made_from_a_plate_are_without_a_problem_or_a_remark() =>
        Assert.All(DoubtSheet.All.Where(s => s.IsWide), s => Assert.Empty(SheetRemarks.Of(Reference.Sheet(s.File))));

    [Theory]
    [InlineData(0.05, 0.05, true)]
    [InlineData(0.051, 0.05, false)]
    [InlineData(double.NaN, 0.05, true)]
    public void A_figure_is_met_up_to_what_is_asked_and_where_nothing_was_measured(double measured, double limit, bool isMet)
    {
        Assert.Equal(isMet, Asked.AtMost("", measured, limit).IsMet);
        Assert.Equal(isMet, Asked.AtLeast("", -measured, -limit).IsMet);
    }
}
