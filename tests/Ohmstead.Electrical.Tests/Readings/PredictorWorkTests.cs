using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>What a reading costs is its own, whatever was solved before it: a search that is ended by its work ends alike on any threads.</summary>
public class PredictorWorkTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    [Theory]
    [InlineData("ohms-right", 1)]
    [InlineData("right-load", 1)]
    [InlineData("right-first-dc", 10)]
    public void A_reading_costs_the_same_after_every_other(string id, int work)
    {
        Assert.All(
            new[] { "ohms-right", "right-load", "right-first-dc" },
            before =>
            {
                var readings = new[] { before, id }.Select(r => Twin.Model.Sheet.FindReading(r)!).Select(r => (r, r.State));
                var predictor = new Predictor(new ReadingSet(Twin.Model, new FaultCatalogue(Twin.Model), readings, Meter.Usual));
                using var sound = predictor.Assume();
                sound.Value(0);
                var (solved, already) = (predictor.Solved, predictor.Work);
                sound.Value(1);
                Assert.Equal((1, work), (predictor.Solved - solved, predictor.Work - already));
            }
        );
    }
}
