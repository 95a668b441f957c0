using System.Globalization;
using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>Sets the photos of a paper, each read once.</summary>
/// <param name="photos">The photos by hash.</param>
internal sealed class PhotoLayout(IReadOnlyDictionary<string, byte[]> photos) : IDisposable
{
    private readonly Dictionary<string, XImage?> images = new(StringComparer.Ordinal);
    private readonly Typeface type = Typeface.Get();

    /// <summary>Photos, two beside each other, each over its words.</summary>
    public IEnumerable<Fragment> Set(Photos block, double width, TextLayout text)
    {
        const double gutter = 18;
        var column = (width - gutter) / 2;
        var small = new TextStyle(text.PointsOf(Size.Small), false, Inks.Soft);
        return block
            .Items.Select(p =>
                Fragment.Stack([Frame(p, column, column * 0.75), Fragment.Space(3), .. text.Paragraph(p.Caption, column, small)])
            )
            .Chunk(2)
            .SelectMany(row => new[] { Fragment.Beside(row.Select((cell, n) => (n * (column + gutter), cell))), Fragment.Space(12) });
    }

    /// <summary>The photo fitted into a frame, with its pins; a missing one is said to be missing.</summary>
    public Fragment Frame(Photo photo, double width, double height)
    {
        if (Find(photo.Hash) is not { } image)
            return Missing(width, height);
        var scale = Math.Min(width / image.PixelWidth, height / image.PixelHeight);
        var (wide, high) = (image.PixelWidth * scale, image.PixelHeight * scale);
        return new Fragment(
            high,
            (page, x, y) =>
            {
                // Upright photos stand at the left of their column, over their words.
                page.DrawImage(image, x, y, wide, high);
                page.DrawRectangle(new XPen(Inks.Line, 0.5), x, y, wide, high);
                for (var n = 0; n < photo.Pins.Length; n++)
                    Pin(page, x + (photo.Pins[n].X * wide), y + (photo.Pins[n].Y * high), n + 1);
            }
        );
    }

    private Fragment Missing(double width, double height) =>
        new(
            height,
            (page, x, y) =>
            {
                page.DrawRectangle(new XPen(Inks.Line, 0.8) { DashStyle = XDashStyle.Dash }, x, y, width, height);
                type.DrawCentered(page, "Photo missing", x + (width / 2), y + (height / 2) + 3, new(9.5, false, Inks.Soft));
            }
        );

    private void Pin(XGraphics page, double x, double y, int number)
    {
        page.DrawEllipse(new XPen(XColors.White, 1), new XSolidBrush(Inks.Copper), x - 8, y - 8, 16, 16);
        type.DrawCentered(page, number.ToString(CultureInfo.InvariantCulture), x, y + 3.3, new(9.5, true, XColors.White));
    }

    private XImage? Find(string hash)
    {
        if (images.TryGetValue(hash, out var known))
            return known;
        var read = photos.TryGetValue(hash, out var bytes) ? XImage.FromStream(new MemoryStream(bytes)) : null;
        images[hash] = read;
        return read;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var image in images.Values)
            image?.Dispose();
    }
}
