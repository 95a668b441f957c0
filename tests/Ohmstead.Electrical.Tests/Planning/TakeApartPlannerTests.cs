using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The cheapest way to a part, against trying every set of steps and against worked examples.</summary>
public class TakeApartPlannerTests
{
    /// <summary>A step of so much cost at a rate of 60 money an hour.</summary>
    private static TakeApartStep Step(string id, double cost, string[]? after = null, string[][]? any = null) =>
        new(id, id, [.. after ?? []], [.. (any ?? []).Select(g => g.ToImmutableArray())], cost, 0, 0, 0, [], "", 0);

    private static TakeApartPlan Plan(ImmutableArray<TakeApartStep> steps, params string[] reach) =>
        TakeApartPlanner.Plan(steps, reach, 60);

    /// <summary>An AND/OR choice of tutorials of AO*: edge 1 to D (10 to go), or edges 1 and 1 to B and C (6 and 12): 11 against 20.</summary>
    [Fact]
    public void The_choice_of_the_ao_star_tutorial_costs_11()
    {
        var plan = Plan(
            [
                Step("d", 11),
                Step("b", 7),
                Step("c", 13),
                Step(
                    "a",
                    0,
                    any:
                    [
                        ["b", "c"],
                        ["d"],
                    ]
                ),
            ],
            "a"
        );
        Assert.Equal(["d", "a"], plan.Steps.Select(s => s.Id));
        Assert.Equal(11, plan.ExpectedCost, 9);
        Assert.True(plan.IsProved);
    }

    /// <summary>Plate 3, leads 2 and 2, then the core 6, or drilling 8 and the core 6: 13 against 14 (derived; common practice, no source).</summary>
    [Fact]
    public void Unscrewing_is_cheaper_than_drilling()
    {
        ImmutableArray<TakeApartStep> steps =
        [
            Step("plate", 3),
            Step("lead-1", 2, ["plate"]),
            Step("lead-2", 2, ["plate"]),
            Step("drill", 8),
            Step(
                "core",
                6,
                any:
                [
                    ["lead-1", "lead-2"],
                    ["drill"],
                ]
            ),
        ];
        Assert.Equal(13, Plan(steps, "core").ExpectedCost, 9);
        var open = TakeApartPlanner.Plan(steps, ["core"], 60, ImmutableHashSet.Create("drill"));
        Assert.Equal(["core"], open.Steps.Select(s => s.Id));
        Assert.Equal(6, open.ExpectedCost, 9);
    }

    [Fact]
    public void Costs_minutes_and_breakage_are_those_of_the_definition()
    {
        ImmutableArray<TakeApartStep> steps =
        [
            new("cap", "Cap", [], [], 0.5, 0.5, 4, 1.5, [], "", 0),
            new("handle", "Handle", ["cap"], [], 2, 1, 6, 8.5, [], "", 0),
            new("lens", "Lens", [], [], 0.5, 0.5, 5, 2.2, [], "", 0),
        ];
        var plan = TakeApartPlanner.Plan(steps, ["handle"]);
        Assert.Equal(2.5, plan.MinutesOut, 9);
        Assert.Equal(1.5, plan.MinutesIn, 9);
        // 4 min at 50 an hour, 4 % of 1.5 and 6 % of 8.5.
        Assert.Equal((4 * 50 / 60.0) + 0.06 + 0.51, plan.ExpectedCost, 9);
        Assert.Equal(100 * (1 - (0.96 * 0.94)), plan.BreakPercent, 9);
        var lens = Assert.Single(plan.OnTheWay);
        Assert.Equal(1, lens.ExtraMinutes, 9);
        Assert.Equal((50 / 60.0) + 0.11, lens.ExtraCost, 9);
    }

    [Fact]
    public void On_random_trees_no_set_of_steps_is_cheaper() =>
        Trees.Sample(
            steps =>
            {
                var target = steps[^1].Id;
                var plan = Plan(steps, target);
                Assert.True(plan.IsProved);
                AssertCanBeDone(steps, plan.Steps);
                var cheapest = Cheapest(steps, target);
                Assert.Equal(cheapest, plan.ExpectedCost, 6);
                var tree = new StepTree(steps, 60, new HashSet<string>());
                var goal = tree.Empty.With(steps.Length - 1);
                Assert.InRange(new WayBound(tree).Of(goal), 0.5, cheapest + 1e-6);
                Assert.All(
                    tree.Musts[^1].Steps(),
                    s => Assert.Equal(double.PositiveInfinity, Cheapest(steps, target, without: steps[s].Id))
                );
            },
            iter: 400
        );

    [Fact]
    public void A_large_tree_has_an_answer_with_a_bound_below_it()
    {
        var steps = LargeTree(1000, seed: 3);
        var plan = Plan(steps, steps[^1].Id);
        AssertCanBeDone(steps, plan.Steps);
        Assert.InRange(plan.LowerBound, 0.3 * plan.ExpectedCost, plan.ExpectedCost);
    }

    /// <summary>Rollers now 12 and 12 minutes at 50 an hour, or 40 % of 12, 55 minutes and a trip of 15 later (common practice, no source).</summary>
    [Fact]
    public void Rollers_are_renewed_while_it_is_open()
    {
        var choice = NowOrLater.Of(12, 12, 55, 15, 40, 50);
        Assert.Equal(22, choice.Now, 9);
        Assert.Equal(0.4 * (12 + (55 * 50 / 60.0) + 15), choice.Later, 9);
        Assert.Equal(100 * 22 / (12 + (55 * 50 / 60.0) + 15), choice.BreakEvenPercent, 9);
        Assert.True(choice.FailPercent > choice.BreakEvenPercent);
    }

    /// <summary>Steps that need some of those before them, all of these or one of two groups; costs are whole.</summary>
    private static Gen<ImmutableArray<TakeApartStep>> Trees =>
        from count in Gen.Int[2, 14]
        from seed in Gen.Int[0, 1_000_000]
        select Tree(count, seed, 4);

    internal static ImmutableArray<TakeApartStep> LargeTree(int count, int seed) => Tree(count, seed, 30);

    private static ImmutableArray<TakeApartStep> Tree(int count, int seed, int near)
    {
        var dice = new Random(seed);
        string Before(int n) => Id(Math.Max(0, n - 1 - dice.Next(near)));
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(n =>
                    Step(
                        Id(n),
                        1 + dice.Next(9),
                        n > 0 && dice.Next(3) > 0 ? [Before(n)] : [],
                        n > 1 && dice.Next(2) == 0
                            ?
                            [
                                [Before(n), Before(n)],
                                [Before(n)],
                            ]
                            : []
                    )
                ),
        ];
    }

    private static string Id(int n) => "s" + n.ToString("D4", CultureInfo.InvariantCulture);

    private static void AssertCanBeDone(ImmutableArray<TakeApartStep> steps, IEnumerable<TakeApartStep> order)
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var s in order)
        {
            Assert.True(CanBeDone(s, done), s.Id);
            done.Add(s.Id);
        }
    }

    private static bool CanBeDone(TakeApartStep s, HashSet<string> done) =>
        s.After.All(done.Contains) && (s.AfterAny.Length == 0 || s.AfterAny.Any(g => g.All(done.Contains)));

    /// <summary>Every set of steps is tried.</summary>
    private static double Cheapest(ImmutableArray<TakeApartStep> steps, string target, string without = "")
    {
        var best = double.PositiveInfinity;
        for (var set = 0; set < 1 << steps.Length; set++)
        {
            var chosen = steps.Where((_, n) => (set >> n & 1) != 0).ToList();
            if (chosen.All(s => s.Id != target) || chosen.Exists(s => s.Id == without))
                continue;
            var cost = chosen.Sum(s => s.MinutesOut);
            if (cost >= best)
                continue;
            var done = new HashSet<string>(StringComparer.Ordinal);
            while (chosen.FirstOrDefault(s => !done.Contains(s.Id) && CanBeDone(s, done)) is { } next)
                done.Add(next.Id);
            if (done.Count == chosen.Count)
                best = cost;
        }
        return best;
    }
}
