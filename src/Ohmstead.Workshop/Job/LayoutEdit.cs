using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Job;

/// <summary>Changes of what the owner runs, each of one tap. A pair with nothing on it and no wire is left out.</summary>
public static class LayoutEdit
{
    /// <summary>More of one thing than this no pair of posts has.</summary>
    private const int MostOfOne = 999;

    /// <summary>So many of a thing on a pair of posts.</summary>
    public static LayoutStated Count(LayoutStated stated, Outlet outlet, string what, int count) =>
        Put(
            stated,
            outlet,
            p =>
                p with
                {
                    Items =
                    [
                        .. LayoutBudget
                            .Consumers.Select(c => new LayoutItem(
                                c,
                                c == what ? Math.Clamp(count, 0, MostOfOne) : p.Items.FirstOrDefault(i => i.What == c)?.Count ?? 0
                            ))
                            .Where(i => i.Count > 0),
                    ],
                }
        );

    /// <summary>The wire of a pair of posts; null for none that is known.</summary>
    public static LayoutStated Wire(LayoutStated stated, Outlet outlet, LayoutWire? wire) =>
        Put(stated, outlet, p => p with { Wire = wire });

    private static LayoutStated Put(LayoutStated stated, Outlet outlet, Func<LayoutPost, LayoutPost> change)
    {
        var before = LayoutBudget.PostOf(stated, outlet);
        var after = change(before ?? new(outlet.Spec.From, outlet.Spec.To, [], null));
        var posts = before is null ? stated.Posts.Add(after) : stated.Posts.Replace(before, after);
        return new([.. posts.Where(p => !p.Items.IsEmpty || p.Wire is not null)]);
    }
}
