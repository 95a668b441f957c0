using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Wiring;

/// <summary>
/// A wire end recorded on another terminal than the one it is planned on, and nobody has answered for it: it was neither moved
/// back and seen there, nor said to be meant so.
/// </summary>
/// <param name="As">The record in which it was seen.</param>
public sealed record WrongEnd(string End, string Seen, string Planned, WiringState As)
{
    /// <summary>What the check before mains weighs.</summary>
    public SeenEnd AsSeen => new(End, Seen);

    /// <summary>
    /// Every such end, in the order of the sheet. What was seen as left counts; where that is missing, what was seen as found, until
    /// its part was soldered or renewed after it.
    /// </summary>
    /// <param name="sheet">The sheet of its kind, or the unit's own.</param>
    public static ImmutableArray<WrongEnd> Of(BenchUnit unit, TypeSheet sheet)
    {
        if (!unit.All<JointSeen>().Any())
            return [];
        var (found, left) = (WiringRecord.Of(unit, sheet, WiringState.Found), WiringRecord.Of(unit, sheet, WiringState.Left));
        var worked = unit.All<PartChanged>()
            .Where(p => p.Fact.Change != PartChange.Moved)
            .GroupBy(p => p.Fact.Element, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last().Entry.Number, StringComparer.Ordinal);
        var wrong = ImmutableArray.CreateBuilder<WrongEnd>();
        foreach (var (end, planned) in Homes(unit, sheet))
        {
            if (left.Seen.TryGetValue(end, out var now))
            {
                if (now.Terminal != planned)
                    wrong.Add(new(end, now.Terminal, planned, WiringState.Left));
            }
            else if (
                found.Seen.TryGetValue(end, out var then)
                && then.Terminal != planned
                && worked.GetValueOrDefault(end[..end.LastIndexOf('.')]) < then.Number
            )
                wrong.Add(new(end, then.Terminal, planned, WiringState.Found));
        }
        return wrong.ToImmutable();
    }

    /// <summary>Each end with its terminal in this unit. The same from the sheet of its kind and from the unit's own.</summary>
    private static IEnumerable<(string End, string Terminal)> Homes(BenchUnit unit, TypeSheet sheet)
    {
        var moved = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (_, part) in unit.All<PartChanged>())
        foreach (var (which, terminal) in PartText.Ends(part))
            moved[$"{part.Element}.{which}"] = terminal;
        return WireEnds.Of(sheet).Select(e => (e.End, moved.GetValueOrDefault(e.End, e.Terminal)));
    }
}
