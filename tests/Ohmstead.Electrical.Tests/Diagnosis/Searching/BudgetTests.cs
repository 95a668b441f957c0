using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Searching;

namespace Ohmstead.Electrical.Tests.Diagnosis.Searching;

/// <summary>What one search may spend, counted from where it begins. Two wires: a reading solved is a work of two.</summary>
public class BudgetTests
{
    private readonly Pieces pieces;
    private readonly Budget budget;
    private bool isOverdue;

    public BudgetTests()
    {
        var unit = WireBench.Chain(2);
        pieces = new Pieces(
            unit,
            [WireBench.Value(unit, "whole", 0.02)],
            options: new DiagnosisOptions
            {
                MostWork = 20,
                MostExpanded = 4,
                LeastExpanded = 2,
                YoungExpanded = 3,
                CheapSolutions = 7,
                IsOverdue = () => isOverdue,
            }
        );
        // What others did before is not its own.
        Solve(40);
        budget = new Budget(pieces.Setting);
    }

    private void Solve(int readings) =>
        pieces.Workers.One(w =>
        {
            for (var n = 0; n < readings; n++)
            {
                using var unit = w.Predictor.Assume();
                unit.Scaled(0);
            }
            return 0;
        });

    private void Expand(int sets)
    {
        for (var n = 0; n < sets; n++)
            budget.CountExpanded();
    }

    private int Settled()
    {
        var count = 0;
        while (count < 100 && budget.TrySettle())
            count++;
        return count;
    }

    [Fact]
    public void It_goes_on_until_its_work_is_done_and_stops_where_the_guard_strikes()
    {
        Assert.Equal(Pace.GoOn, budget.Pace);
        Solve(9);
        Assert.Equal(Pace.GoOn, budget.Pace);
        Solve(1);
        Assert.Equal(Pace.Hurry, budget.Pace);
        isOverdue = true;
        Assert.Equal(Pace.Stop, budget.Pace);
    }

    /// <summary>Young by sets or by readings solved: seven and three it is no more.</summary>
    [Fact]
    public void It_is_young_while_sets_or_solutions_are_few()
    {
        Assert.True(budget.IsYoung);
        Expand(3);
        Solve(6);
        Assert.True(budget.IsYoung);
        Solve(1);
        Assert.False(budget.IsYoung);
    }

    [Fact]
    public void It_is_young_too_with_many_solutions_and_few_sets()
    {
        Solve(30);
        Expand(2);
        Assert.True(budget.IsYoung);
        Expand(1);
        Assert.False(budget.IsYoung);
    }

    [Fact]
    public void A_least_number_of_sets_is_expanded_whatever_they_cost_and_never_more_than_the_most()
    {
        Solve(100);
        Expand(1);
        Assert.True(budget.MayExpand);
        Expand(1);
        Assert.False(budget.MayExpand);
        var other = new Budget(pieces.Setting);
        for (var n = 0; n < 3; n++)
            other.CountExpanded();
        Assert.True(other.MayExpand);
        other.CountExpanded();
        Assert.Equal((4, false), (other.Expanded, other.MayExpand));
    }

    /// <summary>docs/methods/diagnosis.md, "Settling": sixteen, three when the work is done.</summary>
    [Theory]
    [InlineData(0, 16)]
    [InlineData(10, 3)]
    public void So_many_sets_are_settled(int solved, int most)
    {
        Solve(solved);
        Assert.Equal(most, Settled());
        Assert.Equal(0, Settled());
    }

    [Fact]
    public void None_is_settled_once_the_guard_struck()
    {
        Assert.True(budget.TrySettle());
        isOverdue = true;
        Assert.Equal(0, Settled());
    }
}
