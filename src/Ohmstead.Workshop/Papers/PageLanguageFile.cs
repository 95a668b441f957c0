using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Papers;

/// <summary>A words file: one line for each phrase, the English, " = ", the other language; // begins a remark (docs/formats.md).</summary>
public static partial class PageLanguageFile
{
    /// <summary>Longer than any words file [characters].</summary>
    public const int MostLetters = 200_000;

    /// <summary>Stands for a number with its unit, or for the mark of a post.</summary>
    internal const string AnyValue = "#";

    /// <summary>Stands for any name that the file has.</summary>
    internal const string AnyName = "*";

    private const string Between = " = ";
    private const int MostProblems = 20;

    /// <summary>Reads a words file.</summary>
    /// <param name="id">What the language is to be called in the shop's settings.</param>
    /// <returns>The language, or every line that is wrong.</returns>
    public static Parsed<PageLanguage> Read(string id, string text)
    {
        if (text.Length > MostLetters)
            return new(null, [new("the file", "is too long for a words file", "keep one line for each phrase")]);
        var (problems, words) = (new List<Problem>(), new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase));
        var number = 0;
        foreach (var line in text.TrimStart('\uFEFF').Split('\n'))
        {
            number++;
            var said = line.Trim();
            if (said.Length == 0 || said.StartsWith("//", StringComparison.Ordinal))
                continue;
            if (Wrong(said, words) is var (wrong, right))
                problems.Add(new(FormattableString.Invariant($"line {number}"), wrong, right));
        }
        foreach (var need in ((string, string)[])[("language", "language = Deutsch"), ("code", "code = de")])
            if (!words.ContainsKey(need.Item1))
                problems.Add(new("the file", $"does not say its {need.Item1}", $"add a line such as: {need.Item2}"));
        return problems.Count > 0
            ? new(null, [.. problems.Take(MostProblems)])
            : new(new(id, words["language"], words["code"], words.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase)), []);
    }

    /// <summary>What is wrong with a line; null where it is taken.</summary>
    private static (string Wrong, string Right)? Wrong(string line, Dictionary<string, string> words)
    {
        var at = line.IndexOf(Between, StringComparison.Ordinal);
        if (at < 1 || line[(at + Between.Length)..].Trim() is not { Length: > 0 } text)
            return ("has no words on both sides of a “ = ”", "write the English, “ = ”, then your words; or delete the line");
        var key = line[..at].Trim();
        if (words.ContainsKey(key))
            return ($"has “{key}” a second time", "keep one of the two lines");
        if (!Marks(key).SequenceEqual(Marks(text), StringComparer.Ordinal))
            return (
                $"does not keep the marks of “{key}”",
                "write each {0}, # and * of the English once in your words: numbers and names go there"
            );
        if (key.Split(AnyName).Length > 2)
            return ($"has more than one * in “{key}”", "write one");
        words[key] = text;
        return null;
    }

    private static IEnumerable<string> Marks(string text) => Mark().Matches(text).Select(m => m.Value).Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\{\d\}|[{}#*]")]
    private static partial Regex Mark();
}
