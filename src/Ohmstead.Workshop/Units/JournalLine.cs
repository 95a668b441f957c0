using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Units;

/// <summary>An entry as a person reads it: what was entered and what became of it. Corrections stand with what they correct.</summary>
/// <param name="Entry">As it was entered.</param>
/// <param name="Words">What was entered, in words.</param>
/// <param name="Now">What counts in its place, in words; empty when it counts as it is or not at all.</param>
/// <param name="Standing">What counts of it; null when it was taken back.</param>
/// <param name="CorrectedBy">The last correction of it; null for none.</param>
public sealed record JournalLine(Entry Entry, string Words, string Now, Fact? Standing, Entry? CorrectedBy)
{
    /// <summary>True when it was taken back.</summary>
    public bool IsTakenBack => Standing is null;

    /// <summary>True when it may be taken back: what began the journal may not.</summary>
    public bool CanBeTakenBack => Standing is not (null or TakenIn);

    /// <summary>Every entry but corrections, last first.</summary>
    public static ImmutableArray<JournalLine> LastFirst(BenchUnit unit, TypeSheet? sheet)
    {
        var standing = unit.Standing.ToDictionary(e => e.Id, e => e.Fact);
        var corrections = new Dictionary<Guid, Entry>();
        foreach (var entry in unit.Journal)
            if (entry.Fact is Corrected c)
                corrections[c.EntryId] = entry;
        return
        [
            .. unit
                .Journal.Reverse()
                .Where(e => e.Fact is not Corrected)
                .Select(e =>
                {
                    var now = standing.GetValueOrDefault(e.Id);
                    var (then, instead) = (FactWords.Of(e.Fact, sheet), now is null ? "" : FactWords.Of(now, sheet));
                    return new JournalLine(e, then, instead == then ? "" : instead, now, corrections.GetValueOrDefault(e.Id));
                }),
        ];
    }

    /// <summary>
    /// The fact that puts it right: what stands instead, or nothing. Corrections of one entry follow one another; the journal
    /// is read with the last (<see cref="UnitHistory"/>).
    /// </summary>
    public Corrected Correct(Fact? instead) => new(Entry.Id, instead);
}
