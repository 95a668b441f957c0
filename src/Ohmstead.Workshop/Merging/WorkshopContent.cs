using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>All that a workshop holds, as a merge sees it: what comes together is a set, and its order is its own.</summary>
/// <param name="Units">The journal of each unit.</param>
/// <param name="Documents">Every version of each document, by kind and id; the settings of a shop under its bench.</param>
/// <param name="Photos">Hashes of the photos and recordings.</param>
public sealed record WorkshopContent(
    ImmutableSortedDictionary<Guid, ImmutableArray<Entry>> Units,
    ImmutableSortedDictionary<(string Kind, string Id), DocumentHistory> Documents,
    ImmutableSortedSet<string> Photos
)
{
    /// <summary>A workshop that holds nothing.</summary>
    public static WorkshopContent Empty { get; } =
        new(
            ImmutableSortedDictionary<Guid, ImmutableArray<Entry>>.Empty,
            ImmutableSortedDictionary<(string, string), DocumentHistory>.Empty,
            ImmutableSortedSet.Create<string>(StringComparer.Ordinal)
        );

    /// <summary>What both hold. The same whichever is named first, merged again, or merged through a third.</summary>
    public WorkshopContent Merge(WorkshopContent other) =>
        new(
            Join(Units, other.Units, (_, one, two) => MergedJournal.Of(one, two)),
            Join(Documents, other.Documents, (key, one, two) => one.Merge(key.Kind, two)),
            Photos.Union(other.Photos)
        );

    private static ImmutableSortedDictionary<TKey, TValue> Join<TKey, TValue>(
        ImmutableSortedDictionary<TKey, TValue> one,
        ImmutableSortedDictionary<TKey, TValue> other,
        Func<TKey, TValue, TValue, TValue> both
    )
        where TKey : notnull
    {
        var joined = one.ToBuilder();
        foreach (var (key, value) in other)
            joined[key] = one.TryGetValue(key, out var mine) ? both(key, mine, value) : value;
        return joined.ToImmutable();
    }
}
