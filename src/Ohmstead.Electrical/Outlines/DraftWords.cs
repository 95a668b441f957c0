using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>What the posts, throttles and windings of an outline are called in a sentence.</summary>
internal static class DraftWords
{
    /// <summary>A post with its article where it wants one: "post A", "the common post".</summary>
    public static string Post(string post) => Is(post) ? $"post {PlainName.Said(post)}" : $"the {Words(post)} post";

    /// <summary>A post of a throttle: "post T", "the left post", "post A of the left throttle".</summary>
    public static string Post(ThrottleBlock t, string post) =>
        post == t.Id ? Post(post) : $"post {PlainName.Said(post[(t.Id.Length + 1)..])} of {Throttle(t.Id)}";

    /// <summary>A throttle with its article: "the left throttle", "throttle T".</summary>
    public static string Throttle(string id) => Is(id) ? $"throttle {PlainName.Said(id)}" : $"the {BareThrottle(id)}";

    /// <summary>A throttle without an article.</summary>
    public static string BareThrottle(string id) =>
        Is(id) ? $"throttle {PlainName.Said(id)}"
        : id.Contains("throttle", StringComparison.Ordinal) ? Words(id)
        : $"{Words(id)} throttle";

    /// <summary>A winding without an article: "main winding".</summary>
    public static string Winding(string id) => id.Contains("winding", StringComparison.Ordinal) ? Words(id) : $"{Words(id)} winding";

    /// <summary>A throttle at full.</summary>
    public static string Full(ThrottleBlock t) => t.Kind == ThrottleKind.Steps ? "highest step" : "full throttle";

    /// <summary>A throttle at its lowest.</summary>
    public static string Low(ThrottleBlock t) => t.Kind == ThrottleKind.Steps ? "lowest step" : "low throttle";

    /// <summary>What touches the turns or the wire.</summary>
    public static string Contact(ThrottleKind kind) =>
        kind switch
        {
            ThrottleKind.Roller => "roller",
            ThrottleKind.Shoe => "shoe",
            _ => "brush",
        };

    /// <summary>With a capital.</summary>
    public static string Large(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>At the head of a title: with a capital and without an article.</summary>
    public static string Heading(string words) => Large(words.StartsWith("the ", StringComparison.Ordinal) ? words[4..] : words);

    private static bool Is(string name) =>
        PlainName.IsMark(name) || name.Any(char.IsAsciiDigit) && name.Length <= 4 || !name.Any(char.IsLetter);

    private static string Words(string id) => id.Replace('-', ' ');
}
