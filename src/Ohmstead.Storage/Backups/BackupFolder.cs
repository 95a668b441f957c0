using System.Globalization;
using System.Security.Cryptography;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Backups;

/// <summary>Where things are in a folder of backups: each backup's database in a folder named by its time, the photos of all of them once.</summary>
internal sealed class BackupFolder(string folder)
{
    /// <summary>So many that were proved are never removed, however few are asked for.</summary>
    public const int LeastProved = 3;

    private const string Part = ".part";

    public PhotoPlaces Photos { get; } = new(folder);

    /// <summary>The backups there, the one that holds most first; one whose manifest cannot be read comes last.</summary>
    public IReadOnlyList<string> Names() =>
        Directory.Exists(folder)
            ?
            [
                .. Directory
                    .GetDirectories(folder)
                    .Where(d => !d.EndsWith(Part, StringComparison.Ordinal) && File.Exists(Path.Combine(d, SqliteFile.Name)))
                    .Select(d => Path.GetFileName(d)!)
                    .OrderDescending(StringComparer.Ordinal)
                    .OrderByDescending(Manifest),
            ]
            : [];

    public string Of(string name) => Path.Combine(folder, name);

    public string Database(string name) => Path.Combine(Of(name), SqliteFile.Name);

    /// <summary>What stands beside a backup's database; null when it cannot be read.</summary>
    public BackupManifest? Manifest(string name) => BackupManifest.Read(Path.Combine(Of(name), BackupManifest.Name), []);

    /// <summary>A name for a backup of now that no other has.</summary>
    public string NameOf(DateTimeOffset at)
    {
        while (true)
        {
            var name = at.UtcDateTime.ToString("yyyy-MM-dd'T'HH-mm-ss.fff'Z'", CultureInfo.InvariantCulture);
            if (!Directory.Exists(Of(name)))
                return name;
            at = at.AddMilliseconds(1);
        }
    }

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

    /// <summary>
    /// Removes all but those that hold most, the one just made, and as many as it takes to have three that were proved; their photos
    /// stay.
    /// </summary>
    public async Task KeepAsync(int most, string justMade, CancellationToken cancel)
    {
        var (kept, proved) = (0, 0);
        foreach (var name in Names())
        {
            if (kept >= most && proved >= LeastProved && name != justMade)
            {
                Directory.Delete(Of(name), recursive: true);
                continue;
            }
            kept++;
            if (proved < LeastProved && await IsProvedAsync(name, cancel))
                proved++;
        }
    }

    /// <summary>True when the database is the one that was written, and was found sound then or is now.</summary>
    private async Task<bool> IsProvedAsync(string name, CancellationToken cancel)
    {
        if (Manifest(name) is not { } manifest)
            return false;
        await using (var bytes = File.OpenRead(Database(name)))
            if (Convert.ToHexStringLower(await SHA256.HashDataAsync(bytes, cancel)) != manifest.Sha256)
                return false;
        return manifest.IsChecked || (await SoundCopy.FaultsAsync(Database(name), cancel)).Count == 0;
    }
}
