using MathNet.Numerics.LinearAlgebra;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Diagnosis.Observed;

namespace Ohmstead.Electrical.Tests.Diagnosis.Observed;

/// <summary>
/// What a judgement says of a direction, of what readings share and of the parameters: against differences of its log likelihood, and against
/// the normal law worked out by Math.NET. Three resistances read as numbers, two leaks as OL; slopes and directions by hand.
/// </summary>
public class JudgementSlopesTests
{
    private const int Numbers = 3;
    private static readonly double[] OneWay = [0.7, -1.1, 0.4, 1.3, -0.8];
    private static readonly double[] Another = [-0.3, 0.9, 1.2, 0.5, 1.6];

    private readonly Evidence evidence;
    private readonly Spread spread;
    private readonly Worker worker;

    public JudgementSlopesTests()
    {
        var unit = new SheetDraft()
            .Resistor("one", "a", "g", 10)
            .Resistor("two", "b", "g", 20)
            .Resistor("three", "c", "g", 30)
            .Element("insulation", "first", "a", "case", new { ohms = 1e9 })
            .Element("insulation", "second", "b", "case", new { ohms = 1e9 })
            .Reading("leak-a", "insulation-ohms", ["a", "case"])
            .Reading("one", "ohms", ["a", "g"])
            .Reading("two", "ohms", ["b", "g"])
            .Reading("three", "ohms", ["c", "g"])
            .Reading("leak-b", "insulation-ohms", ["b", "case"])
            .Unit();
        var plain = new Evidence(
            new ReadingLibrary(unit.Model),
            WireBench.Unit(
                unit,
                [
                    WireBench.OL(unit, "leak-a"),
                    WireBench.Value(unit, "one", 10.2),
                    WireBench.Value(unit, "two", 19.7),
                    WireBench.Value(unit, "three", 30.3),
                    WireBench.OL(unit, "leak-b"),
                ]
            ),
            1e-12
        );
        var count = unit.Model.Parameters.Length;
        double[] variances = [.. Enumerable.Range(0, count).Select(p => 1 + (0.5 * p))];
        double[] common = [.. Enumerable.Range(0, count).Select(p => 0.6 - (0.25 * p))];
        evidence = plain.On(
            new AssumedBench(
                null,
                1,
                variances,
                [common],
                [
                    [0, 0.5, 0.8, -0.4, 0],
                ],
                1
            )
        );
        double[] slopes = [.. Enumerable.Range(0, evidence.Set.Count * count).Select(n => (((n * 7) + 3) % 11 / 4.0) - 1.2)];
        spread = evidence.SpreadOf(slopes, [0.1, -0.2, 0.3, 0.05, 0]);
        worker = new Worker(evidence.Set);
    }

    /// <summary>Numbers within two limits of what was read; one leak a little above its range, one a little below.</summary>
    private double[] Place => [.. new[] { 0.8, 1.5, -1.2, 0.6, -1.1 }.Select((off, r) => evidence.Measured(r) + off)];

    private double Log(params (double[] Way, double By)[] moved) =>
        new Judge(evidence, spread, worker).LogLikelihood([.. Place.Select((v, r) => v + moved.Sum(m => m.By * m.Way[r]))]);

    [Fact]
    public void Gradient_and_curvature_are_those_of_the_log_likelihood()
    {
        using var judged = new Judge(evidence, spread, worker).At(Place);
        var (gradient, curvature) = (new double[2], new double[4]);
        judged.Project([OneWay, Another], gradient, curvature);
        const double step = 0.01;
        double[][] ways = [OneWay, Another];
        for (var k = 0; k < 2; k++)
        {
            Assert.Equal((Log((ways[k], step)) - Log((ways[k], -step))) / (2 * step), gradient[k], 2e-3);
            for (var j = 0; j < 2; j++)
            {
                double At(double a, double b) => Log((ways[k], a * step), (ways[j], b * step));
                var mixed = (At(1, 1) - At(1, -1) - At(-1, 1) + At(-1, -1)) / (4 * step * step);
                Assert.Equal(-mixed, curvature[(k * 2) + j], 0.01 * Math.Abs(mixed));
            }
        }
    }

    [Fact]
    public void The_slope_of_a_line_is_that_of_the_log_likelihood_along_it()
    {
        using var judged = new Judge(evidence, spread, worker).At(Place);
        const double step = 0.01;
        double[] low = [.. Place.Select((v, r) => v - OneWay[r])],
            high = [.. Place.Select((v, r) => v + OneWay[r])];
        var along = (Log((OneWay, 2 * step)) - Log((OneWay, -2 * step))) / (2 * step);
        Assert.Equal(along, judged.SlopeOfLine(low, high), 4e-3);
    }

    /// <summary>Of a normal law: the share of the line where it is highest is dᵀΣ⁻¹z/dᵀΣ⁻¹d, and that its curvature.</summary>
    [Fact]
    public void The_top_of_a_line_is_where_the_numbers_fit_best()
    {
        double[] low = [.. Place.Select((v, r) => v - (2 * OneWay[r]))],
            high = [.. Place.Select((v, r) => v + (3 * OneWay[r]))];
        var (sigma, d) = (Covariance(), Vector<double>.Build.Dense(Numbers, k => 5 * OneWay[evidence.Numeric[k]]));
        var curvature = d * sigma.Inverse() * d;
        var (share, found) = new Judge(evidence, spread, worker).TopOfLine(low, high);
        Assert.Equal(d * sigma.Inverse() * Residual(low) / curvature, share, 1e-9);
        Assert.InRange(share, 0.1, 0.9);
        Assert.Equal(curvature, found, 1e-9 * curvature);
        // Beyond an end it is the end; where no number moves, the middle of nothing.
        Assert.Equal(1, new Judge(evidence, spread, worker).TopOfLine(low, [.. low.Select((v, r) => v + (0.01 * OneWay[r]))]).Share);
        Assert.Equal((0.5, 0), new Judge(evidence, spread, worker).TopOfLine(low, [low[0] + 3, .. low[1..]]));
    }

    /// <summary>Mean PSᵀΣ⁻¹z with the prior P of what varies alone and together; deviation by each parameter's own variance.</summary>
    [Fact]
    public void Parameters_are_what_the_normal_law_makes_of_the_numbers()
    {
        using var judged = new Judge(evidence, spread, worker).At(Place);
        var (means, deviations) = judged.Parameters();
        var (slopes, inverse) = (Slopes(), Covariance().Inverse());
        var expected = Prior() * slopes.Transpose() * inverse * Residual(Place);
        for (var p = 0; p < means.Length; p++)
        {
            Assert.Equal(expected[p], means[p], 1e-9);
            var own = evidence.Bench.Variances[p];
            Assert.Equal(Math.Sqrt(own - (own * own * (slopes.Column(p) * inverse * slopes.Column(p)))), deviations[p], 1e-9);
        }
    }

    [Fact]
    public void What_readings_share_and_a_free_size_move_by_their_own_part_in_the_numbers()
    {
        using var judged = new Judge(evidence, spread, worker).At(Place);
        var pull = Covariance().Inverse() * Residual(Place);
        double Along(double[] way) => Enumerable.Range(0, Numbers).Sum(k => way[evidence.Numeric[k]] * pull[k]);
        Assert.Equal(Along(evidence.Bench.Shared[0]), judged.Common(evidence.Bench.Shared[0]), 1e-9);
        Assert.Equal(0.25 * 0.25 * Along(Another), judged.ShareMove(Another, 0.25), 1e-9);
    }

    /// <summary>The third number lies forty limits off: it is left out, and the others speak as if it had not been read.</summary>
    [Fact]
    public void What_is_left_out_says_nothing_of_sizes_or_parameters()
    {
        double[] far = [.. Place.Select((v, r) => r == 3 ? v - 40 : v)];
        using var judged = new Judge(evidence, spread, worker).At(far);
        Assert.Equal([3], judged.LeftOut().Where(r => r is > 0 and < 4));
        var inverse = Matrix<double>.Build.Dense(2, 2, (i, j) => Covariance()[i, j]).Inverse();
        var pull = inverse * Vector<double>.Build.Dense(2, k => Residual(far)[k]);
        var (gradient, curvature) = (new double[1], new double[1]);
        double[] numbersOnly = [0, .. OneWay[1..4], 0];
        judged.Project([numbersOnly], gradient, curvature);
        var d = Vector<double>.Build.Dense(2, k => OneWay[evidence.Numeric[k]]);
        Assert.Equal(d * pull, gradient[0], 1e-9);
        Assert.Equal(d * inverse * d, curvature[0], 1e-9);
        var two = Slopes().SubMatrix(0, 2, 0, Slopes().ColumnCount);
        var (means, deviations) = judged.Parameters();
        var expected = Prior() * two.Transpose() * pull;
        for (var p = 0; p < means.Length; p++)
        {
            Assert.Equal(expected[p], means[p], 1e-9);
            var own = evidence.Bench.Variances[p];
            Assert.Equal(Math.Sqrt(own - (own * own * (two.Column(p) * inverse * two.Column(p)))), deviations[p], 1e-9);
        }
    }

    private Matrix<double> Slopes() =>
        Matrix<double>.Build.Dense(
            Numbers,
            evidence.Bench.Variances.Length,
            (k, p) => spread.Slopes[(evidence.Numeric[k] * evidence.Bench.Variances.Length) + p]
        );

    private Matrix<double> Prior()
    {
        var common = Vector<double>.Build.Dense(evidence.Bench.Commons[0]);
        return Matrix<double>.Build.DenseOfDiagonalArray(evidence.Bench.Variances) + common.OuterProduct(common);
    }

    private Matrix<double> Covariance()
    {
        var shared = Vector<double>.Build.Dense(Numbers, k => evidence.Bench.Shared[0][evidence.Numeric[k]]);
        return (Slopes() * Prior() * Slopes().Transpose())
            + shared.OuterProduct(shared)
            + Matrix<double>.Build.DenseDiagonal(Numbers, Numbers, 1.0 / 3);
    }

    private Vector<double> Residual(double[] predicted) =>
        Vector<double>.Build.Dense(
            Numbers,
            k => evidence.Measured(evidence.Numeric[k]) - predicted[evidence.Numeric[k]] - spread.Shift[evidence.Numeric[k]]
        );
}
