using Ohmstead.Workshop.Papers;
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
            (int)Math.Round(LabelSetter.Wide * DotsPerPoint),
            (int)Math.Round(LabelSetter.High * DotsPerPoint),
            SKColorType.Gray8,
            SKAlphaType.Opaque
        );
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale(DotsPerPoint);
        using (var surface = new Surface(canvas))
            LabelSetter.Set(surface, label);
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
        private readonly SKTypeface regular = Face("paper-regular");
        private readonly SKTypeface bold = Face("paper-bold");

        public void Box(double x, double y, double width, double height) =>
            canvas.DrawRect((float)x, (float)y, (float)width, (float)height, black);

        public void Text(string words, double x, double y, double points, bool isBold, bool isWhite)
        {
            using var font = new SKFont(isBold ? bold : regular, (float)points)
            {
                Subpixel = true,
                Hinting = SKFontHinting.None,
                LinearMetrics = true,
            };
            canvas.DrawText(words, (float)x, (float)y, SKTextAlign.Left, font, isWhite ? white : ink);
        }

        public void Dispose()
        {
            foreach (var one in (IDisposable[])[black, white, ink, regular, bold])
                one.Dispose();
        }

        private static SKTypeface Face(string name)
        {
            using var file = SKData.CreateCopy(Typeface.Get().GetFont(name)!);
            return SKTypeface.FromData(file);
        }
    }
}
