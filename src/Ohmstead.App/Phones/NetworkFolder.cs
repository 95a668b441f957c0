namespace Ohmstead.App.Phones;

/// <summary>
/// What belongs to this machine on the network, beside the workshop: its certificate with its key, and which devices are let in. Files
/// that nobody but the owner may read; without a folder (tests, the invented workshop) it lives as long as the program.
/// </summary>
/// <param name="folder">The data folder; null for none.</param>
internal sealed class NetworkFolder(string? folder)
{
    private const string Name = "network";
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>The bytes of a file; null where it is not there.</summary>
    public byte[]? Read(string file) => PathOf(file) is { } path && File.Exists(path) ? File.ReadAllBytes(path) : null;

    /// <summary>Writes a file whole or not at all. On Windows the folder of the user keeps others out.</summary>
    public void Write(string file, byte[] bytes)
    {
        if (PathOf(file) is not { } path)
            return;
        var folderOf = Path.GetDirectoryName(path)!;
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folderOf);
        else
            Directory.CreateDirectory(folderOf, OwnerOnly | UnixFileMode.UserExecute);
        var part = path + ".part";
        File.Delete(part);
        var how = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            how.UnixCreateMode = OwnerOnly;
        using (var stream = new FileStream(part, how))
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }
        File.Move(part, path, overwrite: true);
    }

    private string? PathOf(string file) => folder is null ? null : Path.Combine(folder, Name, file);
}
