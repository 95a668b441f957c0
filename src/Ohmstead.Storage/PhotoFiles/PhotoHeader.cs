using System.Globalization;
using SkiaSharp;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>What the head of an image file says of it; the picture itself is not decoded.</summary>
/// <param name="Extension">The file's ending, with its point.</param>
/// <param name="Turn">How the camera was held, 1 to 8 as Exif counts.</param>
/// <param name="Refused">Why it is not taken, in words; empty when it is.</param>
internal sealed record PhotoHeader(string MediaType, string Extension, int WidthPixels, int HeightPixels, int Turn, string Refused)
{
    /// <summary>Beyond any camera; a small file can claim more and would fill the memory when drawn.</summary>
    private const int MostPixelsASide = 20_000;

    private const long MostPixels = 120_000_000;

    /// <summary>The kinds of image that are kept.</summary>
    public static IReadOnlyList<(SKEncodedImageFormat Format, string MediaType, string Extension)> Kinds { get; } =
    [
        (SKEncodedImageFormat.Jpeg, "image/jpeg", ".jpg"),
        (SKEncodedImageFormat.Png, "image/png", ".png"),
        (SKEncodedImageFormat.Webp, "image/webp", ".webp"),
    ];

    /// <summary>Every kind of file that is kept, by its media type and its ending.</summary>
    public static IReadOnlyList<(string MediaType, string Extension)> Files { get; } =
    [.. Kinds.Select(k => (k.MediaType, k.Extension)), .. SoundHeader.Kinds];

    /// <summary>It is a recording and no picture: it has no pixels, and is kept byte for byte.</summary>
    public bool IsSound => WidthPixels == 0 && Refused.Length == 0;

    /// <summary>Reads the head of an image or a recording; sizes are those of the picture held upright.</summary>
    public static PhotoHeader Read(Stream image)
    {
        if (SoundHeader.Read(image) is var (soundType, soundEnding))
            return new PhotoHeader(soundType, soundEnding, 0, 0, 1, "");
        using var codec = SKCodec.Create(image);
        if (codec is null)
            return Refuse("this is not a picture Ohmstead can take. Use JPEG, PNG or WebP");
        var kind = Kinds.FirstOrDefault(k => k.Format == codec.EncodedFormat);
        if (kind.MediaType is null)
            return Refuse($"this is a {codec.EncodedFormat.ToString().ToUpperInvariant()} picture. Use JPEG, PNG or WebP");
        var (width, height) = Upright.Swaps(codec.EncodedOrigin)
            ? (codec.Info.Height, codec.Info.Width)
            : (codec.Info.Width, codec.Info.Height);
        if (width < 1 || height < 1 || width > MostPixelsASide || height > MostPixelsASide || (long)width * height > MostPixels)
            return Refuse(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"this picture is {width} × {height} pixels. At most {MostPixelsASide} a side and {MostPixels / 1_000_000} million in all fit"
                )
            );
        return new PhotoHeader(kind.MediaType, kind.Extension, width, height, (int)codec.EncodedOrigin, "");
    }

    private static PhotoHeader Refuse(string why) => new("", "", 0, 0, 1, why);
}
