using System.Globalization;
using Ohmstead.Storage.PhotoFiles;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.Zips;

/// <summary>What may stand in a zip, by name. Nothing is ever unpacked under a name from a zip; what has another name is refused.</summary>
internal static class ZipNames
{
    /// <summary>The mark of the format, in the field <c>ohmstead</c> of the table of contents.</summary>
    public const string Mark = "export/1";

    public const string Contents = "ohmstead.json";

    public static string Unit(Guid id) => $"units/{id:D}.json";

    public static string Document(int number) => string.Create(CultureInfo.InvariantCulture, $"documents/{number:D3}.json");

    public static string Photo(string hash, string mediaType) =>
        $"photos/{hash}{PhotoHeader.Files.First(k => k.MediaType == mediaType).Extension}";

    /// <summary>Why a name is refused; empty when it is one of ours.</summary>
    public static string Refused(string name)
    {
        if (name is Contents or "units/" or "documents/" or "photos/")
            return "";
        if (name.Split('/', '\\').Contains(".."))
            return "climbs out of the folder";
        if (name.StartsWith('/') || name.StartsWith('\\') || name.Contains(':', StringComparison.Ordinal))
            return "is an absolute path";
        var (folder, file) = name.Split('/') is [var first, var second] ? (first, second) : ("", "");
        var (stem, ending) = (Path.GetFileNameWithoutExtension(file), Path.GetExtension(file));
        return folder switch
        {
            "units" when ending == ".json" && Guid.TryParseExact(stem, "D", out _) => "",
            "documents" when ending == ".json" && stem.Length is > 0 and < 9 && stem.All(char.IsAsciiDigit) => "",
            "photos" when PhotoHash.IsOne(stem) && PhotoHeader.Files.Any(k => k.Extension == ending) => "",
            _ => "is no file of a workshop",
        };
    }
}
