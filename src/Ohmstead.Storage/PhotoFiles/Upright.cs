using SkiaSharp;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>Cameras turn the picture in its description, not in its pixels; here it is turned for good.</summary>
internal static class Upright
{
    /// <summary>True when width and height change places.</summary>
    public static bool Swaps(SKEncodedOrigin origin) =>
        origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;

    /// <summary>Where a pixel of the stored picture lies in the upright one.</summary>
    /// <param name="width">Width of the stored picture [pixels].</param>
    /// <param name="height">Height of the stored picture [pixels].</param>
    public static SKMatrix Turn(SKEncodedOrigin origin, float width, float height) =>
        origin switch
        {
            SKEncodedOrigin.TopRight => Matrix(-1, 0, width, 0, 1, 0),
            SKEncodedOrigin.BottomRight => Matrix(-1, 0, width, 0, -1, height),
            SKEncodedOrigin.BottomLeft => Matrix(1, 0, 0, 0, -1, height),
            SKEncodedOrigin.LeftTop => Matrix(0, 1, 0, 1, 0, 0),
            SKEncodedOrigin.RightTop => Matrix(0, -1, height, 1, 0, 0),
            SKEncodedOrigin.RightBottom => Matrix(0, -1, height, -1, 0, width),
            SKEncodedOrigin.LeftBottom => Matrix(0, 1, 0, -1, 0, width),
            _ => SKMatrix.Identity,
        };

    private static SKMatrix Matrix(float xx, float xy, float x, float yx, float yy, float y) => new(xx, xy, x, yx, yy, y, 0, 0, 1);
}
