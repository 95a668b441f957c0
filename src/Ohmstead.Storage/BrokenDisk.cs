namespace Ohmstead.Storage;

/// <summary>A disk that does not take or give what it should, in words for the person at the bench.</summary>
public static class BrokenDisk
{
    // What the systems call it: errno where it comes from Unix, the same as a Windows result.
    private const int InputOutput = 5,
        Again = 11,
        AgainOnMac = 35,
        FileTooLarge = 27,
        NoSpace = 28,
        ReadOnlyDisk = 30,
        Quota = 122;
    private const int WindowsWriteProtect = unchecked((int)0x80070013),
        WindowsSharing = unchecked((int)0x80070020),
        WindowsLock = unchecked((int)0x80070021),
        WindowsHandleFull = unchecked((int)0x80070027),
        WindowsDiskFull = unchecked((int)0x80070070);

    /// <summary>What a failure of reading or writing a file means; null when it is none that has words.</summary>
    public static string? Words(Exception broken) =>
        broken switch
        {
            UnauthorizedAccessException => "Ohmstead may not write there. Look at the permissions of the folder",
            IOException { HResult: NoSpace or WindowsDiskFull or WindowsHandleFull } => "the disk is full. Free some space on it",
            IOException { HResult: Quota or FileTooLarge } => "the disk takes no more from this account. Free some space on it",
            IOException { HResult: ReadOnlyDisk or WindowsWriteProtect } =>
                "the disk is write-protected. Take the protection off, or use another disk",
            IOException { HResult: InputOutput } => $"the disk does not read or write ({broken.Message})",
            _ => null,
        };

    /// <summary>True when another program has the file.</summary>
    internal static bool IsInUse(IOException broken) => broken.HResult is Again or AgainOnMac or WindowsSharing or WindowsLock;

    /// <summary>Does some work with files; what the disk refuses is told with the place.</summary>
    /// <param name="place">Where it was tried.</param>
    /// <exception cref="StoreUnusable">The disk did not take it.</exception>
    internal static async Task<T> InWordsAsync<T>(string place, Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception broken) when (Words(broken) is { } words)
        {
            throw new StoreUnusable($"{place}: {words}", broken);
        }
    }
}
