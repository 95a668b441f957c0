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

    /// <param name="instead">What else the person can do, as a sentence.</param>
    /// <exception cref="StoreUnusable">Another program has the folder, or it cannot be written to.</exception>
    public static FolderLock Take(string folder, string instead)
    {
        try
        {
            var file = new FileStream(Path.Combine(folder, Name), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            SayWho(folder);
            return new FolderLock(file);
        }
        catch (IOException taken) when (BrokenDisk.IsInUse(taken))
        {
            throw new StoreUnusable($"{folder} is in use by another ohmstead{Holder(folder)}. Close that one. {instead}", taken);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnusable($"{folder}: {BrokenDisk.Words(refused) ?? refused.Message}. {instead}", refused);
        }
    }

    public void Dispose() => file.Dispose();

    /// <summary>A courtesy to whoever comes second; a disk that has no room for it is told of when it matters.</summary>
    private static void SayWho(string folder)
    {
        try
        {
            File.WriteAllText(Path.Combine(folder, HolderName), Environment.ProcessId.ToString(CultureInfo.InvariantCulture));
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return;
        }
    }

    private static string Holder(string folder)
    {
        try
        {
            return $" (process {File.ReadAllText(Path.Combine(folder, HolderName))})";
        }
        catch (Exception unknown) when (unknown is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }
}
