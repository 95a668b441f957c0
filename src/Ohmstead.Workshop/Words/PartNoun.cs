namespace Ohmstead.Workshop.Words;

/// <summary>
/// What a part is by its name: "Roller, carbon" is a roller, "Roller pin" a pin, "Pilot lamp 14 V" a pilot lamp. The last word before a
/// comma, a bracket, a figure or an "and" says it.
/// </summary>
public static class PartNoun
{
    /// <summary>Shorter words say too little.</summary>
    private const int LeastLetters = 3;

    /// <summary>True where both names are of one sort of part, though one of them may say more of it: "cord" and "Supply cord, 18 AWG".</summary>
    public static bool IsOne(string name, string other)
    {
        var one = Noun(name);
        var two = Noun(other);
        return Ends(one, two) || Ends(two, one);
    }

    private static bool Ends(ReadOnlySpan<char> name, ReadOnlySpan<char> with) =>
        with.Length >= LeastLetters
        && name.EndsWith(with, StringComparison.OrdinalIgnoreCase)
        && (name.Length == with.Length || name[^(with.Length + 1)] == ' ');

    private static ReadOnlySpan<char> Noun(ReadOnlySpan<char> name)
    {
        var end = name.IndexOfAny(',', '(');
        end = end < 0 ? name.Length : end;
        if (name[..end].IndexOf(" and ", StringComparison.OrdinalIgnoreCase) is > 0 and var and)
            end = and;
        for (var n = 1; n < end; n++)
            if (name[n - 1] == ' ' && char.IsAsciiDigit(name[n]))
                end = n;
        var noun = name[..end].Trim();
        return noun is [.., not 's', 's'] && noun.Length > LeastLetters ? noun[..^1] : noun;
    }
}
