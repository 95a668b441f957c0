using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Sizes;

/// <summary>The size of a fault that comes nearest to some readings, against every one of twenty thousand sizes.</summary>
public class SizeReachTests
{
    private readonly WireRow row = new([("0", 5), ("01", 9)]);

    [Theory]
    [InlineData(0.013)]
    [InlineData(0.21)]
    [InlineData(0.5)]
    [InlineData(0.777)]
    [InlineData(1)]
    public void What_it_can_reach_it_reaches(double share)
    {
        var reach = Reach();
        var wanted = reach.At(share);
        var (found, apart) = reach.Nearest(wanted);
        Assert.Equal(share, found, 1e-3);
        Assert.Equal(0, apart, 0.05);
    }

    [Theory]
    [InlineData(0.3, 2)]
    [InlineData(0.62, -3)]
    [InlineData(0.9, 6)]
    [InlineData(0.02, -8)]
    public void What_it_cannot_reach_it_comes_nearest_to(double share, double off)
    {
        var reach = Reach();
        double[] wanted = [reach.At(share)[0], reach.At(share)[1] + off];
        const int cells = 20000;
        var nearest = Enumerable.Range(0, cells + 1).Min(n => row.Pieces.Evidence.Apart(reach.At(n / (double)cells), wanted));
        var (found, apart) = reach.Nearest(wanted);
        Assert.Equal(nearest, apart, Math.Max(0.02, 0.1 * Math.Abs(off)));
        Assert.Equal(apart, row.Pieces.Evidence.Apart(reach.At(found), wanted), 1e-9);
    }

    [Fact]
    public void Of_a_few_sizes_it_is_one_of_these()
    {
        var spec = new FaultSpec("shorted-turns", FaultChange.ShortsTurns, 1, SizeKind.WholeTurns, 1, 4);
        var turns = new FaultClass(0, [new FaultMode(0, "w", 0, ElementKind.Winding, spec)], [1], [0]);
        var reach = new SizeReach(
            turns,
            [
                [1, 1],
                [2, 4],
                [3, 9],
                [4, 16],
            ],
            row.Pieces.Evidence
        );
        Assert.Equal((turns.PointShares[2], 1), reach.Nearest([3, 10]));
        Assert.Equal((turns.PointShares[0], 3), reach.Nearest([-2, 1]));
        Assert.Equal([2, 4], reach.At(turns.PointShares[1] + 0.05));
    }

    private SizeReach Reach()
    {
        var c = row.Poor(0);
        return new SizeReach(c, [.. c.PointShares.Select(s => row.Predicted(s))], row.Pieces.Evidence);
    }
}
