namespace Ohmstead.Workshop.Asking;

/// <summary>The marks of posts, from what was typed.</summary>
internal static class PostMark
{
    /// <summary>The common post of which nobody said a mark.</summary>
    public const string Common = "common";

    private static readonly string[] Ordinals = ["first", "second", "third", "fourth"];

    /// <summary>A post as its outline names it: one letter is a capital.</summary>
    public static string Of(string typed)
    {
        var mark = typed.Trim();
        return mark.Length == 1 ? mark.ToUpperInvariant() : mark;
    }

    /// <summary>The return of a post.</summary>
    public static string Return(string typed) => Of(typed) is { Length: > 0 } mark ? mark : Common;

    /// <summary>What a throttle is named after: its post; where that is not known, its place.</summary>
    public static string Throttle(KindAnswers a, int n) =>
        !a.IsDirectAt(n) && a.Throttle(n).Post.Trim() is { Length: > 0 } post ? post.ToLowerInvariant().Replace(' ', '-')
        : a.ThrottleCount == 1 ? "track"
        : Ordinals[n];

    /// <summary>True for two marks of one post.</summary>
    public static bool IsSame(string one, string other) => string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);
}
