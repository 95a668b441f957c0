using System.Globalization;

namespace Ohmstead.Storage;

/// <summary>One program at a time on a data folder. The system lets go of it when the program ends, however it ends.</summary>
internal sealed class FolderLock : IDisposable
{
    private const string Name = "ohmstead.lock";

    /// <summary>Who has it, in a file of its own: the locked one cannot be read by others.</summary>
    private const string HolderName = "ohmstead.process";
    private readonly FileStream file;

    private FolderLock(FileStream file) => this.file = file;

    /// <exception cref="StoreUnusable">Another program has the folder.</exception>
    public static FolderLock Take(string folder)
    {
        var path = Path.Combine(folder, Name);
        try
        {
            var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            File.WriteAllText(
                Path.Combine(folder, HolderName),
                Environment.ProcessId.ToString(CultureInfo.InvariantCulture)
            );
            return new FolderLock(file);
        }
        catch (IOException taken)
        {
            throw new StoreUnusable(
                $"{folder} is in use by another ohmstead{Holder(folder)}; close that one, or name another folder with --data",
                taken
            );
        }
        catch (UnauthorizedAccessException refused)
        {
            throw new StoreUnusable(
                $"{folder} cannot be written to; look at the permissions of the folder, or name another with --data",
                refused
            );
        }
    }

    public void Dispose() => file.Dispose();

    private static string Holder(string folder)
    {
        var path = Path.Combine(folder, HolderName);
        return File.Exists(path) ? $" (process {File.ReadAllText(path)})" : "";
    }
}
