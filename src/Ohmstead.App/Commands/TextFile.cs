using System.Globalization;
using System.Text;

namespace Ohmstead.App.Commands;

/// <summary>A file as text, or the reason why it cannot be one. Pipes can be read too.</summary>
internal static class TextFile
{
    /// <summary>The largest sheets have 2,000 elements, some 400 kB; a file beyond this was not meant for this program.</summary>
    private const int MostBytes = 20_000_000;

    public static string Read(string path)
    {
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
            throw new RefusedInput("ohmstead: the name of a file is empty; give a path");
        if (Directory.Exists(path))
            throw Refuse(path, "is a folder", "a file is expected");
        return Decode(path, Bytes(path));
    }

    private static byte[] Bytes(string path)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (file.CanSeek && file.Length > MostBytes)
                throw TooLarge(path, string.Create(CultureInfo.InvariantCulture, $"has {file.Length / 1e6:F0} MB"));
            using var bytes = new MemoryStream();
            var part = new byte[65536];
            while (file.Read(part) is var count and > 0)
            {
                bytes.Write(part, 0, count);
                if (bytes.Length > MostBytes)
                    throw TooLarge(path, "does not end");
            }
            return bytes.ToArray();
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Refuse(path, "there is no such file", "give the path of one");
        }
    }

    private static string Decode(string path, byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            throw Refuse(path, "is not UTF-8 text", "save it as UTF-8");
        }
    }

    private static RefusedInput TooLarge(string path, string wrong) =>
        Refuse(path, wrong, string.Create(CultureInfo.InvariantCulture, $"at most {MostBytes / 1_000_000} MB are read"));

    private static RefusedInput Refuse(string path, string wrong, string right) => new($"{path}: $: {wrong}; {right}");
}
