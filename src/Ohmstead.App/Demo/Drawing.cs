using SkiaSharp;

namespace Ohmstead.App.Demo;

/// <summary>A photo of the demo, drawn: a bench top with something on it. The same every time.</summary>
internal sealed class Drawing(SKCanvas canvas)
{
    /// <summary>Size of a picture [pixels].</summary>
    public const int Width = 1200,
        Height = 900;

    private const int Quality = 86;

    /// <summary>Draws and encodes.</summary>
    public static byte[] Jpeg(Action<Drawing> draw)
    {
        using var surface = SKSurface.Create(new SKImageInfo(Width, Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        var drawing = new Drawing(surface.Canvas);
        drawing.BenchTop();
        draw(drawing);
        using var picture = surface.Snapshot();
        using var jpeg = picture.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return jpeg.ToArray();
    }

    /// <summary>A shape with light from above.</summary>
    public void Fill(SKPath path, uint top, uint bottom) => Lit(path.Bounds, top, bottom, paint => canvas.DrawPath(path, paint));

    /// <summary>A rounded box.</summary>
    public void Box(float left, float top, float width, float height, float round, uint above, uint below)
    {
        var box = new SKRect(left, top, left + width, top + height);
        Lit(box, above, below, paint => canvas.DrawRoundRect(box, round, round, paint));
    }

    /// <summary>A disc.</summary>
    public void Disc(float x, float y, float radius, uint above, uint below) =>
        Lit(new SKRect(x - radius, y - radius, x + radius, y + radius), above, below, paint => canvas.DrawCircle(x, y, radius, paint));

    /// <summary>A line with round ends.</summary>
    public void Line(float x1, float y1, float x2, float y2, float width, uint colour)
    {
        using var paint = Pen(width, colour);
        canvas.DrawLine(x1, y1, x2, y2, paint);
    }

    /// <summary>Any curve.</summary>
    public void Stroke(SKPath path, float width, uint colour)
    {
        using var paint = Pen(width, colour);
        canvas.DrawPath(path, paint);
    }

    /// <summary>A soft shadow on the bench.</summary>
    public void Shadow(float left, float top, float width, float height)
    {
        using var blur = SKMaskFilter.CreateBlur(SKBlurStyle.Normal, 22);
        using var paint = new SKPaint
        {
            Color = Colour(0x88201408),
            MaskFilter = blur,
            IsAntialias = true,
        };
        canvas.DrawRoundRect(new SKRect(left, top, left + width, top + height), 40, 40, paint);
    }

    /// <summary>A binding post of brass, seen from the front.</summary>
    public void Post(float x, float y)
    {
        Disc(x, y + 4, 26, 0xFF1A1512, 0xFF1A1512);
        Disc(x, y, 24, 0xFFF3D58B, 0xFF8A6420);
        Disc(x, y, 12, 0xFFB98D3C, 0xFFF0D28A);
        Line(x - 8, y, x + 8, y, 4, 0xFF5A4116);
    }

    /// <summary>A bent shape from text, as in a picture file.</summary>
    public static SKPath Path(string text) => SKPath.ParseSvgPathData(text);

    private void BenchTop()
    {
        Box(0, 0, Width, Height, 0, 0xFFB58D5E, 0xFF8A6238);
        for (var n = 0; n < 60; n++)
        {
            var y = (n * 15) + (6 * MathF.Sin(n * 1.7f));
            using var grain = Path(FormattableString.Invariant($"M0 {y:0} C300 {y + (9 * MathF.Sin(n)):0} 800 {y - 11:0} 1200 {y + 5:0}"));
            Stroke(grain, 1 + (n % 3), n % 4 == 0 ? 0x30301804u : 0x16FFE0B0u);
        }
        Line(0, 610, Width, 614, 5, 0x40281404);
    }

    private static void Lit(SKRect bounds, uint top, uint bottom, Action<SKPaint> draw)
    {
        using var shader = SKShader.CreateLinearGradient(
            new SKPoint(bounds.Left, bounds.Top),
            new SKPoint(bounds.Left, bounds.Bottom),
            [Colour(top), Colour(bottom)],
            SKShaderTileMode.Clamp
        );
        using var paint = new SKPaint { Shader = shader, IsAntialias = true };
        draw(paint);
    }

    private static SKPaint Pen(float width, uint colour) =>
        new()
        {
            Style = SKPaintStyle.Stroke,
            StrokeWidth = width,
            StrokeCap = SKStrokeCap.Round,
            StrokeJoin = SKStrokeJoin.Round,
            Color = Colour(colour),
            IsAntialias = true,
        };

    private static SKColor Colour(uint argb) => new(argb);
}
