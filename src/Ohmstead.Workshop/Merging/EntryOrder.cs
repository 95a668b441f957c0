using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>
/// The one order in which entries of several benches are read: what a bench did stays in its own order whatever its clock said;
/// between benches the earlier time goes first, and of one time the smaller id.
/// </summary>
internal static class EntryOrder
{
    /// <summary>The ids in their order. It depends on the entries alone, not on how they came together.</summary>
    /// <param name="made">Each entry with those that it was made after; those that are not here do not count.</param>
    public static ImmutableArray<Guid> Of(IReadOnlyDictionary<Guid, MadeEntry> made)
    {
        var followers = new Dictionary<Guid, List<Guid>>();
        var waitsFor = new Dictionary<Guid, int>();
        foreach (var (id, entry) in made)
        {
            var before = entry.After.Where(made.ContainsKey).ToList();
            waitsFor[id] = before.Count;
            foreach (var earlier in before)
            {
                if (!followers.TryGetValue(earlier, out var list))
                    followers[earlier] = list = [];
                list.Add(id);
            }
        }
        var ready = new SortedSet<(int, DateTimeOffset, Guid)>(waitsFor.Where(w => w.Value == 0).Select(w => Key(made[w.Key].Entry)));
        var left = new SortedSet<(int, DateTimeOffset, Guid)>(made.Values.Select(m => Key(m.Entry)));
        var order = ImmutableArray.CreateBuilder<Guid>(made.Count);
        while (left.Count > 0)
        {
            // Two journals that were imported into each other may each say "after" of the other: then the time alone decides.
            var next = ready.Count > 0 ? ready.Min : left.Min;
            ready.Remove(next);
            left.Remove(next);
            order.Add(next.Item3);
            foreach (var follower in followers.GetValueOrDefault(next.Item3) ?? [])
                if (--waitsFor[follower] == 0 && left.Contains(Key(made[follower].Entry)))
                    ready.Add(Key(made[follower].Entry));
        }
        return order.MoveToImmutable();
    }

    /// <summary>A journal begins with taking the unit in.</summary>
    private static (int, DateTimeOffset, Guid) Key(Entry entry) => (entry.Fact is TakenIn ? 0 : 1, entry.At, entry.Id);
}

/// <summary>An entry with those that it was made after.</summary>
internal sealed record MadeEntry(Entry Entry, ImmutableSortedSet<Guid> After);
