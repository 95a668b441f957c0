using System.Collections.Immutable;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Tests.Drawers;

/// <summary>A drawer made entry by entry, one an hour; ids come from a counter.</summary>
internal sealed class DrawerDraft
{
    private readonly List<DrawerEntry> entries = [];
    private readonly List<FittedPart> fitted = [];
    private int ids;

    public static DateTimeOffset Noon { get; } = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    public DateTimeOffset Now => Noon.AddHours(ids);

    public Drawer Drawer => Drawer.Of(entries, fitted);

    public Guid Id() => new(++ids, 0, 0, new byte[8]);

    public Guid Bin(
        string tag,
        string name,
        int count,
        double leadDays = 10,
        decimal price = 1.6m,
        double? perYear = null,
        string part = ""
    )
    {
        var bin = Id();
        Do(
            new BinSaid(bin)
            {
                Tag = tag,
                Name = name,
                Part = part,
                Price = price,
                LeadDays = leadDays,
                PerYear = perYear,
            },
            new BinCounted(bin, count)
        );
        return bin;
    }

    public Guid Do(params ImmutableArray<DrawerFact> facts)
    {
        var id = Id();
        entries.Add(new DrawerEntry(id, Now, "bench", facts));
        return id;
    }

    public Guid Receive(Guid bin, int count, string lot) => Do(new PartsReceived(bin, count, "Acme", lot, new DateOnly(2026, 3, 4)));

    public void Fit(Guid bin, Guid? batch, int count, Guid? unit = null) => Fit(bin, batch, count, unit ?? Id(), Now, null, false);

    public void Fit(Guid bin, Guid? batch, int count, Guid unit, DateTimeOffset at, DateTimeOffset? ended, bool failed) =>
        fitted.Add(
            new(
                unit,
                Id(),
                FormattableString.Invariant($"F-{ids}"),
                "An owner",
                "by phone",
                "Roller",
                new FromDrawer(bin, batch, count, "Roller", ""),
                at,
                ended,
                failed
            )
        );

    public void Unfit() => fitted.RemoveAt(fitted.Count - 1);

    /// <summary>The entries in another order than they were made in.</summary>
    public Drawer Backwards => Drawer.Of(Enumerable.Reverse(entries), fitted);
}
