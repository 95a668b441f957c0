using Ohmstead.Workshop.Papers;
using PdfSharp.Drawing;
using SkiaSharp;

namespace Ohmstead.App.Papers;

/// <summary>A label as dots, 600 to the inch, black and white.</summary>
internal static class LabelPng
{
    private const float DotsPerPoint = 600 / 72f;

    /// <summary>Sets the label and writes it.</summary>
    public static byte[] Write(Label label)
    {
        using var bitmap = new SKBitmap(
            (int)Math.Round(LabelLayout.Wide * DotsPerPoint),
            (int)Math.Round(LabelLayout.High * DotsPerPoint),
            SKColorType.Gray8,
            SKAlphaType.Opaque
        );
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale(DotsPerPoint);
        using (var surface = new Surface(canvas))
            LabelLayout.Set(surface, label);
        canvas.Flush();
        using var image = SKImage.FromBitmap(bitmap);
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    private sealed class Surface(SKCanvas canvas) : ILabelSurface, IDisposable
    {
        private readonly SKPaint black = new() { Color = SKColors.Black, IsAntialias = false };
        private readonly SKPaint white = new() { Color = SKColors.White, IsAntialias = true };
        private readonly SKPaint ink = new() { Color = SKColors.Black, IsAntialias = true };

        public void Box(double x, double y, double width, double height) =>
            canvas.DrawRect((float)x, (float)y, (float)width, (float)height, black);

        public void Text(string words, double x, double y, TextStyle style)
        {
            using var font = new SKFont(Typeface.Get().Pixels(style.IsBold), (float)style.Points)
            {
                Subpixel = true,
                Hinting = SKFontHinting.None,
                LinearMetrics = true,
            };
            canvas.DrawText(words, (float)x, (float)y, SKTextAlign.Left, font, style.Ink == XColors.White ? white : ink);
        }

        public void Dispose()
        {
            foreach (var one in (IDisposable[])[black, white, ink])
                one.Dispose();
        }
    }
}
