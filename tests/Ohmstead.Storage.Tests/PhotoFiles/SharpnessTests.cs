using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Workshop.Job;
using SkiaSharp;

namespace Ohmstead.Storage.Tests.PhotoFiles;

/// <summary>A drawn picture of wires, sharp, out of focus, in the dark and in glaring light.</summary>
public sealed class SharpnessTests : IDisposable
{
    private readonly string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".jpg");

    [Theory]
    [InlineData(0, 1, "")]
    [InlineData(1, 1, "")]
    [InlineData(12, 1, "blurred")]
    [InlineData(40, 1, "blurred")]
    [InlineData(0, 0.12, "too dark")]
    [InlineData(0, 6, "too bright")]
    public void What_cannot_be_read_is_said(float blurPixels, float light, string says)
    {
        Draw(blurPixels, light);
        Assert.StartsWith(says, Sharpness.Judge(file), StringComparison.Ordinal);
        Assert.Equal(says.Length == 0, Sharpness.Judge(file).Length == 0);
    }

    [Fact]
    public void What_is_no_picture_is_said_too()
    {
        File.WriteAllText(file, "no picture");
        Assert.NotEmpty(Sharpness.Judge(file));
    }

    /// <summary>Twelve megapixels, as a phone takes them; blur and light as its lens and its sensor make them.</summary>
    private void Draw(float blurPixels, float light)
    {
        using var surface = SKSurface.Create(new SKImageInfo(4000, 3000));
        using var paint = new SKPaint
        {
            IsAntialias = true,
            StrokeWidth = 26,
            Style = SKPaintStyle.Stroke,
        };
        using var blur = SKImageFilter.CreateBlur(blurPixels, blurPixels);
        using var lit = SKColorFilter.CreateColorMatrix([light, 0, 0, 0, 0, 0, light, 0, 0, 0, 0, 0, light, 0, 0, 0, 0, 0, 1, 0]);
        using var layer = new SKPaint { ImageFilter = blurPixels > 0 ? blur : null, ColorFilter = lit };
        surface.Canvas.SaveLayer(layer);
        surface.Canvas.Clear(new SKColor(150, 140, 120));
        var dice = new Random(5);
        for (var n = 0; n < 40; n++)
        {
            paint.Color = new SKColor((uint)dice.Next() | 0xff000000);
            surface.Canvas.DrawLine(dice.Next(4000), dice.Next(3000), dice.Next(4000), dice.Next(3000), paint);
        }
        surface.Canvas.Restore();
        using var picture = surface.Snapshot();
        using var jpeg = picture.Encode(SKEncodedImageFormat.Jpeg, 90);
        File.WriteAllBytes(file, jpeg.ToArray());
    }

    public void Dispose() => File.Delete(file);
}
