using System.Buffers;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Names that are words already: <c>post-a</c> is said "post A".</summary>
public static class PlainName
{
    private static readonly string[] ShortWords = ["ac", "dc", "at", "by", "in", "of", "on", "to", "up"];
    private static readonly SearchValues<char> Vowels = SearchValues.Create("aeiouyAEIOUY");

    /// <summary>True when a name is made of whole words, with letters and numbers that stand on a unit behind them; never <c>w-6</c>.</summary>
    public static bool IsWords(string name)
    {
        var parts = name.Split('-', ' ', '_');
        return IsWord(parts[0]) && parts.All(p => IsWord(p) || IsLetter(p) || p.Length < 4 && IsNumber(p));
    }

    /// <summary>True for what is printed on a dial as it is: a letter or a number.</summary>
    public static bool IsMark(string name) => IsLetter(name) || IsNumber(name);

    /// <summary>Such a name as it is said: "post A", "post U-2", "lug 14", "DC post".</summary>
    public static string Said(string name)
    {
        var said = "";
        var wasLetter = false;
        foreach (var part in name.Split('-', ' ', '_'))
        {
            var gap =
                said.Length == 0 ? ""
                : wasLetter && IsNumber(part) ? "-"
                : " ";
            said += gap + (IsLetter(part) || part is "ac" or "dc" ? part.ToUpperInvariant() : part);
            wasLetter = IsLetter(part);
        }
        return said;
    }

    private static bool IsLetter(string part) => part.Length == 1 && char.IsAsciiLetter(part[0]);

    private static bool IsNumber(string part) => part.Length > 0 && part.All(char.IsAsciiDigit);

    private static bool IsWord(string part) =>
        ShortWords.Contains(part) || part.Length > 2 && part.All(char.IsAsciiLetter) && part.AsSpan().ContainsAny(Vowels);
}
