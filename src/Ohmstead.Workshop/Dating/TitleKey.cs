using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.Workshop.Dating;

/// <summary>Keys made of titles: the same title has the same key at every bench, and two titles hardly ever share one.</summary>
internal static class TitleKey
{
    private const int MostLetters = 40;

    /// <summary>Plain where the title is written in Latin letters; where letters are lost, its mark tells it from others.</summary>
    public static string Of(string title)
    {
        var small = title.Trim().ToLowerInvariant();
        var words = string.Concat(small.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Trim('-');
        var isWhole = words.Length is > 0 and <= MostLetters && !small.Any(c => !char.IsAscii(c) && char.IsLetterOrDigit(c));
        return isWhole ? words : Marked(words.Length == 0 ? "detail" : words[..Math.Min(words.Length, MostLetters)], title);
    }

    /// <summary>A key, and eight hexadecimal digits of what the title is.</summary>
    public static string Marked(string key, string title) =>
        $"{key}-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Plain(title))))[..8]}";

    /// <summary>True where two titles are the same to a reader.</summary>
    public static bool IsSame(string one, string other) => Plain(one) == Plain(other);

    private static string Plain(string title) => title.Trim().ToLowerInvariant();
}
