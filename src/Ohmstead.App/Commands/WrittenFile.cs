using Ohmstead.Storage;

namespace Ohmstead.App.Commands;

/// <summary>A file that a verb writes: whole or not at all. What lay there before stays until the new one is whole.</summary>
internal static class WrittenFile
{
    /// <exception cref="RefusedInput">No file can be written there.</exception>
    /// <exception cref="StoreUnusable">The disk did not take it.</exception>
    public static void Write(string path, byte[] bytes)
    {
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
            throw new RefusedInput("ohmstead: the name of a file is empty; give a path");
        var part = $"{path}.{Guid.NewGuid():N}.part";
        try
        {
            if (IsBeyondFiles(path))
            {
                File.WriteAllBytes(path, bytes);
                return;
            }
            File.WriteAllBytes(part, bytes);
            File.Move(part, path, overwrite: true);
        }
        catch (IOException e) when (BrokenDisk.Words(e) is { } words)
        {
            throw new StoreUnusable($"{path} is not written: {words}", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusedInput($"{path}: $: cannot be written; give a path in a folder that is there and open to you");
        }
        finally
        {
            if (File.Exists(part))
                File.Delete(part);
        }
    }

    /// <summary>A device, a pipe or a link is written into and never replaced. A file without a byte may be one, and has nothing to lose.</summary>
    private static bool IsBeyondFiles(string path) =>
        new FileInfo(path) is { Exists: true } there && (there.LinkTarget is not null || there.Length == 0);
}
