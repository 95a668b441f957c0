using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Hypotheses;

/// <summary>Faults that are there together, and which may be.</summary>
public class MembersTests
{
    private readonly FaultClass first = Class(0, 0, "open", [true, false], odds: 0.5);
    private readonly FaultClass second = Class(1, 1, "resistive", [true, true], odds: 0.25, max: 10);
    private readonly FaultClass third = Class(2, 2, "open", [false, true], odds: 0.125);

    [Fact]
    public void They_stand_in_the_order_of_their_numbers_however_they_came()
    {
        var set = Members.None.With(third, 0).With(first, 0).With(second, 0.3);
        Assert.Equal([first, second, third], set.Classes);
        Assert.Equal([0, 0.3, 0], set.Shares);
        Assert.Equal(("0,1,2", 3), (set.Key, set.Count));
        Assert.Equal(Math.Log(0.5 * 0.25 * 0.125), set.LogPrior, 1e-12);
        Assert.True(set.Contains(first) && set.Contains(third));
        var (without, moved) = (set.Without(1), set.At(1, 0.7));
        Assert.Equal([first, third], without.Classes);
        Assert.Equal([0, 0], without.Shares);
        Assert.Equal([second, third], set.Without(0).Classes);
        Assert.Equal([0.3, 0], set.Without(0).Shares);
        Assert.Equal([first, second], set.Without(2).Classes);
        Assert.False(without.Contains(second));
        Assert.Equal(0.7, moved.Shares[1]);
        Assert.Equal(0.3, set.Shares[1]);
    }

    [Fact]
    public void Only_a_fault_without_a_size_lays_open_what_was_hidden()
    {
        var set = Members.None.With(first, 0).With(second, 0.3);
        Assert.Equal((true, false), (set.AreRewired(0), set.AreRewired(1)));
        Assert.False(Members.None.AreRewired(0));
    }

    [Fact]
    public void Faults_of_one_part_are_not_there_together()
    {
        var same = Class(3, 0, "resistive", [true, true], odds: 0.1, max: 10);
        Assert.False(first.CanStandBeside(same));
        Assert.False(first.CanStandBeside(first));
        Assert.True(first.CanStandBeside(second));
        Assert.False(Members.None.With(first, 0).With(third, 0).CanAdd(same));
        Assert.True(Members.None.With(third, 0).CanAdd(same));
    }

    /// <summary>Of two parts that nothing tells apart, one may have this fault and the other that.</summary>
    [Fact]
    public void Twins_may_stand_beside_what_one_of_them_has()
    {
        var twins = new FaultClass(4, [Mode(0, 0, "open", 0), Mode(1, 1, "open", 0)], [1, 1, 1], [0, 1, 2]);
        Assert.True(twins.CanStandBeside(first));
        Assert.True(first.CanStandBeside(twins));
        Assert.Equal([0, 1], twins.Elements);
    }

    [Fact]
    public void They_touch_where_they_move_the_same_reading()
    {
        Assert.True(first.Touches(second) && second.Touches(third));
        Assert.False(first.Touches(third));
    }

    /// <summary>Parts 0 and 1 have it together: it stands beside no fault of theirs, but beside that of another.</summary>
    [Fact]
    public void What_parts_share_is_instead_of_their_own_faults()
    {
        var mode = Mode(3, 0, "open", 0) with { Element = "both", SharedBy = ["e0", "e1"], OtherTargets = [1], SharedElements = [0, 1] };
        var both = new FaultClass(5, [mode], [1, 1, 1, 1], [0, 1, 2, 3]);
        FaultClass Own(int part) => new(part, [Mode(part, part, "open", 0)], [1, 1, 1, 1, 1], [0, 1, 2, 3, 0]);
        Assert.False(both.CanStandBeside(Own(0)));
        Assert.False(Own(1).CanStandBeside(both));
        Assert.True(both.CanStandBeside(Own(2)));
        // Where it is one of a class with a fault of a third part, that other one may stand beside the first part's own.
        var either = new FaultClass(6, [mode, Mode(2, 2, "open", 0)], [1, 1, 1, 1], [0, 1, 2, 3]);
        Assert.True(either.CanStandBeside(Own(0)));
        // With another fault of one of its parts there is none left that could.
        var first = new FaultClass(7, [mode, Mode(4, 0, "resistive", 9)], [1, 1, 1, 1, 1], [0, 1, 2, 3, 0]);
        Assert.False(first.CanStandBeside(Own(0)));
        Assert.False(Own(0).CanStandBeside(first));
        Assert.True(first.CanStandBeside(Own(1)));
    }

    private static FaultClass Class(int number, int part, string mode, bool[] moves, double odds, double max = 0) =>
        new(number, [Mode(0, part, mode, max)], [odds], [part]) { Moves = moves };

    private static FaultMode Mode(int number, int part, string mode, double max) =>
        new(
            number,
            FormattableString.Invariant($"e{part}"),
            part,
            ElementKind.Wire,
            max > 0 ? new(mode, FaultChange.SetsOhms, 1, SizeKind.Continuous, 1, max) : new(mode, FaultChange.Opens, 1)
        );
}
