using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>
/// Two journals of one unit become one. Nothing is dropped, and it does not matter in which order, how often or through whom they
/// come together: docs/methods/merging.md.
/// </summary>
public static class MergedJournal
{
    /// <summary>The journal that holds every entry of both, numbered anew.</summary>
    /// <param name="one">A journal in its order; may be empty.</param>
    /// <param name="other">Another of the same unit.</param>
    public static ImmutableArray<Entry> Of(IReadOnlyList<Entry> one, IReadOnlyList<Entry> other)
    {
        var made = new Dictionary<Guid, MadeEntry>();
        Take(made, one);
        Take(made, other);
        var order = EntryOrder.Of(made);
        var merged = ImmutableArray.CreateBuilder<Entry>(order.Length);
        foreach (var id in order)
        {
            var (entry, after) = made[id];
            var isAfterLast = merged.Count == 0 ? after.Count == 0 : after.Count == 1 && after[0] == merged[^1].Id;
            merged.Add(entry with { Number = merged.Count + 1, After = isAfterLast ? null : [.. after] });
        }
        return merged.MoveToImmutable();
    }

    /// <summary>Entries that are here and say something else there: somebody changed a file by hand.</summary>
    public static int Altered(IReadOnlyList<Entry> one, IReadOnlyList<Entry> other)
    {
        var here = one.ToDictionary(e => e.Id);
        return other.Count(e => here.GetValueOrDefault(e.Id) is { } mine && Content(mine) != Content(e));
    }

    private static void Take(Dictionary<Guid, MadeEntry> made, IReadOnlyList<Entry> journal)
    {
        for (var n = 0; n < journal.Count; n++)
        {
            ImmutableSortedSet<Guid> after = [.. Lineage.After(journal, n)];
            made[journal[n].Id] = made.TryGetValue(journal[n].Id, out var known)
                ? new(Join(known.Entry, journal[n]), known.After.Union(after))
                : new(journal[n], after);
        }
    }

    /// <summary>An entry is never changed once it is made. Of one that was altered outside, the same stands at every bench.</summary>
    private static Entry Join(Entry one, Entry other) =>
        (Content(one).CompareTo(Content(other)) >= 0 ? one : other) with
        {
            Bench = string.CompareOrdinal(one.Bench, other.Bench) >= 0 ? one.Bench : other.Bench,
        };

    private static (string, DateTimeOffset, string) Content(Entry entry) =>
        (Ordinal(FactText.Write(entry.Fact)), entry.At, Ordinal(entry.By));

    /// <summary>Compares the same in every country.</summary>
    private static string Ordinal(string text) => Convert.ToHexString(System.Text.Encoding.UTF8.GetBytes(text));
}
