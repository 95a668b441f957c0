namespace Ohmstead.Workshop.Asking;

/// <summary>The two posts that a pilot lamp burns between.</summary>
internal static class LampPlace
{
    /// <summary>The post that was said, with the post that its volts are counted from; else the first fixed one; else the first throttle's.</summary>
    public static string[] Posts(KindAnswers a, string first)
    {
        var said = a.LampPost.Trim();
        foreach (var n in Enumerable.Range(0, a.ThrottleCount))
            if (said.Length > 0 && !a.IsDirectAt(n) && PostMark.IsSame(a.Throttle(n).Post, said))
                return [PostMark.Return(a.Throttle(n).Return), PostMark.Throttle(a, n)];
        if (a.FixedPosts.FirstOrDefault(p => said.Length == 0 || PostMark.IsSame(p.Post, said)) is { } post)
            return
            [
                PostMark.Return((a.FixedPosts.FirstOrDefault(p => PostMark.IsSame(p.Post, post.FedFrom)) ?? post).Return),
                PostMark.Of(post.Post),
            ];
        return
        [
            first.Length > 0 ? first : PostMark.Throttle(a, 0) + "-b",
            said.Length > 0 ? PostMark.Of(said) : PostMark.Throttle(a, 0) + (a.IsDirectAt(0) ? "-a" : ""),
        ];
    }
}
