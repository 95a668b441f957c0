using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>The pieces into which free sizes are cut: the same chance each, all of the range, no two the same.</summary>
public class SizeCellTests
{
    /// <summary>12, 5², 3³ and 2⁴ pieces; from five free sizes on one.</summary>
    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(1, 12, 12)]
    [InlineData(2, 25, 5)]
    [InlineData(3, 27, 3)]
    [InlineData(4, 16, 2)]
    [InlineData(5, 1, 1)]
    [InlineData(7, 1, 1)]
    public void All_combinations_of_the_parts_of_each_range_stand_once(int free, int cells, int cuts)
    {
        var all = SizeCell.For(free);
        Assert.Equal(cells, all.Length);
        Assert.All(all, c => Assert.Equal((free, 1.0 / cuts), (c.Shares.Length, c.Width)));
        Assert.Equal(cells, all.Select(c => string.Join(' ', c.Shares)).Distinct().Count());
        for (var f = 0; f < free; f++)
            Assert.Equal(
                Enumerable.Range(0, cuts).Select(k => Math.Round((k + 0.5) / cuts, 12)),
                all.Select(c => Math.Round(c.Shares[f], 12)).Distinct().Order()
            );
    }

    [Fact]
    public void A_size_that_was_given_stays_and_free_ones_take_their_shares_in_turn()
    {
        var catalogue = new BenchUnit(Reference.Twin160).Catalogue;
        var (worn, resistive, open) = (
            catalogue.Find("roller-left:worn")!,
            catalogue.Find("w-5:resistive")!,
            catalogue.Find("pilot:open")!
        );
        var sized = SizeCell.At([new(worn, null), new(open, null), new(resistive, 2), new(resistive, null)], [0, 1]);
        Assert.Equal([worn.Min, 0, 2, resistive.Max], sized.Select(f => Math.Round(f.Size, 9)));
        Assert.Equal([worn, open, resistive, resistive], sized.Select(f => f.Mode));
    }
}
