using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Storage.PhotoFiles;

namespace Ohmstead.Storage.Zips;

/// <summary>The files of a zip that somebody sent, read with every size counted and every name looked at; nothing is unpacked to the disk.</summary>
internal sealed class ZipReader : IDisposable
{
    /// <summary>Small files may be packed as tightly as they like.</summary>
    private const long FreeBytes = 1_000_000;

    private readonly ZipArchive zip;
    private readonly ZipLimits limits;
    private readonly List<Problem> problems;
    private readonly Dictionary<string, ZipArchiveEntry> files = new(StringComparer.Ordinal);

    private ZipReader(ZipArchive zip, ZipLimits limits, List<Problem> problems) =>
        (this.zip, this.limits, this.problems) = (zip, limits, problems);

    /// <summary>The names of the files below a folder, in the zip's order.</summary>
    public IEnumerable<string> Below(string folder) =>
        files.Keys.Where(n => n.StartsWith(folder + "/", StringComparison.Ordinal) && !n.EndsWith('/'));

    public bool Has(string name) => files.ContainsKey(name);

    /// <summary>Opens a zip and looks at its names and sizes; null when it is none.</summary>
    public static ZipReader? Open(Stream from, ZipLimits limits, List<Problem> problems)
    {
        try
        {
            var reader = new ZipReader(new ZipArchive(from, ZipArchiveMode.Read, leaveOpen: true), limits, problems);
            reader.Look(from.Length);
            return reader;
        }
        catch (InvalidDataException)
        {
            problems.Add(new Problem("the zip", "is no zip, or a damaged one", "a zip written by ohmstead export is expected"));
            return null;
        }
    }

    /// <summary>A text of the zip; empty, with a problem reported, when it cannot be read.</summary>
    public async Task<string> TextAsync(string name, CancellationToken cancel)
    {
        if (await BytesAsync(name, limits.MostTextBytes, cancel) is not { } bytes)
            return "";
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            problems.Add(new Problem(name, "is not UTF-8 text", "JSON in UTF-8 is expected"));
            return "";
        }
    }

    /// <summary>SHA-256 of a file's bytes, hexadecimal; of a file that could be read.</summary>
    public async Task<string> HashAsync(string name, CancellationToken cancel) =>
        Convert.ToHexStringLower(SHA256.HashData(await BytesAsync(name, limits.MostTextBytes, cancel) ?? []));

    /// <summary>A photo of the zip, once its bytes are those that were written; null, with a problem reported, when it is not.</summary>
    public async Task<byte[]?> PhotoAsync(ZipPhoto photo, CancellationToken cancel)
    {
        var name = photo.Name;
        if (await BytesAsync(name, limits.MostPhotoBytes, cancel) is not { } bytes)
            return null;
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        if (hash != photo.FileHash)
            problems.Add(
                new Problem(name, $"holds other bytes than it should: their SHA-256 is {hash}", "the photo is damaged or was exchanged")
            );
        using var content = new MemoryStream(bytes);
        var header = PhotoHeader.Read(content);
        if (header.Refused.Length > 0)
            problems.Add(new Problem(name, "is refused", header.Refused));
        else if (header.Extension != Path.GetExtension(name))
            problems.Add(new Problem(name, $"is of the kind {header.MediaType}", $"it must end in {header.Extension}"));
        return bytes;
    }

    public void Dispose() => zip.Dispose();

    private void Look(long zipBytes)
    {
        if (zip.Entries.Count > limits.MostFiles)
            problems.Add(
                new Problem(
                    "the zip",
                    string.Create(CultureInfo.InvariantCulture, $"holds {zip.Entries.Count} files"),
                    string.Create(CultureInfo.InvariantCulture, $"at most {limits.MostFiles} are taken")
                )
            );
        if (zip.Entries.Sum(e => (double)e.Length) is var all && all > FreeBytes && all > (double)limits.MostRatio * zipBytes)
            problems.Add(new Problem("the zip", string.Create(CultureInfo.InvariantCulture, $"would unpack to {all / 1e6:F0} MB"), Tight));
        foreach (var entry in zip.Entries)
        {
            var name = entry.FullName;
            if (ZipNames.Refused(name) is { Length: > 0 } why)
                problems.Add(new Problem(Shown(name), why, "only ohmstead.json, units/, documents/ and photos/ are expected"));
            else if (!files.TryAdd(name, entry))
                problems.Add(new Problem(name, "is in the zip twice", "once is expected"));
            if (problems.Count > 100)
                return;
        }
    }

    private string Tight =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"more than {limits.MostRatio} times its packed size: this is not what ohmstead export writes"
        );

    /// <summary>Reads a file whole. What the zip says of sizes is not believed: bytes are counted as they come.</summary>
    private async Task<byte[]?> BytesAsync(string name, int mostBytes, CancellationToken cancel)
    {
        var entry = files[name];
        var most = Math.Min(mostBytes, Math.Max(FreeBytes, limits.MostRatio * entry.CompressedLength));
        try
        {
            await using var from = await entry.OpenAsync(cancel);
            using var bytes = new MemoryStream();
            var part = new byte[65536];
            while (await from.ReadAsync(part, cancel) is var count and > 0)
            {
                bytes.Write(part, 0, count);
                if (bytes.Length <= most)
                    continue;
                problems.Add(
                    new Problem(
                        name,
                        string.Create(CultureInfo.InvariantCulture, $"unpacks to more than {most / 1e6:0.##} MB"),
                        most == mostBytes ? "the most that is taken" : Tight
                    )
                );
                return null;
            }
            return bytes.ToArray();
        }
        catch (InvalidDataException)
        {
            problems.Add(new Problem(name, "is damaged or locked with a password", "a zip written by ohmstead export is expected"));
            return null;
        }
    }

    /// <summary>A hostile name as it may be shown: one line, not too long.</summary>
    private static string Shown(string name)
    {
        var plain = string.Concat(name.Take(120).Select(c => char.IsControl(c) ? '?' : c));
        return name.Length > 120 ? plain + "…" : plain;
    }
}
