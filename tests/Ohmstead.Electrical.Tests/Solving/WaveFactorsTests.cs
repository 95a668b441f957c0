using Ohmstead.Electrical.Solving;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Equations with a positive definite symmetric part are solved as by any other method, whatever their number.</summary>
public class WaveFactorsTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(64)]
    [InlineData(137)]
    public void What_comes_out_fits_the_equations(int size)
    {
        var random = new Random(size);
        // One, a part that is antisymmetric and as large as it likes, and B·Bᵀ.
        var (turn, b) = (Drawn(), Drawn());
        var matrix = new double[size * size];
        for (var i = 0; i < size; i++)
        for (var j = 0; j < size; j++)
        {
            var sum = (i == j ? 1 : 0) + (10 * (turn[(i * size) + j] - turn[(j * size) + i]));
            for (var k = 0; k < size; k++)
                sum += b[(i * size) + k] * b[(j * size) + k];
            matrix[(i * size) + j] = sum;
        }
        var factors = new WaveFactors();
        // What a larger matrix left behind must not be felt.
        factors.Begin(150);
        for (var i = 0; i < 150; i++)
            factors.Row(i).Fill(7);
        factors.Begin(size);
        for (var i = 0; i < size; i++)
            matrix.AsSpan(i * size, size).CopyTo(factors.Row(i));
        factors.Factor();
        double[] wanted = [.. Enumerable.Range(0, size).Select(n => Math.Sin(n + 1))];
        double[] x = [.. Enumerable.Range(0, size).Select(i => Enumerable.Range(0, size).Sum(j => matrix[(i * size) + j] * wanted[j]))];
        factors.Solve(x);
        Assert.All(Enumerable.Range(0, size), n => Assert.Equal(wanted[n], x[n], 1e-9));

        double[] Drawn() => [.. Enumerable.Range(0, size * size).Select(_ => random.NextDouble() - 0.5)];
    }
}
