using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>Where photos lie in a data folder or a backup: <c>photos/ab/ab12….jpg</c>.</summary>
internal sealed class PhotoPlaces(string folder)
{
    /// <summary>Photos on their way in; whatever is left here when the tool starts was never acknowledged.</summary>
    public string Incoming { get; } = Path.Combine(folder, "photos", "incoming");

    /// <summary>True when a photo is kept in a data folder.</summary>
    public static bool Any(string folder) =>
        Path.Combine(folder, "photos") is var photos
        && Directory.Exists(photos)
        && Directory
            .EnumerateFiles(photos, "*", SearchOption.AllDirectories)
            .Any(f => PhotoHash.IsOne(Path.GetFileNameWithoutExtension(f)));

    public string File(string hash, string extension) => Path.Combine(folder, "photos", hash[..2], hash + extension);

    public string Thumbnail(string hash) => Path.Combine(folder, "thumbnails", hash[..2], hash + ".jpg");

    /// <summary>The photo's file and its kind, or null when there is none.</summary>
    public (string Path, string MediaType)? Find(string hash)
    {
        if (!PhotoHash.IsOne(hash))
            return null;
        foreach (var (mediaType, extension) in PhotoHeader.Files)
            if (File(hash, extension) is var path && System.IO.File.Exists(path))
                return (path, mediaType);
        return null;
    }
}
