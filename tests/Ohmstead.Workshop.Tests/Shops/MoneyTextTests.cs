using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Tests.Shops;

/// <summary>Money as its country writes it. Common usage, no source.</summary>
public class MoneyTextTests
{
    [Theory]
    [InlineData("USD", "$22.00", "$23", "$79–$106")]
    [InlineData("$", "$22.00", "$23", "$79–$106")]
    [InlineData("€", "€22.00", "€23", "€79–€106")]
    [InlineData("GBP", "£22.00", "£23", "£79–£106")]
    [InlineData("CHF", "22.00 CHF", "23 CHF", "79–106 CHF")]
    public void Sums_are_written_with_their_sign(string money, string exact, string whole, string range)
    {
        var shop = Shop.Usual with { Money = money };
        Assert.Equal(exact, MoneyText.Exact(22m, shop));
        Assert.Equal(exact, MoneyText.Exact(22.0, shop));
        Assert.Equal(whole, MoneyText.Whole(22.5, shop));
        Assert.Equal(range, MoneyText.Range(79.4, 105.6, shop));
    }

    [Fact]
    public void A_range_of_one_sum_is_that_sum_and_a_debt_has_its_sign_first()
    {
        Assert.Equal("$79", MoneyText.Range(78.6, 79.4, Shop.Usual));
        Assert.Equal("−$3.50", MoneyText.Exact(-3.5m, Shop.Usual));
    }
}
