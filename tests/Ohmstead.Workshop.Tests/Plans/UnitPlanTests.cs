using Ohmstead.Electrical.Planning;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.TakeApart;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Plans;

/// <summary>The plan of a unit: which lines, in which order, with which minutes, prices and stop points.</summary>
public class UnitPlanTests
{
    private static readonly PartDecided Roller = Decided("roller-left", "worn", DecidedAct.Replace, 5.10m);
    private static readonly PartDecided Disc = Decided("disc-left", "high-drop", DecidedAct.Replace, 1.40m, "diode");

    private static PartDecided Decided(string about, string mode, DecidedAct act, decimal price, string part = "", string why = "") =>
        new(about, mode, act, part, price, null, why, []);

    private static UnitPlan PlanOf(OnTheBench bench, MinuteBook? book = null) =>
        UnitPlan.Of(bench.Unit, OnTheBench.Sheet, bench.Own, null, OnTheBench.Shop, book ?? MinuteBook.Empty);

    [Fact]
    public void Nothing_decided_and_nothing_found_is_no_plan()
    {
        var plan = PlanOf(new OnTheBench());
        Assert.Empty(plan.Lines);
        Assert.Empty(plan.Done);
        Assert.Null(plan.Next);
    }

    [Fact]
    public void A_decision_comes_after_the_steps_to_it_and_before_they_go_back()
    {
        var plan = PlanOf(new OnTheBench().ColdGates().Add(Roller));
        Assert.Equal(
            [PlanLineKind.TakeApart, PlanLineKind.Work, PlanLineKind.PutTogether, PlanLineKind.Check],
            plan.Lines.Select(l => l.Kind)
        );
        var way = TakeApartPlanner.Plan(OnTheBench.Sheet.TakeApart, [ReachFor.StepFor("roller-left", OnTheBench.Sheet)!], 50);
        Assert.Equal(way.Steps.Select(s => $"off {s.Id}"), plan.Lines[0].Steps.Select(s => s.Id));
        Assert.Equal(way.MinutesOut, plan.Lines[0].Minutes, 6);
        Assert.Equal(way.MinutesIn, plan.Lines[2].Minutes, 6);
        Assert.Equal(5.10m, Assert.Single(plan.Lines[1].Parts).Price);
    }

    /// <summary>"Clean 10; replace 20–30": half of such jobs take less than the middle of the law, √(10·30) = 17.32 min.</summary>
    [Fact]
    public void Minutes_are_the_middle_of_the_usual_until_some_were_logged()
    {
        var bench = new OnTheBench().Add(Roller);
        double Work(UnitPlan plan) => plan.Lines.Single(l => l.Kind == PlanLineKind.Work).Minutes;
        Assert.Equal(Math.Sqrt(10 * 30), Work(PlanOf(bench)), 6);
        // Two records of 40 min against a belief that is worth two: the middle of the logarithms.
        var key = WorkKey.Of(OnTheBench.Sheet, "roller-left", WorkSort.Replace);
        var learned = Work(PlanOf(bench, MinuteBook.Of([(key, 40), (key, 40)])));
        Assert.Equal(Math.Sqrt(Math.Sqrt(10 * 30) * 40), learned, 6);
    }

    [Fact]
    public void A_decision_by_hand_says_its_own_minutes()
    {
        var plan = PlanOf(new OnTheBench().Add(Roller with { Minutes = 33 }));
        Assert.Equal(33, plan.Lines.Single(l => l.Kind == PlanLineKind.Work).Minutes, 6);
    }

    [Fact]
    public void What_stays_is_no_work_and_is_named_with_its_reason()
    {
        var plan = PlanOf(new OnTheBench().Add(Decided("roller-left", "worn", DecidedAct.Leave, 0, "", "8.1 mm of 9.5")));
        Assert.Empty(plan.Lines);
        Assert.Contains("leave, 8.1 mm of 9.5", Assert.Single(plan.Left), StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_decision_counts_and_none_at_all_takes_it_back()
    {
        var bench = new OnTheBench().Add(Roller).Add(Roller with { Act = DecidedAct.Clean, Price = 0 });
        Assert.EndsWith(": clean", PlanOf(bench).Lines.Single(l => l.Kind == PlanLineKind.Work).Words, StringComparison.Ordinal);
        Assert.Empty(PlanOf(bench.Add(Roller with { Act = DecidedAct.Open })).Lines);
    }

    [Fact]
    public void Two_parts_behind_different_steps_stand_each_behind_its_own()
    {
        var plan = PlanOf(new OnTheBench().ColdGates().Add(Roller).Add(Disc));
        var order = plan.Lines.SelectMany(l => l.Steps).Select(s => s.Id).ToList();
        foreach (var about in new[] { "roller-left", "disc-left" })
        {
            var step = ReachFor.StepFor(about, OnTheBench.Sheet)!;
            Assert.True(order.IndexOf($"off {step}") < order.IndexOf($"work {about}"), about);
            Assert.True(order.IndexOf($"work {about}") < order.IndexOf($"back {step}"), about);
        }
        Assert.Equal(order.Count, order.Distinct().Count());
        Assert.Contains(plan.Lines, l => l.Words.EndsWith("replace, diode", StringComparison.Ordinal));
    }

    /// <summary>What is off is off: the way is shorter, and it still goes back.</summary>
    [Fact]
    public void A_unit_that_is_open_needs_no_steps_to_be_taken_off_again()
    {
        var closed = new OnTheBench().ColdGates().Add(Roller);
        foreach (var step in PlanOf(closed).Lines[0].Steps)
            closed.Add(new TakenOff(step.Id["off ".Length..], 1, 1, ""));
        var plan = PlanOf(closed);
        Assert.Equal([PlanLineKind.Work, PlanLineKind.PutTogether, PlanLineKind.Check], plan.Lines.Select(l => l.Kind));
        var done = Assert.Single(plan.Done);
        Assert.Equal(plan.Lines[1].Steps.Length, done.Names.Length);
        // One minute from entry to entry in this journal.
        Assert.Equal(done.Names.Length, done.TookMinutes!.Value, 6);
    }

    [Fact]
    public void A_part_that_was_changed_is_done_with_its_price_and_minutes()
    {
        var plan = PlanOf(new OnTheBench().Add(Disc).Add(new PartChanged("disc-left", PartChange.Renewed, null, "")));
        Assert.DoesNotContain(plan.Lines, l => l.Kind == PlanLineKind.Work);
        var done = Assert.Single(plan.Done);
        Assert.Equal(1, done.TookMinutes!.Value, 6);
        Assert.Equal(1.40m, Assert.Single(done.Parts).Price);
    }

    [Fact]
    public void While_insulation_has_not_passed_the_job_may_end_once_the_unit_is_open()
    {
        var open = PlanOf(new OnTheBench().Add(Roller)).Lines;
        Assert.Contains("insulation stays under", open[0].Stop!.Words, StringComparison.Ordinal);
        Assert.Equal(20, open[0].Stop!.Fee);
        Assert.Null(PlanOf(new OnTheBench().ColdGates().Add(Roller)).Lines[0].Stop);
    }

    /// <summary>The row of a worn roller in the table of what to do.</summary>
    [Fact]
    public void Work_that_may_end_the_job_says_when()
    {
        var work = PlanOf(new OnTheBench().ColdGates().Add(Roller)).Lines.Single(l => l.Kind == PlanLineKind.Work);
        Assert.Equal("the arm breaks, or the turns under it are burnt", work.Stop!.Words);
        Assert.Equal(4, work.Stop.Percent, 9);
    }

    [Fact]
    public void Looks_that_are_to_be_mended_are_a_line_before_it_is_put_together()
    {
        var plan = PlanOf(
            new OnTheBench()
                .Add(Roller)
                .Add(new LooksNoted("Lettering", "worn", true, 20, 3m))
                .Add(new LooksNoted("Case", "", false, 30, 1m))
        );
        var looks = Assert.Single(plan.Lines, l => l.Kind == PlanLineKind.Looks);
        Assert.Equal(20, looks.Minutes, 6);
        Assert.True(plan.Lines.IndexOf(looks) < plan.Lines.ToList().FindIndex(l => l.Kind == PlanLineKind.PutTogether));
    }
}
