namespace Ohmstead.Workshop.Words;

/// <summary>Names put into sentences.</summary>
public static class Sentences
{
    /// <summary>The first letter large, as at the head of a line.</summary>
    public static string Large(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>With a large letter and a full stop, however it was written down.</summary>
    public static string Whole(string text) => text.Length == 0 || text[^1] is '.' or '!' or '?' ? Large(text) : Large(text) + ".";

    /// <summary>The first letter small, as within a sentence, but not of "AC", "DC" or "A to C".</summary>
    public static string Small(string text) => text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    /// <summary>A name without its article: "core" of "the core".</summary>
    public static string Bare(string name) => name.StartsWith("the ", StringComparison.Ordinal) ? name[4..] : name;

    /// <summary>"A", "A and B", "A, B and C".</summary>
    public static string List(IEnumerable<string> items)
    {
        var all = items.ToList();
        return all.Count < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }
}
