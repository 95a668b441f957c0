using System.Globalization;

namespace Ohmstead.Workshop.Shops;

/// <summary>Sums of money as the shop's country writes them: "$22.00", "22.00 CHF".</summary>
public static class MoneyText
{
    /// <summary>What is charged, to the cent.</summary>
    public static string Exact(decimal sum, Shop shop) => With(sum.ToString("0.00", CultureInfo.InvariantCulture), shop);

    /// <summary>The same of a price that is kept as a floating number.</summary>
    public static string Exact(double sum, Shop shop) => With(sum.ToString("0.00", CultureInfo.InvariantCulture), shop);

    /// <summary>A forecast: whole money.</summary>
    public static string Whole(double sum, Shop shop) => With(Rounded(sum), shop);

    /// <summary>A forecast from and to: "$94–$106"; one sum where both round to the same.</summary>
    public static string Range(double low, double high, Shop shop) =>
        Rounded(low) == Rounded(high) ? Whole(low, shop)
        : Symbol(shop.Money).Length > 0 ? $"{Whole(low, shop)}–{Whole(high, shop)}"
        : With($"{Rounded(low)}–{Rounded(high)}", shop);

    private static string Rounded(double sum) => Math.Round(sum, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);

    private static string With(string sum, Shop shop) =>
        Symbol(shop.Money) is not { Length: > 0 } symbol ? $"{sum} {shop.Money}"
        : sum.StartsWith('-') ? $"−{symbol}{sum[1..]}"
        : symbol + sum;

    /// <summary>The sign that stands before a sum; empty for money that is named after it.</summary>
    private static string Symbol(string money) =>
        money switch
        {
            "USD" or "$" => "$",
            "EUR" or "€" => "€",
            "GBP" or "£" => "£",
            _ => "",
        };
}
