using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>Pieces are done once each, whoever does them; what is solved is counted over all.</summary>
public class WorkersTests
{
    private static readonly BenchUnit Unit = WireBench.Chain(2);
    private static readonly ReadingSet Set = new(
        Unit.Model,
        Unit.Catalogue,
        Unit.Model.Sheet.Readings.Select(r => (r, r.State)),
        Meter.Usual
    );

    [Theory]
    [InlineData(1, 5)]
    [InlineData(2, 5)]
    [InlineData(3, 1)]
    [InlineData(2, 0)]
    public void Every_piece_is_done_once(int threads, int count)
    {
        var (workers, done) = (new Workers(Set, threads), new int[count]);
        workers.Each(
            count,
            (n, worker) =>
            {
                Interlocked.Increment(ref done[n]);
                using var unit = worker.Predictor.Assume();
                unit.Scaled(0);
            }
        );
        Assert.All(done, times => Assert.Equal(1, times));
        Assert.Equal((count, count), (workers.Solved, workers.Work));
        Assert.Equal(7, workers.One(_ => 7));
    }
}
