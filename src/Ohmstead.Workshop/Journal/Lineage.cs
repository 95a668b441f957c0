using System.Collections;
using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>
/// Which entry of a journal was made after which. Of one copy of a workshop each entry is made after all before it; two copies that
/// were worked on apart know nothing of each other's entries until they are merged.
/// </summary>
public sealed class Lineage
{
    private readonly Dictionary<Guid, int> places = [];
    private readonly BitArray[] before;

    /// <summary>Reads it from a journal.</summary>
    /// <param name="journal">Of one unit; every entry stands after those that it was made after.</param>
    public Lineage(IReadOnlyList<Entry> journal)
    {
        before = new BitArray[journal.Count];
        for (var n = 0; n < journal.Count; n++)
        {
            places[journal[n].Id] = n;
            before[n] = new BitArray(journal.Count);
            foreach (var id in After(journal, n))
                if (places.TryGetValue(id, out var place) && place < n)
                {
                    before[n].Or(before[place]);
                    before[n][place] = true;
                }
        }
    }

    /// <summary>True where copies of the workshop were worked on apart, so that some entries know nothing of others.</summary>
    public static bool IsForked(IEnumerable<Entry> journal) => journal.Any(e => e.After is not null);

    /// <summary>What an entry was made after.</summary>
    public static ImmutableArray<Guid> After(IReadOnlyList<Entry> journal, int place) =>
        journal[place].After ?? (place == 0 ? [] : [journal[place - 1].Id]);

    /// <summary>The entries that no other was made after: what a new entry of this copy is made after.</summary>
    public static ImmutableArray<Guid> Ends(IReadOnlyList<Entry> journal)
    {
        if (journal.Count == 0)
            return [];
        if (!IsForked(journal))
            return [journal[^1].Id];
        var followed = Enumerable.Range(0, journal.Count).SelectMany(n => After(journal, n)).ToHashSet();
        return [.. journal.Select(e => e.Id).Where(id => !followed.Contains(id))];
    }

    /// <summary>A new entry as it stands at the end of a journal.</summary>
    /// <param name="bench">The copy of the workshop that takes it in.</param>
    public static Entry Append(IReadOnlyList<Entry> journal, Guid unitId, NewEntry entry, string bench)
    {
        // Always in one order, so that the same journal is the same text at every bench.
        var after = (entry.After ?? Ends(journal)).Sort();
        var isAfterLast = journal.Count == 0 ? after.Length == 0 : after.Length == 1 && after[0] == journal[^1].Id;
        return new Entry(entry.Id, unitId, journal.Count + 1, entry.At.ToUniversalTime(), entry.By, entry.Fact)
        {
            Bench = entry.Bench ?? bench,
            After = isAfterLast ? null : after,
        };
    }

    /// <summary>True when whoever made the second entry had the first one.</summary>
    public bool IsAfter(Guid later, Guid earlier) => before[places[later]][places[earlier]];

    /// <summary>True when neither was known where the other was made.</summary>
    public bool AreApart(Guid one, Guid other) => one != other && !IsAfter(one, other) && !IsAfter(other, one);
}
