using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.SmallTree;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>What it costs to get to several parts, and which of them are worth it, against trying every set of steps.</summary>
public class ReachCostsTests
{
    /// <summary>Cover 4; two screws 1 each behind it, or a spring 3; the roller behind the screws or the spring; the lamp behind the cover.</summary>
    private static readonly ImmutableArray<TakeApartStep> Unit =
    [
        Step("cover", 4, []),
        Step("screw-1", 1, ["cover"]),
        Step("screw-2", 1, ["cover"]),
        Step("spring", 3, ["cover"]),
        Step("roller", 2, ["cover"], ["screw-1", "screw-2"], ["spring"]),
        Step("lamp", 0.5, ["cover"]),
        Step("feet", 9, []),
    ];

    private static ReachCosts Costs(params string[] off) =>
        new(Unit, ["roller", "lamp"], Rate, off.ToImmutableHashSet(StringComparer.Ordinal));

    /// <summary>Sums of the steps above: what two parts share counts once, and what is off already costs nothing.</summary>
    [Fact]
    public void A_step_counts_once_and_one_that_is_off_not_at_all()
    {
        Assert.Equal(4 + 1 + 1 + 2, Costs().To(["roller"]), 9);
        Assert.Equal(4 + 0.5, Costs().To(["lamp"]), 9);
        Assert.Equal(4 + 1 + 1 + 2 + 0.5, Costs().To(["roller", "lamp"]), 9);
        Assert.Equal(2, Costs("cover", "spring").To(["roller"]), 9);
        Assert.Equal(1 + 2, Costs("cover", "screw-2").To(["roller"]), 9);
        Assert.Equal(0, Costs("cover").To([]), 9);
        // The feet lie before neither part.
        Assert.Equal(0.5, Costs("cover", "feet").To(["lamp"]), 9);
    }

    /// <summary>
    /// Roller: 8 to get to it. With the lamp 0.5 more, and without the roller the lamp is 4.5. So a part left at 20 and 1 is taken with the
    /// roller and not the lamp, and both are taken when leaving the lamp costs as much as its own step and more.
    /// </summary>
    [Theory]
    [InlineData(20, 0.4, "roller", 8 + 0.4)]
    [InlineData(20, 0.6, "roller lamp", 8.5)]
    [InlineData(7, 0.6, "", 7.6)]
    [InlineData(7, 5, "roller lamp", 8.5)]
    [InlineData(3.9, 4.7, "lamp", 4.5 + 3.9)]
    [InlineData(3.9, 4.5, "", 8.4)]
    public void A_part_is_got_to_when_leaving_it_costs_more(double rollerLeft, double lampLeft, string chosen, double cost)
    {
        var (parts, all) = Costs().Choose([new("roller", 0, rollerLeft), new("lamp", 0, lampLeft)]);
        Assert.Equal(chosen, string.Join(' ', parts));
        Assert.Equal(cost, all, 9);
    }

    [Fact]
    public void What_is_paid_when_a_part_is_taken_counts_with_the_way()
    {
        Assert.Equal(8 + 3, Costs().Choose([new("roller", 3, 12)]).Cost, 9);
        Assert.Equal(10, Costs().Choose([new("roller", 3, 10)]).Cost, 9);
        Assert.Empty(Costs().Choose([new("roller", 3, 10)]).Chosen);
        Assert.Equal((0, 0.0), (Costs().Choose([]).Chosen.Length, Costs().Choose([]).Cost));
    }

    /// <summary>Every choice of three parts and every set of eight steps is tried.</summary>
    [Fact]
    public void No_choice_on_random_trees_is_cheaper()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var dice = new Random(seed);
            var steps = SmallTree.Random(seed, 8, 5);
            PartChoice[] parts = [.. Enumerable.Range(0, 3).Select(n => new PartChoice(steps[^(n + 1)].Id, dice.Next(4), dice.Next(25)))];
            var costs = new ReachCosts(steps, [.. parts.Select(p => p.Step)], Rate, ImmutableHashSet<string>.Empty);
            var least = double.PositiveInfinity;
            for (var taken = 0; taken < 1 << parts.Length; taken++)
            {
                var to = parts.Where((_, n) => (taken >> n & 1) != 0).ToList();
                var paid = to.Sum(p => p.CostWhenTaken) + parts.Except(to).Sum(p => p.CostWhenLeft);
                var way = Cheapest(steps, [.. to.Select(p => p.Step)]);
                Assert.Equal(way, costs.To(to.Select(p => p.Step)), 6);
                least = Math.Min(least, way + paid);
            }
            var (chosen, cost) = costs.Choose(parts);
            Assert.Equal(least, cost, 6);
            Assert.True(costs.IsProved);
            var own = parts.Where(p => chosen.Contains(p.Step)).ToList();
            Assert.Equal(
                cost,
                Cheapest(steps, [.. own.Select(p => p.Step)]) + own.Sum(p => p.CostWhenTaken) + parts.Except(own).Sum(p => p.CostWhenLeft),
                6
            );
        }
    }

    [Fact]
    public void Only_a_tree_that_is_searched_to_its_end_is_proved()
    {
        static ReachCosts Chain(int count) =>
            new(
                [.. Enumerable.Range(0, count).Select(n => Step(Id(n), 1, n == 0 ? [] : [Id(n - 1)]))],
                [Id(count - 1)],
                Rate,
                ImmutableHashSet<string>.Empty
            );
        Assert.True(Chain(TakeApartPlanner.ProvedSteps).IsProved);
        Assert.False(Chain(TakeApartPlanner.ProvedSteps + 1).IsProved);
        Assert.Equal(61, Chain(61).To([Id(60)]), 9);
    }

    [Theory]
    [InlineData("cover screw-1", "")]
    [InlineData("screw-1", "screw-1")]
    [InlineData("cover roller", "roller")]
    [InlineData("cover spring roller", "")]
    [InlineData("cover screw-1 roller", "roller")]
    [InlineData("spring roller lamp", "spring roller lamp")]
    [InlineData("feet", "")]
    public void What_cannot_be_off_without_others_is_named(string off, string named) =>
        Assert.Equal(named.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(), ReachCosts.NotOff(Unit, off.Split(' ')).Order());

    [Fact]
    public void Steps_that_wait_for_one_another_are_all_named()
    {
        ImmutableArray<TakeApartStep> ring = [Step("a", 1, [], ["b"], ["c"]), Step("b", 1, ["a"]), Step("c", 1, [])];
        Assert.Equal(["a", "b"], ReachCosts.NotOff(ring, ["a", "b"]).Order());
        Assert.Empty(ReachCosts.NotOff(ring, ["a", "b", "c"]));
    }
}
