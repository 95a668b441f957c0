using System.Collections.Immutable;
using Ohmstead.Workshop.Days;

namespace Ohmstead.Workshop.Tests.Days;

/// <summary>The order of a day: what must hold of every plan, the best of all orders on small days, near its own bound on large ones.</summary>
public class DayPlannerTests
{
    private static readonly DayHours Shop = new([(9 * 60, 12 * 60), (13 * 60, 17 * 60)]);

    private static DayPlan Plan(ImmutableArray<DayUnit> units, DayHours hours) =>
        DayPlanner.Plan(units, hours, DayBudget.Usual, TestContext.Current.CancellationToken);

    private static DayUnit Unit(string tag, int? due, params (int Hands, int Wait)[] tasks) =>
        new(Guid.Empty, tag, [.. tasks.Select(t => new DayTask("work", t.Hands, t.Wait > 0 ? "waits" : "", t.Wait))], 0, due);

    /// <summary>By hand: A waits an hour after its half hour, B fits into that wait. A, B, A ends at 10:30; B first at 11:00.</summary>
    [Fact]
    public void Another_unit_is_worked_on_while_glue_sets()
    {
        var plan = Plan([Unit("A", null, (30, 60), (30, 0)), Unit("B", null, (30, 0))], new([(540, 1020)]));
        Assert.Equal([(0, 540), (1, 570), (0, 630)], plan.Tasks.Select(t => (t.Unit, t.From)));
        Assert.Equal((660, 660, 0, true), (plan.EndsAt, plan.NoneEndsBefore, plan.Late, plan.IsProved));
    }

    [Fact]
    public void A_unit_that_is_due_goes_first_even_where_the_day_ends_later_by_it()
    {
        DayUnit[] units = [Unit("A", null, (60, 120), (10, 0)), Unit("B", 600, (60, 0))];
        var plan = Plan([.. units], new([(540, 1020)]));
        Assert.Equal((0, 790), (plan.Late, plan.EndsAt));
        Assert.Equal(1, plan.Tasks[0].Unit);
        var withoutDue = Plan([units[0], units[1] with { DueAt = null }], new([(540, 1020)]));
        Assert.Equal(730, withoutDue.EndsAt);
    }

    /// <summary>No task lies across the break, and what does not fit today goes on tomorrow.</summary>
    [Fact]
    public void Hands_rest_in_the_break_and_at_night_and_waits_do_not()
    {
        var plan = Plan([Unit("A", null, (170, 30), (60, 0), (200, 0))], Shop);
        Assert.Equal([(540, 710), (780, 840), (DayHours.Day + 780, DayHours.Day + 980)], plan.Tasks.Select(t => (t.From, t.To)));
        Assert.Equal("tomorrow 16:20", DayWords.Clock(plan.EndsAt));
    }

    [Fact]
    public void No_unit_makes_an_empty_day() => Assert.Equal((0, true), (Plan([], Shop).Tasks.Length, Plan([], Shop).IsProved));

    /// <summary>Every order of four units is gone through by a program of its own, written here.</summary>
    [Fact]
    public void Days_of_four_units_are_exact()
    {
        for (var seed = 1; seed <= 40; seed++)
        {
            var (units, hours) = DrawnDay.Of(seed, units: 4, most: seed % 2 == 0 ? 3 : 2);
            var plan = Plan(units, hours);
            var (late, ends) = BestOfAll(units, hours);
            Assert.Equal((seed, late, ends), (seed, plan.Late, plan.EndsAt));
            Assert.True(plan.IsProved);
            Assert.Equal(plan.EndsAt, plan.NoneEndsBefore);
            Holds(units, hours, plan);
        }
    }

    /// <summary>The bound is one on the easier day as well: no order of a day without due times is through before it.</summary>
    [Fact]
    public void No_order_passes_the_bound()
    {
        for (var seed = 100; seed < 140; seed++)
        {
            var (drawn, hours) = DrawnDay.Of(seed, units: 3, most: 3);
            ImmutableArray<DayUnit> units = [.. drawn.Select(u => u with { DueAt = null })];
            var unproved = DayPlanner.Plan(units, hours, new DayBudget(MostStates: 0, Moves: 0), TestContext.Current.CancellationToken);
            Assert.InRange(unproved.NoneEndsBefore, hours.StartsAt, BestOfAll(units, hours).EndsAt);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Days_of_twelve_units_end_within_a_twentieth_of_their_bound(int seed)
    {
        var (units, hours) = DrawnDay.Of(seed, units: 12, most: 5);
        var plan = Plan(units, hours);
        Holds(units, hours, plan);
        var start = hours.Fit(0, 1);
        Assert.InRange(plan.EndsAt - start, plan.NoneEndsBefore - start, 1.05 * (plan.NoneEndsBefore - start));
        Assert.Equal(plan.Tasks, Plan(units, hours).Tasks);
    }

    [Fact]
    public void What_was_weighed_is_said()
    {
        var plan = new DayPlan([], 0, 945, 940, 12480, false);
        Assert.Equal("Weighed 12,480 orders; no day can end before 15:40.", DayWords.Weighed(plan));
        Assert.EndsWith(
            "no day with as few units late can end before 15:40. In every order at least 1 unit is late.",
            DayWords.Weighed(plan with { LeastLate = 1 }),
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "In every order at least 2 units are late.",
            DayWords.Weighed(plan with { LeastLate = 2 }),
            StringComparison.Ordinal
        );
        Assert.Equal("All 4 units ready by 15:45.", DayWords.Outcome(plan, 4));
        Assert.Equal(
            "1 of 4 units ready late. The last one is ready tomorrow 9:05.",
            DayWords.Outcome(plan with { Late = 1, EndsAt = 1440 + 545 }, 4)
        );
        Assert.Equal(["45 min", "2 h", "1 day 4 h"], new[] { 45, 120, 1440 + 250 }.Select(DayWords.Span));
    }

    /// <summary>One pair of hands, free hours, tasks of a unit in order with their waits between, each once; the figures are those of the plan.</summary>
    private static void Holds(ImmutableArray<DayUnit> units, DayHours hours, DayPlan plan)
    {
        Assert.Equal(units.Sum(u => u.Tasks.Length), plan.Tasks.Distinct().Count());
        foreach (var (one, next) in plan.Tasks.Zip(plan.Tasks.Skip(1)))
            Assert.True(one.To <= next.From);
        var ready = new List<int>();
        for (var u = 0; u < units.Length; u++)
        {
            var at = units[u].ReadyAt;
            var own = plan.Tasks.Where(t => t.Unit == u).ToList();
            Assert.Equal(Enumerable.Range(0, own.Count), own.Select(t => t.Task));
            foreach (var task in own)
            {
                Assert.True(task.From >= at && task.From >= hours.StartsAt);
                Assert.Equal(units[u].Tasks[task.Task].Minutes, task.To - task.From);
                Assert.Contains(
                    hours.Free,
                    f => task.From % DayHours.Day >= f.From && task.From % DayHours.Day + (task.To - task.From) <= f.To
                );
                at = task.To + units[u].Tasks[task.Task].WaitMinutes;
                Assert.Equal(at, task.ReadyAt);
            }
            ready.Add(at);
        }
        Assert.Equal(ready.Max(), plan.EndsAt);
        Assert.Equal(units.Zip(ready).Count(u => u.Second > u.First.DueAt), plan.Late);
        Assert.InRange(plan.NoneEndsBefore, 0, plan.EndsAt);
    }

    /// <summary>Minute by minute, order by order.</summary>
    private static (int Late, int EndsAt) BestOfAll(ImmutableArray<DayUnit> units, DayHours hours)
    {
        var best = (int.MaxValue, int.MaxValue);
        Go(hours.StartsAt, [.. units.Select(_ => 0)], [.. units.Select(u => u.ReadyAt)]);
        return best;

        void Go(int hands, int[] next, int[] ready)
        {
            var isThrough = true;
            for (var u = 0; u < units.Length; u++)
            {
                if (next[u] == units[u].Tasks.Length)
                    continue;
                isThrough = false;
                var task = units[u].Tasks[next[u]];
                var at = Math.Max(hands, ready[u]);
                while (!hours.Free.Any(f => at % 1440 >= f.From && at % 1440 + task.Minutes <= f.To))
                    at++;
                var (was, done) = (ready[u], next[u]);
                (next[u], ready[u]) = (done + 1, at + task.Minutes + task.WaitMinutes);
                Go(at + task.Minutes, next, ready);
                (next[u], ready[u]) = (done, was);
            }
            if (!isThrough)
                return;
            var found = (units.Where((u, n) => ready[n] > u.DueAt).Count(), ready.Max());
            if (found.CompareTo(best) < 0)
                best = found;
        }
    }
}
