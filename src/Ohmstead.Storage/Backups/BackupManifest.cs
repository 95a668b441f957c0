using System.Globalization;
using System.Text;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Storage.Backups;

/// <summary>What stands beside the database of a backup. The photos that belong to it are in the database.</summary>
/// <param name="Bytes">Size of the database [bytes].</param>
/// <param name="At">When it was made, by the clock of that day.</param>
/// <param name="Sha256">Hash of the database file, lower-case hexadecimal.</param>
/// <param name="Documents">Versions of sheets and settings.</param>
/// <param name="LastAt">When the newest entry was made; null when there is none.</param>
/// <param name="IsChecked">True when the copy was found sound before it was kept.</param>
internal sealed record BackupManifest(
    DateTimeOffset At,
    long Bytes,
    string Sha256,
    int Units,
    int Entries,
    int Documents,
    int Photos,
    DateTimeOffset? LastAt,
    bool IsChecked,
    IReadOnlyList<string> MissingPhotos
) : IComparable<BackupManifest>
{
    public const string Mark = "backup/1";
    public const string Name = "manifest.json";

    /// <summary>The more it holds, the greater: what is in a workshop only grows, while a clock may be wrong for a day.</summary>
    public int CompareTo(BackupManifest? other) =>
        other is null ? 1 : (Entries, Documents, Photos, At).CompareTo((other.Entries, other.Documents, other.Photos, other.At));

    public string Text() =>
        JsonSerializer.Serialize(
            new
            {
                ohmstead = Mark,
                at = At.UtcDateTime.ToString("O", CultureInfo.InvariantCulture),
                database = new
                {
                    file = SqliteFile.Name,
                    bytes = Bytes,
                    sha256 = Sha256,
                },
                units = Units,
                entries = Entries,
                documents = Documents,
                photos = Photos,
                lastEntryAt = LastAt?.UtcDateTime.ToString("O", CultureInfo.InvariantCulture),
                isChecked = IsChecked,
                missingPhotos = MissingPhotos,
            },
            TypeSheetFile.Indented
        ) + "\n";

    /// <summary>Reads a manifest; problems are named with the file.</summary>
    public static BackupManifest? Read(string path, List<Problem> problems)
    {
        if (!File.Exists(path))
        {
            problems.Add(new Problem(path, "is missing", "a folder made by ohmstead backup is expected"));
            return null;
        }
        var own = new List<Problem>();
        if (JsonCursor.TryOpen(File.ReadAllText(path, Encoding.UTF8), own, out var root) && Read(root) is { } manifest && own.Count == 0)
            return manifest;
        problems.AddRange(own.Select(p => p with { Path = $"{path}: {p.Path}" }));
        return null;
    }

    private static DateTimeOffset? Time(JsonCursor root) =>
        DateTimeOffset.TryParse(root.Word("lastEntryAt", ""), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at)
            ? at
            : null;

    private static BackupManifest? Read(JsonCursor root)
    {
        if (root.Word("ohmstead") is var mark && mark.Length > 0 && mark != Mark)
            root.Report("ohmstead", $"is \"{mark}\"", $"\"{Mark}\" is expected");
        if (!DateTimeOffset.TryParse(root.Word("at"), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at))
            root.Report("at", "is no time", "a time is expected");
        if (!root.Has("database"))
        {
            root.Report("database", "is missing", "file, bytes and sha256 of the database are required");
            return null;
        }
        var database = root.At("database");
        return new BackupManifest(
            at,
            (long)database.Number("bytes", 0, 1e15),
            database.Word("sha256"),
            (int)root.Number("units", 0, 1e9),
            (int)root.Number("entries", 0, 1e9),
            (int)root.Number("documents", 0, 0, 1e9),
            (int)root.Number("photos", 0, 1e9),
            Time(root),
            root.Has("isChecked") && root.Flag("isChecked"),
            root.Words("missingPhotos")
        );
    }
}
