using System.Globalization;
using Ohmstead.Workshop.Testing;

namespace Ohmstead.Workshop.Tests.Testing;

/// <summary>The order of tests: what makes no heat is done while a breaker cools. Minutes are added up by hand beside each line.</summary>
public class TestPlanTests
{
    private static BenchTest Test(string id, TestSort sort, double minutes) => new(id, sort, id, minutes, "", "", "");

    private static string Line(PlanLine l) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{l.AtMinutes:0.##} {l.Test?.Id ?? "wait"} {l.Minutes:0.##}{(l.IsMeanwhile ? " meanwhile" : "")}"
        );

    [Fact]
    public void While_a_breaker_cools_what_makes_no_heat_is_done_and_the_rest_is_waited_for()
    {
        var plan = TestPlan.Of(
            [
                Test("heat", TestSort.HeatRun, 80),
                Test("touch", TestSort.TouchCurrent, 4),
                Test("breaker 1", TestSort.Breaker, 3),
                Test("breaker 2", TestSort.Breaker, 3),
                Test("loaded", TestSort.LoadedVolts, 2),
                Test("watts", TestSort.NoLoadWatts, 1),
                Test("ground", TestSort.GroundWire, 3),
                Test("secondary", TestSort.SecondaryToCore, 3),
                Test("insulation", TestSort.Insulation, 3),
            ],
            // The wait of the worked breaker in docs/methods/proving.md: 338 s are 5.63 minutes.
            338
        );
        Assert.Equal(
            [
                "0 insulation 3",
                // All of the insulation before the plug goes in.
                "3 secondary 3",
                "6 watts 1",
                "7 loaded 2",
                // Warm from 9 on: a breaker counts as cold at 9 + 5.63.
                "9 ground 3 meanwhile",
                "12 touch 4 meanwhile",
                "16 breaker 1 3",
                "19 wait 5.63",
                "24.63 breaker 2 3",
                // An hour from 27.63 on.
                "27.63 wait 60",
                "87.63 heat 80",
            ],
            plan.Lines.Select(Line)
        );
        // 3 + 3 + 1 + 2 + 3 + 4 + 3 + 3 + 80 with both hands, and the two waits.
        Assert.Equal(102 + (338 / 60.0) + 60, plan.Minutes, 9);
        Assert.Equal((338 / 60.0) + 60, plan.WaitMinutes, 9);
    }

    [Fact]
    public void Nothing_waits_where_nothing_was_loaded()
    {
        var plan = TestPlan.Of([Test("heat", TestSort.HeatRun, 80), Test("breaker", TestSort.Breaker, 3)], 338);
        Assert.Equal("0 breaker 3", Line(plan.Lines[0]));
        Assert.Equal("3 wait 60", Line(plan.Lines[1]));
        var alone = TestPlan.Of([Test("heat", TestSort.HeatRun, 80)], 338);
        Assert.Equal(80, alone.Minutes);
        Assert.Equal(0, alone.WaitMinutes);
        Assert.Empty(TestPlan.Of([], 338).Lines);
    }

    [Fact]
    public void Only_what_is_due_is_on_it_and_its_first_comes_next()
    {
        var choice = Test("heat", TestSort.HeatRun, 80) with { IsChoice = true };
        var taken = Test("watts", TestSort.NoLoadWatts, 1) with { Taken = new TestTaken(default, [14], null, 0, 0, null, "") };
        BenchTest[] tests = [choice, taken, Test("drop", TestSort.Regulation, 0), Test("touch", TestSort.TouchCurrent, 4)];
        Assert.Equal(["touch"], TestPlan.Of(tests, 0).Lines.Select(l => l.Test!.Id));
        Assert.Equal("touch", TestPlan.Of(tests, 0).Next!.Id);
        Assert.Null(TestPlan.Of([choice], 0).Next);
        Assert.Equal(["watts", "drop"], tests.Where(t => t.IsToJudge).Select(t => t.Id));
    }

    [Fact]
    public void While_a_breaker_cools_something_that_makes_no_heat_is_offered()
    {
        var ground = Test("ground", TestSort.GroundWire, 2);
        Assert.Equal("ground", TestPlan.Meanwhile([Test("load", TestSort.LoadedVolts, 1), ground])!.Id);
        Assert.Null(TestPlan.Meanwhile([ground with { IsChoice = true }, Test("heat", TestSort.HeatRun, 80)]));
    }
}
