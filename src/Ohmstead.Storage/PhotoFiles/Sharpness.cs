using SkiaSharp;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>Whether a photo is sharp and bright enough to read wires on it.</summary>
internal static class Sharpness
{
    /// <summary>Longer side of the picture that is judged: a wire is then some pixels wide [pixels].</summary>
    private const int SidePixels = 800;

    private const int Tiles = 6;

    /// <summary>Below this variance of the Laplacian no tile holds a sharp edge (key pech-pacheco; limit found on drawn photos).</summary>
    private const double LeastVariance = 60;

    private const double Dark = 35;
    private const double Bright = 235;

    /// <summary>What is wrong with the photo, in words; empty when nothing is.</summary>
    public static string Judge(string path)
    {
        if (Thumbnail.Make(path, SidePixels) is not { } jpeg || SKBitmap.Decode(jpeg) is not { } picture)
            return "it cannot be drawn";
        using (picture)
        {
            var (luma, width, height) = Luma(picture);
            var mean = luma.Average(v => (double)v);
            if (mean < Dark)
                return "too dark: more light, and take it again";
            if (mean > Bright)
                return "too bright: less light, and take it again";
            return Sharpest(luma, width, height) < LeastVariance ? "blurred: take it again" : "";
        }
    }

    private static (float[] Luma, int Width, int Height) Luma(SKBitmap picture)
    {
        var luma = new float[picture.Width * picture.Height];
        var pixels = picture.Pixels;
        for (var n = 0; n < luma.Length; n++)
            luma[n] = (0.299f * pixels[n].Red) + (0.587f * pixels[n].Green) + (0.114f * pixels[n].Blue);
        return (luma, picture.Width, picture.Height);
    }

    /// <summary>The greatest variance of the Laplacian among the tiles: the bench around the unit may well be out of focus.</summary>
    private static double Sharpest(float[] luma, int width, int height)
    {
        var most = 0.0;
        for (var ty = 0; ty < Tiles; ty++)
        for (var tx = 0; tx < Tiles; tx++)
        {
            var (sum, squares, count) = (0.0, 0.0, 0);
            for (var y = Math.Max(1, ty * height / Tiles); y < Math.Min(height - 1, (ty + 1) * height / Tiles); y++)
            for (var x = Math.Max(1, tx * width / Tiles); x < Math.Min(width - 1, (tx + 1) * width / Tiles); x++)
            {
                var at = (y * width) + x;
                var l = luma[at - 1] + luma[at + 1] + luma[at - width] + luma[at + width] - (4 * luma[at]);
                (sum, squares, count) = (sum + l, squares + (l * l), count + 1);
            }
            if (count > 0)
                most = Math.Max(most, (squares / count) - (sum / count * (sum / count)));
        }
        return most;
    }
}
