using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>What goes into a unit out of the drawer with a repair, while it is chosen: a roller and its pin, two rivets.</summary>
/// <param name="Sources">All that is there, what suits first.</param>
/// <param name="Rows">What was chosen, each with its count as typed.</param>
public sealed record DrawerChoice(ImmutableArray<PartSource> Sources, ImmutableArray<(PartSource Source, string Count)> Rows)
{
    /// <summary>Nothing chosen, and nothing to choose from.</summary>
    public static DrawerChoice None { get; } = new([], []);

    /// <summary>At the beginning of a repair: what was taken out for this unit and suits the part, one of each.</summary>
    public static DrawerChoice For(Drawer drawer, Guid unit, string element, TypeSheet sheet)
    {
        var sources = PartSource.For(drawer, unit, element, sheet);
        return new(sources, [.. sources.Where(s => s is { IsAside: true, Suits: true }).DistinctBy(s => s.From.Bin).Select(s => (s, "1"))]);
    }

    /// <summary>Another source in a row, or in a new one behind them.</summary>
    /// <param name="source">Its place among the sources; what is no such place takes the row away.</param>
    public DrawerChoice Choose(int row, int source) =>
        source >= 0 && source < Sources.Length
            ? this with
            {
                Rows = row < Rows.Length ? Rows.SetItem(row, (Sources[source], Rows[row].Count)) : Rows.Add((Sources[source], "1")),
            }
        : row < Rows.Length ? this with { Rows = Rows.RemoveAt(row) }
        : this;

    /// <summary>Another count in a row.</summary>
    public DrawerChoice With(int row, string count) => this with { Rows = Rows.SetItem(row, (Rows[row].Source, count)) };

    /// <summary>What is wrong with a count; empty for nothing.</summary>
    public string Problem => Rows.Select(Wrong).FirstOrDefault(w => w.Length > 0) ?? "";

    /// <summary>The repair with what goes in.</summary>
    public PartChanged On(PartChanged repair)
    {
        ImmutableArray<FromDrawer> parts = [.. Rows.Select(r => r.Source.From with { Count = DrawerEdit.Pieces(r.Count, "").Value })];
        return parts.IsEmpty ? repair : repair with { From = parts[0], Also = parts[1..] };
    }

    private static string Wrong((PartSource Source, string Count) row)
    {
        var (count, wrong) = DrawerEdit.Pieces(row.Count, "");
        return wrong.Length > 0 ? $"{row.Source.From.Name}: {wrong}"
            : count > row.Source.Left
                ? $"{row.Source.From.Name}: only {ValueText.Plain(row.Source.Left)} by the count. Count the bin first."
            : "";
    }
}
