using MathNet.Numerics.LinearAlgebra;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Sizes;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Sizes;

/// <summary>Sizes fitted together and integrated over, against a grid over all of them; what they predict is a sum of ohms.</summary>
public class SizeFitTests
{
    private static readonly MeterError Poor = new(10, 2, 0, 0);
    private static readonly MeterError Fair = new(3, 0.1, 0, 0);

    /// <summary>One size: fixed well, loose, at either end of its range, beyond it.</summary>
    [Theory]
    [InlineData(5, false, 0.02)]
    [InlineData(5, true, 0.1)]
    [InlineData(0.41, false, 0.05)]
    [InlineData(29.9, false, 0.05)]
    [InlineData(33, true, 0.1)]
    [InlineData(0.2, true, 0.1)]
    public void One_size_is_integrated_over_its_range(double ohms, bool isPoor, double within)
    {
        var row = new WireRow([("0", ohms)], isPoor ? Poor : null);
        var fit = Fit(row, 0.5);
        Assert.Equal(row.LogMean(1, 4000, Spread(row, 0.5)), fit.LogEvidence, within);
        Assert.Equal(Math.Clamp(WireRow.Share(ohms), 0, 1), fit.Members.Shares[0], isPoor ? 0.03 : 0.002);
    }

    /// <summary>Both fixed by a reading each; only their sum is read, with a good meter and a poor one; the sum near its least and its most.</summary>
    [Theory]
    [InlineData("01=9 1=3", false, 0.05)]
    [InlineData("0=2 1=12", false, 0.05)]
    [InlineData("01=9", false, 0.1)]
    [InlineData("01=9", true, 0.1)]
    [InlineData("01=1.2", false, 0.15)]
    [InlineData("01=55", false, 0.15)]
    public void Two_sizes_are_integrated_over_together(string taken, bool isPoor, double within)
    {
        var row = Row(taken, isPoor);
        var fit = Fit(row, 0.45, 0.55);
        Assert.Equal(row.LogMean(2, 200, Spread(row, 0.45, 0.55)), fit.LogEvidence, within);
    }

    /// <summary>Three sizes, of which two or three readings fix some.</summary>
    [Theory]
    [InlineData("0=2 1=5 2=11", 0.3)]
    public void Three_sizes_are_integrated_over_together(string taken, double within)
    {
        var row = Row(taken, false, new MeterError(6, 0.4, 0, 0));
        Assert.Equal(row.LogMean(3, 50, Spread(row, 0.5, 0.5, 0.5)), Fit(row, 0.5, 0.5, 0.5).LogEvidence, within);
    }

    /// <summary>From anywhere in the range, near and far, the climb ends where the readings are met, as wide as the inverse of the curvature has it.</summary>
    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(0.3, 0.7)]
    [InlineData(0.85, 0.3)]
    public void The_climb_ends_where_the_readings_are_met(double first, double second)
    {
        var row = Row("01=9 1=3", false, wrongChance: 1e-300);
        var problem = new SizeProblem(row.Set(first, second).Classes, row.Pieces.Judge(Spread(row, 0.5, 0.5)));
        var start = problem.At(row.Set(first, second), row.Predicted(first, second));
        var climb = SizeClimb.From(problem, SizePull.From(problem, start));
        double[] met = [WireRow.Share(6), WireRow.Share(3)];
        Assert.All([0, 1], k => Assert.Equal(met[k], climb.Top.Members.Shares[k], 0.003));
        // Deviations: what sums of ohms make of a share, by hand, with the range's own four.
        double Slope(int r, int k)
        {
            double[] up = [.. met],
                down = [.. met];
            (up[k], down[k]) = (met[k] + 1e-4, met[k] - 1e-4);
            return (row.Predicted(up)[r] - row.Predicted(down)[r]) / 2e-4;
        }
        var slopes = Matrix<double>.Build.Dense(2, 2, Slope);
        var covariance = Matrix<double>.Build.Dense(2, 2, Spread(row, 0.5, 0.5).Gaussian.Covariance);
        var inverse = ((slopes.Transpose() * covariance.Inverse() * slopes) + (4 * Matrix<double>.Build.DenseIdentity(2))).Inverse();
        Assert.All([0, 1], k => Assert.Equal(Math.Sqrt(inverse[k, k]), climb.Deviations[k], 0.05 * climb.Deviations[k]));
    }

    /// <summary>The row is less than its two poor wires can be: the first stays at its least and the second takes what is left.</summary>
    [Fact]
    public void A_size_at_its_end_stays_there_while_the_other_goes_on()
    {
        var row = Row("0=0.2 01=3", false);
        var fit = Fit(row, 0.3, 0.8);
        Assert.Equal(0, fit.Members.Shares[0], 1e-6);
        Assert.InRange(fit.Members.Shares[1], WireRow.Share(2.4), WireRow.Share(3));
    }

    /// <summary>A reading so far off that it counts as wrong pulls no size by itself: it is tried where it would be right.</summary>
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.98)]
    public void A_size_is_tried_where_it_explains_what_is_left_out(double start)
    {
        var row = new WireRow([("0", 4), ("01", 4.2)], wrongChance: 0.02);
        var problem = new SizeProblem(row.Set(start).Classes, row.Pieces.Judge(Spread(row, start)));
        var from = problem.At(row.Set(start), row.Predicted(start));
        var pulled = SizePull.From(problem, from);
        Assert.True(pulled.Log > from.Log + 5);
        Assert.InRange(WireRow.Ohms(pulled.Members.Shares[0]), 3.8, 4.3);
        // What is not left out pulls nothing.
        var near = problem.At(row.Set(WireRow.Share(4.1)), row.Predicted(WireRow.Share(4.1)));
        Assert.Same(near, SizePull.From(problem, near));
    }

    /// <summary>Only the sum of two sizes is read: from where they are the same, what is missing is shared out alike.</summary>
    [Theory]
    [InlineData(7, 9)]
    [InlineData(12, 9)]
    [InlineData(30, 24)]
    public void What_readings_do_not_tell_apart_gives_way_alike(double from, double sum)
    {
        var row = Row(FormattableString.Invariant($"01={sum}"), false, wrongChance: 1e-300);
        var share = WireRow.Share(from / 2);
        var problem = new SizeProblem(row.Set(share, share).Classes, row.Pieces.Judge(Spread(row, share, share)));
        var climb = SizeClimb.From(problem, problem.At(row.Set(share, share), row.Predicted(share, share)));
        Assert.All(climb.Top.Members.Shares, s => Assert.Equal(WireRow.Share(sum / 2), s, 0.01));
    }

    private static SizeFit Fit(WireRow row, params double[] start) =>
        SizeFit.From(row.Set(start), row.Predicted(start), row.Pieces.Judge(Spread(row, start)));

    private static Spread Spread(WireRow row, params double[] start) => row.Pieces.Spreads.Of(row.Set(start), row.Predicted(start));

    private static WireRow Row(string taken, bool isPoor, MeterError? meter = null, double wrongChance = 1e-9) =>
        new(
            [
                .. taken
                    .Split(' ')
                    .Select(t => t.Split('='))
                    .Select(t => (t[0], double.Parse(t[1], System.Globalization.CultureInfo.InvariantCulture))),
            ],
            isPoor ? Poor : meter ?? Fair,
            wrongChance
        );
}
