using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>The measures and inks of a page. Lengths in points, 1/72 inch.</summary>
/// <param name="Width">Of the paper.</param>
/// <param name="Height">Of the paper.</param>
internal sealed record Sheet(double Width, double Height)
{
    /// <summary>Letter, 8.5 by 11 inches.</summary>
    public static Sheet Letter { get; } = new(612, 792);

    /// <summary>A4, 210 by 297 mm.</summary>
    public static Sheet A4 { get; } = new(595.276, 841.89);

    /// <summary>The same paper on its side.</summary>
    public Sheet OnItsSide => new(Height, Width);

    /// <summary>Left and right of the text.</summary>
    public double Margin { get; } = 46;

    /// <summary>Where the text begins.</summary>
    public double Top { get; } = 38;

    /// <summary>Where it ends: the foot stands below.</summary>
    public double Bottom => Height - 50;

    /// <summary>Width of the text.</summary>
    public double Measure => Width - (2 * Margin);

    public static XColor Ink { get; } = XColor.FromArgb(0x23, 0x26, 0x2b);

    public static XColor Soft { get; } = XColor.FromArgb(0x5b, 0x5f, 0x66);

    public static XColor Line { get; } = XColor.FromArgb(0xc9, 0xbf, 0xae);

    public static XColor Faint { get; } = XColor.FromArgb(0xf4, 0xef, 0xe6);

    public static XColor Copper { get; } = XColor.FromArgb(0x9a, 0x4a, 0x1c);

    public static XColor Stop { get; } = XColor.FromArgb(0xa3, 0x26, 0x1d);

    public static XColor Look { get; } = XColor.FromArgb(0x8a, 0x5a, 0x00);

    public static XColor Good { get; } = XColor.FromArgb(0x1f, 0x6b, 0x4f);
}
