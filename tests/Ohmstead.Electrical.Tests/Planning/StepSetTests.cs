using Ohmstead.Electrical.Planning;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>A set of steps against the framework's sets, over more steps than one word of bits holds.</summary>
public class StepSetTests
{
    private const int Steps = 130;

    /// <summary>The first and the last bit of each word, and some at random.</summary>
    private static HashSet<int> Drawn(Random dice) =>
        [
            .. new[] { 0, 63, 64, 127, 128, Steps - 1 }.Where(_ => dice.Next(2) == 0),
            .. Enumerable.Range(0, dice.Next(20)).Select(_ => dice.Next(Steps)),
        ];

    private static StepSet Of(IEnumerable<int> steps) => steps.Aggregate(StepSet.Empty(Steps), (set, s) => set.With(s));

    [Fact]
    public void It_does_what_a_set_does()
    {
        var dice = new Random(7);
        for (var n = 0; n < 200; n++)
        {
            var (a, b) = (Drawn(dice), Drawn(dice));
            var (mine, other) = (Of(a), Of(b));
            Assert.Equal(a.Order(), mine.Steps());
            Assert.Equal(Enumerable.Range(0, Steps).Where(a.Contains), Enumerable.Range(0, Steps).Where(mine.Has));
            Assert.Equal(a.Union(b).Order(), mine.With(other).Steps());
            Assert.Equal(a.Intersect(b).Order(), mine.And(other).Steps());
            Assert.Equal(a.IsSupersetOf(b), mine.Holds(other));
            Assert.True(mine.With(other).Holds(mine) && mine.Holds(mine.And(other)) && mine.Holds(mine.Emptied()));
            Assert.Equal(a.SetEquals(b), mine.Equals(other));
            Assert.True(mine.Equals((object)Of(a.Reverse())) && mine.GetHashCode() == Of(a.Reverse()).GetHashCode());
            Assert.False(mine.Equals("no set"));
        }
    }

    [Fact]
    public void What_is_done_to_a_copy_is_not_done_to_the_set()
    {
        var set = Of([1, 64, 129]);
        var copy = set.Copied();
        copy.Add(65);
        copy.Remove(64);
        copy.Join(Of([0, 128]));
        Assert.Equal([0, 1, 65, 128, 129], copy.Steps());
        Assert.Equal([1, 64, 129], set.Steps());
        Assert.Empty(set.Emptied().Steps());
        Assert.NotEqual(Of([1]).GetHashCode(), Of([2]).GetHashCode());
    }
}
