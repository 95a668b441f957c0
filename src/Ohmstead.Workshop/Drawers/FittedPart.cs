using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>
/// A part of the drawer in a unit, as that unit's journal tells it: the journal alone says where a part went, so that an undone repair
/// puts it back by itself.
/// </summary>
/// <param name="Entry">The journal's entry that fitted it.</param>
/// <param name="Where">The place in the unit, in words: "Roller, track 1".</param>
/// <param name="EndedAt">When it failed or came out again; null while it works there.</param>
/// <param name="HasFailed">True when a fault was found on it after it went in.</param>
public sealed record FittedPart(
    Guid Unit,
    Guid Entry,
    string Tag,
    string Owner,
    string Contact,
    string Where,
    FromDrawer From,
    DateTimeOffset At,
    DateTimeOffset? EndedAt,
    bool HasFailed
)
{
    /// <summary>The parts of the drawer in one unit, in the order of its journal.</summary>
    /// <param name="sheet">Its type sheet, for the names of places; null while there is none.</param>
    public static ImmutableArray<FittedPart> Of(BenchUnit unit, TypeSheet? sheet) =>
        [
            .. Fitting(unit)
                .SelectMany(c =>
                {
                    var failed = unit
                        .Confirmed.FirstOrDefault(f => f.Fact.Element == c.Fact.Element && f.Entry.Number > c.Entry.Number)
                        .Entry;
                    var later = unit.All<PartChanged>()
                        .FirstOrDefault(p => p.Entry.Number > c.Entry.Number && p.Fact.Element == c.Fact.Element && TakesOut(p.Fact.Change))
                        .Entry;
                    DateTimeOffset?[] ends = [failed?.At, later?.At];
                    return c.Fact.FromTheDrawer.Select(from => new FittedPart(
                        unit.Id,
                        c.Entry.Id,
                        unit.Card.Tag,
                        unit.Card.Owner,
                        unit.Card.Contact,
                        PartNames.Title(sheet, c.Fact.Element),
                        from,
                        c.Entry.At,
                        ends.Min(),
                        failed is not null && (later is null || failed.Number < later.Number)
                    ));
                }),
        ];

    /// <summary>A unit to practice on takes nothing out of the drawer: it is invented.</summary>
    private static IEnumerable<(Entry Entry, PartChanged Fact)> Fitting(BenchUnit unit) =>
        unit.IsPractice ? [] : unit.All<PartChanged>().Where(c => c.Fact.FromTheDrawer.Any());

    /// <summary>As the store keeps it beside a unit; empty for none.</summary>
    public static string Write(ImmutableArray<FittedPart> parts) => parts.IsEmpty ? "" : JsonSerializer.Serialize(parts, FactText.Options);

    /// <summary>What <see cref="Write"/> wrote.</summary>
    public static ImmutableArray<FittedPart> Read(string text) =>
        text.Length == 0 ? [] : JsonSerializer.Deserialize<ImmutableArray<FittedPart>>(text, FactText.Options);

    private static bool TakesOut(PartChange change) => change is PartChange.Renewed or PartChange.Replaced or PartChange.Removed;
}
