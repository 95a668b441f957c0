using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Papers;

/// <summary>The measures of a page. Lengths in points, 1/72 inch.</summary>
/// <param name="Width">Of the paper.</param>
/// <param name="Height">Of the paper.</param>
internal sealed record PageSize(double Width, double Height)
{
    /// <summary>Left and right of the text.</summary>
    public const double Margin = 46;

    /// <summary>Where the text begins.</summary>
    public const double Top = 38;

    /// <summary>Letter, 8.5 by 11 inches, or A4, 210 by 297 mm.</summary>
    /// <param name="paper"><see cref="Shop.Letter"/> or <see cref="Shop.A4"/>.</param>
    public static PageSize Of(string paper) => paper == Shop.A4 ? new(595.276, 841.89) : new(612, 792);

    /// <summary>The same paper on its side.</summary>
    public PageSize OnItsSide => new(Height, Width);

    /// <summary>Where the text ends: the foot stands below.</summary>
    public double Bottom => Height - 50;

    /// <summary>Width of the text.</summary>
    public double TextWidth => Width - (2 * Margin);

    /// <summary>Height of the text.</summary>
    public double TextHeight => Bottom - Top;
}
