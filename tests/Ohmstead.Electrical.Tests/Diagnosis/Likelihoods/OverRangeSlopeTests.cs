using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using static Ohmstead.Electrical.Tests.Diagnosis.WireBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Likelihoods;

/// <summary>What an OL pulls at a prediction, against differences of its log chance (closed form of the derivative).</summary>
public class OverRangeSlopeTests
{
    [Theory]
    [InlineData(-2)]
    [InlineData(-0.5)]
    [InlineData(0)]
    [InlineData(1)]
    public void Slope_and_curvature_are_those_of_the_log_chance(double deviations)
    {
        // Insulation: no break of this unit may be wider than the model has it.
        var unit = Parts(("w1", "a", "b", 1))
            .Element("insulation", "ins", "b", "case", new { ohms = 1e9 })
            .Reading("leak", "insulation-ohms", ["a", "case"])
            .Unit();
        var evidence = new Evidence(new ReadingLibrary(unit.Model), Unit(unit, [OL(unit, "leak")]), 1e-12);
        const double sigma = 3;
        var slopes = new double[unit.Model.Parameters.Length];
        slopes[0] = sigma;
        var spread = evidence.SpreadOf(slopes, [0]);
        var limit = evidence.Measured(0);
        var work = new OverRangeWork();
        double Log(double at) => evidence.OverRange.LogChance([at], spread, work);
        var (centre, step) = (limit + (deviations * sigma), 0.01);
        var (below, above, here) = (Log(centre - step), Log(centre + step), Log(centre));
        Assert.Equal((above - below) / (2 * step), work.Slope[0], 2e-3);
        Assert.Equal(-(above - (2 * here) + below) / (step * step), work.Curvature[0], 2e-3);
        Assert.False(work.IsLeftOut[0]);
    }
}
