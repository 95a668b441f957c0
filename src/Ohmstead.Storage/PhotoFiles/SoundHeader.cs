using System.Text;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>Recordings that phones make, told by the first bytes of their file; they are kept beside the photos, byte for byte as they came.</summary>
internal static class SoundHeader
{
    private const int HeadBytes = 12;

    /// <summary>Brands of an ISO media file that hold pictures, not sound.</summary>
    private static readonly string[] PictureBrands = ["heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis"];

    /// <summary>The kinds of recording that are kept.</summary>
    public static IReadOnlyList<(string MediaType, string Extension)> Kinds { get; } =
    [
        ("audio/wav", ".wav"),
        ("audio/mp4", ".m4a"),
        ("audio/webm", ".webm"),
        ("audio/ogg", ".ogg"),
        ("audio/mpeg", ".mp3"),
        ("audio/aac", ".aac"),
        ("audio/flac", ".flac"),
        ("audio/x-caf", ".caf"),
        ("audio/amr", ".amr"),
    ];

    /// <summary>Which kind of recording a file is; null for none. The stream is back where it was.</summary>
    public static (string MediaType, string Extension)? Read(Stream file)
    {
        var (head, from) = (new byte[HeadBytes], file.Position);
        var count = file.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false);
        file.Position = from;
        return count < HeadBytes ? null
            : Of(Encoding.Latin1.GetString(head)) is { Length: > 0 } type ? Kinds.First(k => k.MediaType == type)
            : null;
    }

    private static string Of(string head) =>
        head[..4] switch
        {
            "RIFF" when head[8..12] == "WAVE" => "audio/wav",
            "OggS" => "audio/ogg",
            "fLaC" => "audio/flac",
            "caff" => "audio/x-caf",
            "\u001aE\u00df\u00a3" => "audio/webm",
            "#!AM" => "audio/amr",
            _ when head[4..8] == "ftyp" && !PictureBrands.Contains(head[8..12]) => "audio/mp4",
            // A frame begins with eleven bits set; two of the next say whether it is MPEG audio in layers, or AAC.
            _ when head[0] == '\u00ff' && (head[1] & 0xf6) == 0xf0 => "audio/aac",
            _ when head[..3] == "ID3" || (head[0] == '\u00ff' && (head[1] & 0xe0) == 0xe0 && (head[1] & 0x06) != 0) => "audio/mpeg",
            _ => "",
        };
}
