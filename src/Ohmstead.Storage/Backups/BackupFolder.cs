using System.Globalization;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Backups;

/// <summary>Where things are in a folder of backups: each backup's database in a folder named by its time, the photos of all of them once.</summary>
internal sealed class BackupFolder(string folder)
{
    private const string Part = ".part";

    public PhotoPlaces Photos { get; } = new(folder);

    /// <summary>The backups there, newest first, by name.</summary>
    public IReadOnlyList<string> Names() =>
        Directory.Exists(folder)
            ?
            [
                .. Directory
                    .GetDirectories(folder)
                    .Where(d =>
                        !d.EndsWith(Part, StringComparison.Ordinal) && File.Exists(Path.Combine(d, SqliteFile.Name))
                    )
                    .Select(d => Path.GetFileName(d)!)
                    .OrderDescending(StringComparer.Ordinal),
            ]
            : [];

    public string Of(string name) => Path.Combine(folder, name);

    public static string NameOf(DateTimeOffset at) =>
        at.UtcDateTime.ToString("yyyy-MM-dd'T'HH-mm-ss.fff'Z'", CultureInfo.InvariantCulture);

    /// <summary>A folder to make a backup in; it gets its name when it is whole.</summary>
    public string Begin(string name)
    {
        foreach (var leftover in Directory.GetDirectories(folder, "*" + Part))
            Directory.Delete(leftover, recursive: true);
        return Directory.CreateDirectory(Of(name) + Part).FullName;
    }

    public void Finish(string part, string name)
    {
        DurableFile.SyncFolder(part);
        Directory.Move(part, Of(name));
        DurableFile.SyncFolder(folder);
    }

    /// <summary>Removes all but the newest; their photos stay.</summary>
    public void Keep(int newest)
    {
        foreach (var old in Names().Skip(newest))
            Directory.Delete(Of(old), recursive: true);
    }
}
