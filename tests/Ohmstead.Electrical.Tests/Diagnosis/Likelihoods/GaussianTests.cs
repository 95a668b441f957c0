using MathNet.Numerics.LinearAlgebra;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis.Likelihoods;

/// <summary>
/// Four readings that vary together, any of which may be wrong altogether: against the sum over all sixteen choices of right and wrong, and
/// against the normal law by Math.NET.
/// </summary>
public class GaussianTests
{
    private const int N = 4;
    private const double Chance = 1e-3;

    private static readonly Matrix<double> Sigma = Matrix<double>.Build.DenseOfArray(
        new[,]
        {
            { 1.5, 0.7, 0.2, 0.1 },
            { 0.7, 2.0, -0.4, 0.3 },
            { 0.2, -0.4, 1.1, 0.5 },
            { 0.1, 0.3, 0.5, 0.9 },
        }
    );

    /// <summary>On a meter of ± 0.5 V, so that a slip of the point or the sign lies a hundred limits off and more.</summary>
    private static readonly WrongReadings Wrong = new(
        [
            (60, new MeterError(0, 0.5, 0, 0)),
            (80, new MeterError(0, 0.5, 0, 0)),
            (100, new MeterError(0, 0.5, 0, 0)),
            (90, new MeterError(0, 0.5, 0, 0)),
        ],
        Chance
    );

    private static Gaussian Law => new(Sigma.ToRowMajorArray(), N);

    [Theory]
    [InlineData(0.4, -0.3, 0.8, 0.1, "")]
    [InlineData(0.4, -0.3, 30, 0.1, "2")]
    [InlineData(-25, -0.3, 0.8, 40, "0 3")]
    [InlineData(-25, 60, 33, 0.2, "0 1 2")]
    // Next to the threshold both count: right and wrong.
    [InlineData(0.2, 0.1, 5.2, 2.4, null)]
    [InlineData(0.2, 0.1, 5.6, 2.4, null)]
    public void The_density_is_the_sum_over_right_and_wrong(double a, double b, double c, double d, string? left)
    {
        double[] z = [a, b, c, d];
        var sum = 0.0;
        for (var set = 0; set < 1 << N; set++)
        {
            int[] kept = [.. Enumerable.Range(0, N).Where(k => (set >> k & 1) == 0)];
            sum += Math.Pow(Chance * 0.5 / 300, N - kept.Length) * Density(z, kept);
        }
        var work = new RobustWork();
        Assert.Equal(Math.Log(sum), Law.RobustLog(z, Wrong, work), left is null ? 0.05 : 0.002);
        if (left is not null)
            Assert.Equal(left, string.Join(' ', Enumerable.Range(0, N).Where(k => work.Dropped[k])));
        // The same scratch serves the next one.
        Assert.Equal(Math.Log(Density([0, 0, 0, 0], [0, 1, 2, 3])), Law.RobustLog([0, 0, 0, 0], Wrong, work), 0.002);
        Assert.DoesNotContain(true, work.Dropped);
    }

    /// <summary>What is left weighs and holds as if the others had not been read.</summary>
    [Fact]
    public void Precision_and_weights_are_those_of_the_readings_that_are_kept()
    {
        double[] z = [-25, -0.3, 0.8, 40];
        var (law, work) = (Law, new RobustWork());
        law.RobustLog(z, Wrong, work);
        var inverse = Part([1, 2]).Inverse();
        var precision = work.PrecisionOr(law.Precision);
        for (var i = 0; i < N; i++)
        for (var j = 0; j < N; j++)
            Assert.Equal(i is 1 or 2 && j is 1 or 2 ? inverse[i - 1, j - 1] : 0, precision[(i * N) + j], 1e-9);
        var pull = inverse * Vector<double>.Build.Dense([z[1], z[2]]);
        double[] expected = [0, pull[0], pull[1], 0];
        Assert.All(Enumerable.Range(0, N), k => Assert.Equal(expected[k], work.U[k], 1e-9));
        // Nothing was changed in the law itself.
        Assert.Equal(Sigma.Inverse()[0, 0], law.Precision[0], 1e-9);
        Assert.Equal(Math.Log(Sigma.Determinant()), law.LogDeterminant, 1e-9);
    }

    /// <summary>The last beside the second and the third, the first left out: z − Σ₁₂Σ₂₂⁻¹z₂, of variance Σ₁₁ − Σ₁₂Σ₂₂⁻¹Σ₂₁.</summary>
    [Theory]
    [InlineData(3, 1, 2)]
    [InlineData(1, 2, 3)]
    public void A_reading_beside_others_is_what_these_leave_of_it(int which, int first, int second)
    {
        double[] z = [9, -0.6, 1.4, 2.2];
        int[] others = [first, second];
        var between = Vector<double>.Build.Dense(2, k => Sigma[which, others[k]]);
        var inverse = Part(others).Inverse();
        var (off, precision) = Law.Beside(which, z, [true, false, false, which == 1 ? false : which == 3]);
        Assert.Equal(z[which] - (between * inverse * Vector<double>.Build.Dense(2, k => z[others[k]])), off, 1e-9);
        Assert.Equal(1 / (Sigma[which, which] - (between * inverse * between)), precision, 1e-9);
    }

    /// <summary>Scratch that served two readings serves four, and two again.</summary>
    [Fact]
    public void The_same_scratch_serves_more_readings_and_fewer()
    {
        var work = new RobustWork();
        var small = new Gaussian(Part([0, 1]).ToRowMajorArray(), 2);
        double Two(double a, double b) => small.RobustLog([a, b], Wrong, work);
        double Four() => Law.RobustLog([-25, -0.3, 0.8, 40], Wrong, work);
        var (two, four) = (Two(-25, 0.3), new Gaussian(Sigma.ToRowMajorArray(), N).RobustLog([-25, -0.3, 0.8, 40], Wrong, new()));
        Assert.Equal([true, false], work.Dropped[..2]);
        Assert.Equal(four, Four(), 1e-12);
        Assert.Equal([true, false, false, true], work.Dropped[..4]);
        Assert.Equal(two, Two(-25, 0.3), 1e-12);
        Assert.Equal(1 / Sigma[1, 1], work.PrecisionOr(small.Precision)[3], 1e-9);
    }

    private static Matrix<double> Part(int[] kept) =>
        Matrix<double>.Build.Dense(kept.Length, kept.Length, (i, j) => Sigma[kept[i], kept[j]]);

    private static double Density(double[] z, int[] kept)
    {
        if (kept.Length == 0)
            return 1;
        var (part, off) = (Part(kept), Vector<double>.Build.Dense(kept.Length, k => z[kept[k]]));
        return Math.Exp(-0.5 * (off * part.Inverse() * off)) / Math.Sqrt(Math.Pow(2 * Math.PI, kept.Length) * part.Determinant());
    }
}
