using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.SmallTree;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The search for a way and the bound below it, on trees of ten steps of which every set is tried.</summary>
public class WaySearchTests
{
    private const int Steps = 10;
    private const int Trees = 80;

    /// <summary>Trees with choices, two goals each, and the least that these cost.</summary>
    private static readonly Lazy<(ImmutableArray<TakeApartStep> Steps, double Cheapest)[]> Drawn = new(() =>
        [
            .. Enumerable
                .Range(0, Trees)
                .Select(seed => Random(seed, Steps, 6))
                .Select(steps => (steps, Cheapest(steps, [steps[^1].Id, steps[^2].Id]))),
        ]
    );

    private static StepSet Goals(StepTree tree) => tree.Musts[^1].With(tree.Musts[^2]);

    /// <summary>Whatever stops it, the way can be done and holds the goals, and no way costs less than the bound.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(200)]
    [InlineData(1000)]
    [InlineData(1_000_000)]
    [InlineData(long.MaxValue)]
    public void However_early_it_is_stopped_the_way_can_be_done_and_the_bound_holds(long most)
    {
        var (paid, least) = (0.0, 0.0);
        foreach (var (steps, cheapest) in Drawn.Value)
        {
            var tree = Of(steps);
            var (way, bound) = new WaySearch(tree).Run(Goals(tree), most);
            Assert.True(way.Holds(Goals(tree)));
            Assert.True(CanBeDone([.. way.Steps().Select(n => steps[n])]));
            Assert.InRange(bound, 0.4 * cheapest, cheapest + 1e-9);
            Assert.InRange(tree.CostOf(way), cheapest - 1e-9, double.MaxValue);
            if (most >= 1_000_000)
                Assert.Equal((cheapest, cheapest), (Math.Round(tree.CostOf(way), 9), Math.Round(bound, 9)));
            paid += tree.CostOf(way);
            least += cheapest;
        }
        // The first way, each step by the group that adds least and nothing in it that it can do without, is already good.
        Assert.InRange(paid / least, 1, 1.006);
    }

    /// <summary>Where nothing can be chosen every step before the goal must be paid, and the cuts find each of them.</summary>
    [Fact]
    public void Without_choices_the_bound_is_the_cost()
    {
        for (var seed = 0; seed < Trees; seed++)
        {
            var tree = Of(Random(seed, 40, 0));
            for (var goal = 0; goal < 40; goal++)
                Assert.Equal(tree.CostOf(tree.Musts[goal]), new WayBound(tree).Of(tree.Empty.With(goal)), 6);
            Assert.Equal(tree.CostOf(Goals(tree)), new WayBound(tree).Of(Goals(tree)), 6);
        }
    }

    [Fact]
    public void With_choices_the_bound_is_nearly_the_cost_and_never_above_it()
    {
        var sum = 0.0;
        foreach (var (steps, cheapest) in Drawn.Value)
        {
            var tree = Of(steps);
            var bound = new WayBound(tree).Of(Goals(tree));
            Assert.InRange(bound, 0, cheapest + 1e-9);
            sum += bound / cheapest;
        }
        Assert.InRange(sum / Trees, 0.998, 1);
    }

    /// <summary>Either of two ways, 3 + 3 or 5: the cheaper one; and where both share a step of 2 before them, that once.</summary>
    [Fact]
    public void The_bound_of_one_choice_is_its_cheaper_way()
    {
        ImmutableArray<TakeApartStep> steps =
        [
            Step("first", 2, []),
            Step("a", 3, ["first"]),
            Step("b", 3, ["first"]),
            Step("c", 5, ["first"]),
            Step("goal", 1, [], ["c"], ["a"]),
            Step("other", 1, [], ["c"], ["a", "b"]),
        ];
        var tree = Of(steps);
        Assert.Equal(2 + 3 + 1, new WayBound(tree).Of(tree.Empty.With(4)), 9);
        Assert.Equal(2 + 3 + 1, new WaySearch(tree).Run(tree.Empty.With(4), long.MaxValue).Bound, 9);
        Assert.Equal(2 + 5 + 1, new WaySearch(tree).Run(tree.Empty.With(5), long.MaxValue).Bound, 9);
        Assert.Equal(2 + 5 + 1 + 1, new WaySearch(tree).Run(tree.Empty.With(4).With(5), long.MaxValue).Bound, 9);
    }

    /// <summary>The first goal takes the step of 3 before the second is looked at, which needs the one of 4: that opens the first, too.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(long.MaxValue)]
    public void A_step_that_another_makes_needless_is_left_out(long most)
    {
        var tree = Of([
            Step("a", 3, []),
            Step("b", 4, []),
            Step("x", 99, []),
            Step("one", 1, [], ["a"], ["b"]),
            Step("two", 1, [], ["b"], ["x"]),
        ]);
        var (way, _) = new WaySearch(tree).Run(tree.Empty.With(3).With(4), most);
        Assert.Equal(["b", "one", "two"], way.Steps().Select(n => tree.Steps[n].Id));
    }

    [Fact]
    public void What_has_no_order_has_no_way()
    {
        var tree = Of([Step("a", 1, ["b"]), Step("b", 1, ["a"])]);
        Assert.Throws<ArgumentException>(() => new WaySearch(tree).Run(tree.Empty.With(0), long.MaxValue));
    }

    /// <summary>What is done on every way: itself, all of "after", and what every group has in common.</summary>
    [Fact]
    public void What_every_way_holds_is_known_beforehand()
    {
        var tree = Of([
            Step("cover", 1, []),
            Step("a", 1, ["cover"]),
            Step("b", 1, ["cover", "a"]),
            Step("c", 1, []),
            Step("goal", 1, ["c"], ["b"], ["a"]),
            Step("free", 1, [], ["c"], ["b"]),
        ]);
        string Musts(int step) => string.Join(' ', tree.Musts[step].Steps().Select(n => tree.Steps[n].Id));
        Assert.Equal(["cover", "cover a", "cover a b", "c", "cover a c goal", "free"], Enumerable.Range(0, 6).Select(Musts));
        Assert.Equal(
            ["cover", "a", "b", "c", "goal", "free"],
            tree.Order(tree.Musts[2].With(tree.Musts[4]).With(5)).Select(n => tree.Steps[n].Id)
        );
        Assert.Empty(tree.Order(tree.Empty.With(1)));
        Assert.True(tree.CanBeDone(4, tree.Empty.With(3).With(1)));
        Assert.False(tree.CanBeDone(4, tree.Empty.With(3)));
        Assert.False(tree.CanBeDone(4, tree.Empty.With(1)));
    }

    /// <summary>(2 + 4) minutes at 30 an hour, and 5 % of 40: 3 + 2. What is done costs nothing.</summary>
    [Fact]
    public void A_step_costs_its_minutes_both_ways_and_what_may_break()
    {
        TakeApartStep step = new("x", "x", [], [], 2, 4, 5, 40, [], "", 0);
        Assert.Equal(5, StepTree.CostOf(step, 30), 9);
        Assert.Equal([5.0], new StepTree([step], 30, ImmutableHashSet<string>.Empty).Costs);
        Assert.Equal([0.0], new StepTree([step], 30, ImmutableHashSet.Create("x")).Costs);
    }
}
