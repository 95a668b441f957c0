using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;

namespace Ohmstead.App.Papers;

/// <summary>The photos of a paper, each read once.</summary>
internal sealed class Pictures(IReadOnlyDictionary<string, byte[]> photos) : IDisposable
{
    private readonly Dictionary<string, XImage?> images = new(StringComparer.Ordinal);

    /// <summary>The photo fitted into a frame, with its pins; a missing one is said to be missing.</summary>
    public Piece Frame(Photo photo, double width, double height)
    {
        if (Find(photo.Hash) is not { } image)
            return new Piece(
                height,
                (page, x, y) =>
                {
                    page.DrawRectangle(new XPen(Sheet.Line, 0.8) { DashStyle = XDashStyle.Dash }, x, y, width, height);
                    const string words = "Photo missing";
                    var type = Typeface.Get();
                    type.Draw(
                        page,
                        words,
                        x + ((width - type.WidthOf(words, 9.5, false)) / 2),
                        y + (height / 2) + 3,
                        9.5,
                        false,
                        Sheet.Soft
                    );
                }
            );
        var scale = Math.Min(width / image.PixelWidth, height / image.PixelHeight);
        var (wide, high) = (image.PixelWidth * scale, image.PixelHeight * scale);
        return new Piece(
            high,
            (page, x, y) =>
            {
                // Upright photos stand at the left of their column, over their words.
                page.DrawImage(image, x, y, wide, high);
                page.DrawRectangle(new XPen(Sheet.Line, 0.5), x, y, wide, high);
                for (var n = 0; n < photo.Pins.Length; n++)
                    Pin(page, x + (photo.Pins[n].X * wide), y + (photo.Pins[n].Y * high), n + 1);
            }
        );
    }

    private static void Pin(XGraphics page, double x, double y, int number)
    {
        var words = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        page.DrawEllipse(new XPen(XColors.White, 1), new XSolidBrush(Sheet.Copper), x - 8, y - 8, 16, 16);
        var type = Typeface.Get();
        type.Draw(page, words, x - (type.WidthOf(words, 9.5, true) / 2), y + 3.3, 9.5, true, XColors.White);
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
