namespace Ohmstead.App.Papers;

/// <summary>Which fragments stand on which page: those that keep together do so where a page can hold them.</summary>
internal sealed class Pagination
{
    private readonly double room;
    private readonly List<List<Fragment>> pages =
    [
        [],
    ];

    /// <summary>What is left of the last page [pt].</summary>
    private double left;

    private Pagination(double room) => this.room = left = room;

    /// <summary>The pages.</summary>
    /// <param name="fragments">From top to bottom.</param>
    /// <param name="room">Height of a page [pt].</param>
    public static List<List<Fragment>> Of(IEnumerable<Fragment> fragments, double room)
    {
        var (made, all) = (new Pagination(room), fragments.ToList());
        for (var n = 0; n < all.Count; n++)
        {
            while (all[n].Alternative is { } others && KeptFrom(all, n) > made.left)
            {
                all.RemoveAt(n);
                all.InsertRange(n, others);
            }
            made.Place(all[n], KeptFrom(all, n));
        }
        if (made.pages.Count > 1 && made.pages[^1].Count == 0)
            made.pages.RemoveAt(made.pages.Count - 1);
        return made.pages;
    }

    /// <summary>Height of a fragment and of those that it keeps with it.</summary>
    private static double KeptFrom(List<Fragment> fragments, int first)
    {
        var end = first;
        while (end < fragments.Count - 1 && fragments[end].KeepsWithNext)
            end++;
        return fragments[first..(end + 1)].Sum(f => f.Height);
    }

    private void Place(Fragment fragment, double kept)
    {
        if (fragment.OwnPage is not null || fragment.EndsPage || (kept > left && (kept <= room || fragment.Height > left)))
            Turn();
        if (fragment.EndsPage)
            return;
        if (pages[^1].Count == 0)
        {
            if (fragment.IsSpace)
                return;
            if (pages.Count > 1 && fragment.RepeatedHeader is { } header)
                Add(header);
        }
        Add(fragment);
        if (fragment.OwnPage is not null)
            Turn();
    }

    /// <summary>Turns to a new page, unless this one is.</summary>
    private void Turn()
    {
        if (pages[^1].Count > 0)
            pages.Add([]);
        left = room;
    }

    private void Add(Fragment fragment)
    {
        pages[^1].Add(fragment);
        left -= fragment.Height;
    }
}
