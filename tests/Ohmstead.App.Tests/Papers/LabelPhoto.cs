using SkiaSharp;

namespace Ohmstead.App.Tests.Papers;

/// <summary>A picture of a label as a phone takes it: turned, with fewer dots, out of focus.</summary>
internal static class LabelPhoto
{
    private const int Side = 900;

    /// <summary>Gray dots of a square picture.</summary>
    /// <param name="tilt">How far its plane leans away from the camera: what is at the right edge of the picture is drawn smaller by this share, at the left edge larger.</param>
    public static (int Side, byte[] Gray) Of(byte[] png, int degrees, int blur, double tilt)
    {
        using var label = SKBitmap.Decode(png);
        using var photo = new SKBitmap(Side, Side, SKColorType.Gray8, SKAlphaType.Opaque);
        using (var canvas = new SKCanvas(photo))
        using (var image = SKImage.FromBitmap(label))
        using (var soft = new SKPaint { ImageFilter = SKImageFilter.CreateBlur(blur, blur) })
        {
            canvas.Clear(new SKColor(190, 190, 190));
            canvas.Translate(Side / 2f, Side / 2f);
            canvas.Concat(SKMatrix.Identity with { Persp0 = (float)(tilt / (Side / 2.0)) });
            canvas.RotateDegrees(degrees);
            canvas.Scale(0.52f);
            canvas.DrawImage(
                image,
                -label.Width / 2f,
                -label.Height / 2f,
                new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear),
                soft
            );
        }
        return (Side, photo.Bytes);
    }
}
