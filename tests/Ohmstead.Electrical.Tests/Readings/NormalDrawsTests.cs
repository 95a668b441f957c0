using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The evenly drawn columns behind the bands (key mckay): each is the whole law, and no two are the same.</summary>
public class NormalDrawsTests
{
    private const int Columns = 60;

    [Fact]
    public void A_column_takes_the_middle_of_every_stratum_once()
    {
        for (var c = 0; c < Columns; c++)
        {
            var shares = NormalDraws.OfParameter(c).ToArray().Select(z => Normal.CDF(0, 1, z) * NormalDraws.Count).Order().ToArray();
            for (var n = 0; n < shares.Length; n++)
                Assert.Equal(n + 0.5, shares[n], 0.01);
        }
    }

    [Fact]
    public void A_column_of_sizes_is_even_on_0_to_1()
    {
        var sizes = NormalDraws.OfSize(1).ToArray().Order().ToArray();
        for (var n = 0; n < sizes.Length; n++)
            Assert.Equal((n + 0.5) / NormalDraws.Count, sizes[n], 1e-12);
    }

    /// <remarks>Independent columns have a correlation of deviation 1/√8192 = 0.011; five of them are more than chance gives.</remarks>
    [Fact]
    public void No_two_columns_go_together()
    {
        double[][] columns =
        [
            .. Enumerable.Range(0, Columns).Select(c => NormalDraws.OfParameter(c).ToArray()),
            NormalDraws.OfSize(0).ToArray(),
            NormalDraws.OfSize(1).ToArray(),
        ];
        for (var a = 0; a < columns.Length; a++)
        for (var b = 0; b < a; b++)
        {
            Assert.InRange(Correlation.Pearson(columns[a], columns[b]), -0.055, 0.055);
            Assert.InRange(Correlation.Pearson(columns[a].Select(Math.Abs), columns[b].Select(Math.Abs)), -0.055, 0.055);
        }
    }
}
