using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Sums over spans, of every length around the width of the machine's vectors, against the sums written out.</summary>
public class VectorsTests
{
    public static TheoryData<int> Lengths => [.. Enumerable.Range(0, 20)];

    [Theory]
    [MemberData(nameof(Lengths))]
    public void A_product_and_a_sum_take_every_place_once(int length)
    {
        var (a, b) = (Row(length, 3), Row(length + 2, 5));
        Assert.Equal(a.Select((x, n) => x * b[n]).Sum(), Vectors.Dot(a, b), 1e-12);
        var sum = (double[])a.Clone();
        Vectors.AddScaled(sum, b, -0.7);
        Assert.Equal(a.Select((x, n) => x - (0.7 * b[n])), sum.Select(x => x), (x, y) => Math.Abs(x - y) < 1e-12);
    }

    /// <summary>ln(e¹ + e² + e³) = 3.4076 (closed form); far outside the range of exp as well.</summary>
    [Fact]
    public void The_logarithm_of_a_sum_holds_for_any_size()
    {
        var expected = Math.Log(Math.Exp(1) + Math.Exp(2) + Math.Exp(3));
        Assert.Equal(expected, Vectors.LogSum([1, 3, 2]), 1e-12);
        Assert.Equal(expected - 5000, Vectors.LogSum([-4999, -4998, -4997]), 1e-9);
        Assert.Equal(expected + 5000, Vectors.LogSum([5001, 5002, 5003]), 1e-9);
        Assert.Equal(2, Vectors.LogSum([2, double.NegativeInfinity]), 1e-12);
        Assert.Equal(double.NegativeInfinity, Vectors.LogSum([double.NegativeInfinity, double.NegativeInfinity]));
        Assert.Equal(double.NegativeInfinity, Vectors.LogSum([]));
    }

    private static double[] Row(int length, int seed)
    {
        var dice = new Random(seed);
        return [.. Enumerable.Range(0, length).Select(_ => dice.NextDouble() - 0.5)];
    }
}
