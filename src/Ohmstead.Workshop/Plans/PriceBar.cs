namespace Ohmstead.Workshop.Plans;

/// <summary>The price as a bar: where its ends and the line above which the shop asks lie, from left to right.</summary>
/// <param name="Low">Place of the sum that half of such jobs stay below.</param>
/// <param name="High">Place of the sum that nine of ten stay below.</param>
/// <param name="Ask">Place of the line above which the shop asks.</param>
public sealed record PriceBar(double Low, double High, double Ask)
{
    /// <summary>How wide it is drawn.</summary>
    public const double Width = 360;

    /// <summary>What is kept free at both ends, for the words under the bar.</summary>
    private const double Edge = 80;

    /// <summary>The bar of a price.</summary>
    public static PriceBar Of(PlanPrice price)
    {
        var ask = (double)price.AskAbove;
        var (least, most) = (Math.Min(price.Low, ask), Math.Max(price.High, ask));
        double At(double sum) => most > least ? Edge + ((Width - (2 * Edge)) * (sum - least) / (most - least)) : Width / 2;
        return new(At(price.Low), At(price.High), At(ask));
    }
}
