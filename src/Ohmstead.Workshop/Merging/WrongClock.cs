using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>An entry whose time cannot be right. Its bench's own order stands all the same.</summary>
/// <param name="Entry">The first such entry of its bench.</param>
/// <param name="IsFuture">True where it is dated later than now; false where it is dated well before an earlier entry of its bench.</param>
public sealed record WrongClock(Entry Entry, bool IsFuture)
{
    /// <summary>Clocks of two machines may differ by so much.</summary>
    private static readonly TimeSpan Leeway = TimeSpan.FromMinutes(10);

    /// <summary>The benches of a unit whose clock was wrong, each by its first such entry.</summary>
    public static ImmutableArray<WrongClock> Of(IReadOnlyList<Entry> journal, DateTimeOffset now)
    {
        var last = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal);
        var wrong = new Dictionary<string, WrongClock>(StringComparer.Ordinal);
        foreach (var entry in journal)
        {
            var (isFuture, isBack) = (entry.At > now + Leeway, last.TryGetValue(entry.Bench, out var before) && entry.At < before - Leeway);
            if (isFuture || isBack)
                wrong.TryAdd(entry.Bench, new(entry, isFuture));
            last[entry.Bench] = entry.At;
        }
        return [.. wrong.Values.OrderBy(w => w.Entry.Number)];
    }
}
