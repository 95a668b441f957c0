namespace Ohmstead.Workshop.Drawing;

/// <summary>How wide a text will be, without knowing its font: the widths of a wide sans serif, so that labels have room.</summary>
internal static class TextWidth
{
    /// <summary>Bold letters are this much wider.</summary>
    private const double Bold = 1.1;

    /// <summary>Width of one line of bold letters.</summary>
    public static double OfBold(string words, double size) => Bold * Of(words, size);

    /// <summary>Width of one line, in the unit of <paramref name="size"/>.</summary>
    public static double Of(string words, double size)
    {
        var width = 0.0;
        foreach (var letter in words)
            width += Share(letter);
        return width * size;
    }

    /// <summary>
    /// A name on one line, or on two when it is wider than <paramref name="room"/>: broken after the hyphen or blank that
    /// leaves the longer line shortest.
    /// </summary>
    public static string[] Wrap(string words, double size, double room)
    {
        if (Of(words, size) <= room)
            return [words];
        var best = -1;
        for (var n = 1; n < words.Length; n++)
            if (words[n - 1] is '-' or ' ' && (best < 0 || Longer(words, n) < Longer(words, best)))
                best = n;
        return best < 0 ? [words] : [words[..best].TrimEnd(' '), words[best..]];
    }

    private static double Longer(string words, int cut) => Math.Max(Of(words[..cut], 1), Of(words[cut..], 1));

    private static double Share(char letter) =>
        letter switch
        {
            'i' or 'j' or 'l' or '.' or ',' or ':' or '|' or '\'' => 0.32,
            'f' or 't' or 'r' or '-' or ' ' or '(' or ')' => 0.44,
            'm' or 'w' or 'M' or 'W' => 0.90,
            >= 'A' and <= 'Z' => 0.70,
            _ => 0.62,
        };
}
