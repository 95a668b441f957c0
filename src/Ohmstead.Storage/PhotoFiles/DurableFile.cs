using System.Runtime.InteropServices;

namespace Ohmstead.Storage.PhotoFiles;

/// <summary>Files that are either there whole and on the disk, or not there.</summary>
internal static class DurableFile
{
    /// <summary>Moves a written and flushed file into its place at once, and has the folder written too.</summary>
    public static void Place(string from, string to)
    {
        var folder = Path.GetDirectoryName(to)!;
        if (!Directory.Exists(folder))
        {
            Directory.CreateDirectory(folder);
            SyncFolder(Path.GetDirectoryName(folder)!);
        }
        File.Move(from, to, overwrite: true);
        SyncFolder(folder);
    }

    /// <summary>
    /// The name of a new file is in its folder, and the folder is written later than the file unless it is asked for. Windows
    /// has no such call for folders and writes the name with the file.
    /// </summary>
    public static void SyncFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            return;
        var opened = Open(folder, 0);
        if (opened < 0)
            return;
        _ = Sync(opened);
        _ = Close(opened);
    }

    [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Sync(int file);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int file);
}
