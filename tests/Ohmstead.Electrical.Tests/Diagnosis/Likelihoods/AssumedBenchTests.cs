using Ohmstead.Electrical.Diagnosis.Likelihoods;

namespace Ohmstead.Electrical.Tests.Diagnosis.Likelihoods;

/// <summary>What a bench adds to the movements of a reading: its own, what parameters share, what readings share; by hand.</summary>
public class AssumedBenchTests
{
    private static readonly AssumedBench Bench = new(
        null,
        1,
        [1, 4],
        [
            [3, 4],
            [0, 2],
        ],
        [
            [0.5, 7],
            [0, 9],
        ],
        1
    );

    // Two readings by two parameters.
    private static readonly double[] Slopes = [10, 20, 1, 2];

    [Fact]
    public void Each_movement_stands_in_its_place()
    {
        Assert.Equal([10, 40, 110, 40, 0.5, 0], Bench.Movements(Slopes, 0));
        Assert.Equal([1, 4, 11, 4, 7, 9], Bench.Movements(Slopes, 1));
    }

    [Fact]
    public void A_parameter_moves_by_its_own_and_by_what_it_shares()
    {
        Assert.Equal(Math.Sqrt(1 + 9), Bench.DeviationOf(0), 1e-12);
        Assert.Equal(Math.Sqrt(4 + 16 + 4), Bench.DeviationOf(1), 1e-12);
    }
}
