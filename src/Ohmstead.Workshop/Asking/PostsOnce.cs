namespace Ohmstead.Workshop.Asking;

/// <summary>Every post once, whatever its letter is written like; and no post its own return.</summary>
internal static class PostsOnce
{
    /// <summary>What is named twice, or not at all, each at its question.</summary>
    public static List<AnswerProblem> Of(KindAnswers a)
    {
        var (problems, seen) = (new List<AnswerProblem>(), new List<string>());
        var throttles = Enumerable.Range(0, a.ThrottleCount).Where(n => !a.IsDirectAt(n)).ToList();
        var fixedPosts = a.FixedPosts.ToList();
        // One winding may start at a post of another: that post is fixed and a return.
        bool IsReturnAlone(string post) =>
            throttles.Any(n => PostMark.IsSame(a.Throttle(n).Return, post)) && !fixedPosts.Any(p => PostMark.IsSame(p.Post, post));
        void Once(string question, string typed, string from)
        {
            var post = PostMark.Of(typed);
            if (post.Length == 0)
                return;
            if (from.Trim().Length > 0 && PostMark.IsSame(post, from))
                problems.Add(new(question, $"Post {post} cannot be its own return. Write the mark of the other post."));
            else if (seen.Contains(post, StringComparer.OrdinalIgnoreCase) || IsReturnAlone(post))
                problems.Add(new(question, $"Post {post} is named twice. Name each post once."));
            seen.Add(post);
        }
        foreach (var n in throttles)
            Once(KindQuestions.Posts(n), a.Throttle(n).Post, a.Throttle(n).Return);
        foreach (var post in fixedPosts)
        {
            if (post.Post.Trim().Length == 0)
                problems.Add(new(KindQuestions.Fixed, "Write the mark of each post. Remove the lines that you don’t need."));
            Once(KindQuestions.Fixed, post.Post, post.FedFrom.Trim().Length > 0 ? post.FedFrom : post.Return);
        }
        return problems;
    }
}
