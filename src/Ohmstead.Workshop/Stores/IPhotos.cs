namespace Ohmstead.Workshop.Stores;

/// <summary>Photos as files named by their hash.</summary>
public interface IPhotos
{
    /// <summary>
    /// Keeps a photo: written and synced before this returns. What the camera wrote beside the picture (place, device) is taken out
    /// first; the hash is of what is kept.
    /// </summary>
    /// <param name="mostBytes">More than this is refused [bytes].</param>
    /// <param name="name">The hash that entries know it by already: a photo from before, which keeps it; null for a new photo.</param>
    Task<PhotoKept> KeepAsync(Stream photo, long mostBytes, DateTimeOffset at, CancellationToken cancel, string? name = null);

    /// <summary>Keeps a recording beside the photos, byte for byte as it came: written and synced before this returns.</summary>
    /// <param name="mostBytes">More than this is refused [bytes].</param>
    Task<PhotoKept> KeepRecordingAsync(Stream recording, long mostBytes, DateTimeOffset at, CancellationToken cancel);

    /// <summary>The photo or recording as it is kept, or null.</summary>
    Task<PhotoFile?> OpenAsync(string hash, CancellationToken cancel);

    /// <summary>A small JPEG of it, turned upright, made once; or null.</summary>
    Task<PhotoFile?> OpenThumbnailAsync(string hash, CancellationToken cancel);

    /// <summary>What keeps wires from being read on it: "blurred: take it again"; empty when nothing does, or it is not there.</summary>
    Task<string> JudgeAsync(string hash, CancellationToken cancel);

    /// <summary>A JPEG of it as large as paper needs, turned upright, made anew; or null.</summary>
    Task<PhotoFile?> OpenPrintAsync(string hash, CancellationToken cancel);
}

/// <summary>What became of a photo.</summary>
/// <param name="Hash">SHA-256 of what is kept, lower-case hexadecimal; empty when refused.</param>
/// <param name="Refused">Why it was refused, in words; empty when kept.</param>
public sealed record PhotoKept(string Hash, string Refused, int WidthPixels, int HeightPixels);

/// <summary>An open photo; the reader closes it.</summary>
public sealed record PhotoFile(Stream Content, string MediaType);
