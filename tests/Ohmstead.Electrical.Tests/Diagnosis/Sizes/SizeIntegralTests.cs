using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Sizes;

/// <summary>The likelihood of one size integrated along its curve, against the mean over a fine grid.</summary>
public class SizeIntegralTests
{
    private static readonly MeterError Poor = new(10, 2, 0, 0);

    public static TheoryData<double, bool> Read =>
        new()
        {
            { 5, false },
            { 0.9, false },
            { 21, false },
            { 5, true },
            { 29, true },
            { 0.5, true },
        };

    [Theory]
    [MemberData(nameof(Read))]
    public void Along_a_curve_it_is_the_mean_over_the_size(double ohms, bool isPoor)
    {
        var row = new WireRow([("0", ohms)], isPoor ? Poor : null);
        var (c, judge, origin) = (row.Poor(0), row.Pieces.Judge(), row.Pieces.Sound);
        var (exact, best, top) = Grid(c, judge, origin, 20000);
        foreach (var steps in new[] { SizeIntegral.Fine, SizeIntegral.Coarse })
        {
            var integral = SizeIntegral.Over(steps, c, c.Curve, origin, judge);
            Assert.Equal(exact, integral.Log, steps == SizeIntegral.Fine ? 0.03 : 0.15);
            Assert.Equal(top, integral.BestLog, 0.03);
            Assert.Equal(best, integral.BestShare, 0.01);
        }
    }

    /// <summary>Newton's method on the curve, begun a little beside the best.</summary>
    [Theory]
    [InlineData(5, 0.01)]
    [InlineData(5, -0.008)]
    [InlineData(0.9, 0.01)]
    [InlineData(21, -0.01)]
    public void So_it_is_by_the_parabola_about_a_size_that_is_fixed_well(double ohms, double beside)
    {
        var row = new WireRow([("0", ohms)]);
        var (c, judge, origin) = (row.Poor(0), row.Pieces.Judge(), row.Pieces.Sound);
        var (exact, best, _) = Grid(c, judge, origin, 20000);
        Assert.Equal(exact, CurveClimb.LogIntegral(best + beside, c, c.Curve, origin, judge), 0.03);
    }

    /// <summary>Of two modes with ranges of their own the density is that of both; a few whole turns are summed.</summary>
    [Fact]
    public void A_few_whole_turns_count_alike()
    {
        var row = new WireRow([("0", 5)], Poor);
        var spec = new FaultSpec("shorted-turns", FaultChange.ShortsTurns, 1, SizeKind.WholeTurns, 1, 4);
        var turns = new FaultClass(0, [new FaultMode(0, "w", 0, ElementKind.Winding, spec)], [1], [0]);
        double[][] curve =
        [
            [0.4],
            [1.1],
            [1.7],
            [2.9],
        ];
        var (judge, origin) = (row.Pieces.Judge(), row.Pieces.Sound);
        double[] logs = [.. curve.Select(at => judge.LogLikelihood([origin[0] + at[0]]))];
        var integral = SizeIntegral.Over(SizeIntegral.Fine, turns, curve, origin, judge);
        Assert.Equal(Math.Log(logs.Average(Math.Exp)), integral.Log, 1e-9);
        Assert.Equal((turns.PointShares[Array.IndexOf(logs, logs.Max())], logs.Max()), (integral.BestShare, integral.BestLog));
    }

    /// <summary>Where sizes explain as much as each other the first of them is taken.</summary>
    [Fact]
    public void Of_sizes_that_do_as_well_the_smallest_is_the_best()
    {
        var row = new WireRow([("0", 5)], Poor);
        var spec = new FaultSpec("shorted-turns", FaultChange.ShortsTurns, 1, SizeKind.WholeTurns, 1, 4);
        var turns = new FaultClass(0, [new FaultMode(0, "w", 0, ElementKind.Winding, spec)], [1], [0]);
        double[][] curve =
        [
            [0.4],
            [1.1],
            [1.1],
            [0.4],
        ];
        var integral = SizeIntegral.Over(SizeIntegral.Fine, turns, curve, row.Pieces.Sound, row.Pieces.Judge());
        Assert.Equal(turns.PointShares[1], integral.BestShare);
    }

    [Theory]
    [InlineData(0.5, 2, 100, 0.52)]
    [InlineData(0.5, -3, 100, 0.47)]
    [InlineData(0.5, 1000, 100, 0.6)]
    [InlineData(0.5, -1000, 100, 0.4)]
    [InlineData(0.95, 1000, 100, 1)]
    [InlineData(0.03, -1000, 100, 0)]
    [InlineData(0.5, 0.5, 1, 0.6)]
    public void A_step_is_newtons_within_a_tenth_and_the_range(double share, double gradient, double curvature, double to) =>
        Assert.Equal(to, CurveClimb.Step(share, gradient, curvature)!.Value, 1e-12);

    [Fact]
    public void What_the_readings_say_nothing_of_does_not_move() => Assert.Null(CurveClimb.Step(0.5, 10, 0.99));

    /// <summary>Against differences of the log likelihood along the curve, on both halves of the range.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.8)]
    [InlineData(0.004)]
    [InlineData(0.997)]
    public void Slope_and_curvature_along_the_curve_are_those_of_the_log_likelihood(double share)
    {
        var row = new WireRow([("0", WireRow.Ohms(share) * 1.02)], wrongChance: 1e-300);
        var (c, judge, origin) = (row.Poor(0), row.Pieces.Judge(), row.Pieces.Sound);
        using var judged = judge.At(Along(c, origin, share));
        var (gradient, curvature) = CurveClimb.Slopes(share, c, c.Curve, judged);
        const double step = 1e-4;
        double Log(double at) => judge.LogLikelihood(Along(c, origin, at));
        var slope = (Log(share + step) - Log(share - step)) / (2 * step);
        Assert.Equal(slope, gradient, 0.05 * Math.Abs(slope));
        Assert.Equal((-Log(share + step) + (2 * Log(share)) - Log(share - step)) / (step * step), curvature, 0.1 * curvature);
    }

    private static (double Log, double Share, double Top) Grid(FaultClass c, Judge judge, double[] origin, int cells)
    {
        double[] logs = [.. Enumerable.Range(0, cells).Select(n => judge.LogLikelihood(Along(c, origin, (n + 0.5) / cells)))];
        var most = logs.Max();
        return (most + Math.Log(logs.Average(l => Math.Exp(l - most))), (Array.IndexOf(logs, most) + 0.5) / cells, most);
    }

    private static double[] Along(FaultClass c, double[] origin, double share)
    {
        var at = new double[origin.Length];
        CurveShape.At(c.PointShares, c.Curve, share, at);
        return [.. at.Select((v, r) => v + origin[r])];
    }
}
