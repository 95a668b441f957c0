using System.Text;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>What two people call the same step of taking apart.</summary>
internal static class StepWords
{
    private const int MostLetters = 40;

    /// <summary>Words for one thing, the usual one first.</summary>
    private static readonly string[][] Same =
    [
        ["cover", "case", "lid", "housing", "shell"],
        ["knob", "handle", "lever"],
        ["screw", "bolt", "nut"],
        ["cord", "cable"],
        ["lead", "wire"],
        ["core", "winding", "coil", "transformer"],
        ["lamp", "bulb", "light"],
        ["rectifier", "disc", "stack", "diode"],
        ["joint", "lug"],
    ];

    /// <summary>How many words two titles share; 0 where the thing itself, the last word before "of", is not among them.</summary>
    public static int Alike(string sheets, string logged)
    {
        var head = Words(sheets.Split(" of ")[0]).LastOrDefault("");
        var said = Words(logged).ToHashSet(StringComparer.Ordinal);
        return said.Contains(head) ? Words(sheets).Distinct(StringComparer.Ordinal).Count(said.Contains) : 0;
    }

    /// <summary>An id out of a title: lower-case words with hyphens.</summary>
    public static string Id(string title)
    {
        var id = new StringBuilder();
        foreach (var c in title.ToLowerInvariant())
            if (char.IsAsciiLetterOrDigit(c))
                id.Append(c);
            else if (id.Length > 0 && id[^1] != '-')
                id.Append('-');
        var words = id.ToString()[..Math.Min(id.Length, MostLetters)].Trim('-');
        return words.Length == 0 ? "step" : words;
    }

    private static IEnumerable<string> Words(string title) =>
        title
            .ToLowerInvariant()
            .Split([' ', ',', '-', '.', ':', '(', ')'], StringSplitOptions.RemoveEmptyEntries)
            .Select(w => w.Length > 3 ? w.TrimEnd('s') : w)
            .Select(w => Array.Find(Same, g => g.Contains(w))?[0] ?? w);
}
