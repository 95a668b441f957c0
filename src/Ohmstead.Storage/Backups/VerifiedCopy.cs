using System.Security.Cryptography;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Backups;

/// <summary>Copies that are looked at on the way.</summary>
internal static class VerifiedCopy
{
    /// <summary>Copies a file and writes it through to the disk; it is in its place only when its bytes have the hash.</summary>
    public static async Task<bool> MakeAsync(string from, string to, string sha256, CancellationToken cancel)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        var part = to + ".part";
        string hash;
        await using (var source = File.OpenRead(from))
        await using (var target = new FileStream(part, FileMode.Create, FileAccess.Write))
        {
            using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            var bytes = new byte[1 << 17];
            while (await source.ReadAsync(bytes, cancel) is var count and > 0)
            {
                sha.AppendData(bytes, 0, count);
                await target.WriteAsync(bytes.AsMemory(0, count), cancel);
            }
            target.Flush(flushToDisk: true);
            hash = Convert.ToHexStringLower(sha.GetHashAndReset());
        }
        if (hash == sha256)
            DurableFile.Place(part, to);
        else
            File.Delete(part);
        return hash == sha256;
    }
}
