using System.Globalization;

namespace Ohmstead.Storage;

/// <summary>Copies of the database that the tool makes by itself before it changes the tables.</summary>
internal static class OwnCopies
{
    public const string FolderName = "copies";

    /// <summary>Three steps back are enough; older states belong into a backup.</summary>
    private const int Kept = 3;

    /// <summary>True when there is a copy.</summary>
    public static bool Any(string folder) =>
        Path.Combine(folder, FolderName) is var copies && Directory.Exists(copies) && Directory.EnumerateFiles(copies, "*.db").Any();

    public static void Make(string folder, string path, DateTimeOffset at)
    {
        var copies = Directory.CreateDirectory(Path.Combine(folder, FolderName)).FullName;
        var name = at.UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff'Z'", CultureInfo.InvariantCulture) + ".db";
        var part = Path.Combine(copies, name + ".part");
        File.Delete(part);
        SqliteFile.Copy(path, part);
        File.Move(part, Path.Combine(copies, name), overwrite: true);
        foreach (var old in Directory.GetFiles(copies, "*.db").OrderDescending(StringComparer.Ordinal).Skip(Kept))
            File.Delete(old);
    }
}
