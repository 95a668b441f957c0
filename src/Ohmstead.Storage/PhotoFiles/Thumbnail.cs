using SkiaSharp;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>A small picture for lists.</summary>
internal static class Thumbnail
{
    /// <summary>The longer side [pixels].</summary>
    public const int SidePixels = 320;

    /// <summary>The longer side of one for paper: 300 points wide at 240 dots an inch [pixels].</summary>
    public const int PrintPixels = 1000;

    private const int Quality = 80;

    /// <summary>Makes the small JPEG; null when the picture cannot be drawn, not even in part.</summary>
    public static byte[]? Make(string path, int sidePixels = SidePixels)
    {
        using var codec = SKCodec.Create(path);
        if (codec is null)
            return null;
        // The decoder skips what is not needed: an eighth of the side is an eighth of the work and a sixty-fourth of the memory.
        var scale = Math.Min(1f, (float)sidePixels / Math.Max(codec.Info.Width, codec.Info.Height));
        var size = codec.GetScaledDimensions(Math.Min(1f, scale * 1.5f));
        using var stored = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        if (
            codec.GetPixels(stored.Info, stored.GetPixels())
            is not (SKCodecResult.Success or SKCodecResult.IncompleteInput or SKCodecResult.ErrorInInput)
        )
            return null;
        return Encode(stored, codec.EncodedOrigin, sidePixels);
    }

    private static byte[]? Encode(SKBitmap stored, SKEncodedOrigin origin, int sidePixels)
    {
        var factor = Math.Min(1f, (float)sidePixels / Math.Max(stored.Width, stored.Height));
        var (width, height) = (Math.Max(1, (int)MathF.Round(stored.Width * factor)), Math.Max(1, (int)MathF.Round(stored.Height * factor)));
        using var small = stored.Resize(new SKSizeI(width, height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        if (small is null)
            return null;
        var swaps = Upright.Swaps(origin);
        using var surface = SKSurface.Create(
            new SKImageInfo(swaps ? height : width, swaps ? width : height, SKColorType.Rgba8888, SKAlphaType.Opaque)
        );
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.SetMatrix(Upright.Turn(origin, width, height));
        surface.Canvas.DrawBitmap(small, 0, 0, SKSamplingOptions.Default);
        using var picture = surface.Snapshot();
        using var jpeg = picture.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return jpeg?.ToArray();
    }
}
