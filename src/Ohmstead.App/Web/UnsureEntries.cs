using System.Collections.Concurrent;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>
/// Entries of which nobody knows whether they were kept: the way to the store was cut at the end. Sent again they go under the ids they
/// had, and are kept once.
/// </summary>
internal sealed class UnsureEntries
{
    private readonly ConcurrentDictionary<Guid, IReadOnlyList<NewEntry>> sent = new();

    /// <summary>These were sent, and no answer came.</summary>
    public void Keep(Guid unitId, IReadOnlyList<NewEntry> entries) => sent[unitId] = entries;

    /// <summary>The entries under which the same facts were sent before; null when they were not.</summary>
    public IReadOnlyList<NewEntry>? Again(Guid unitId, string by, IReadOnlyList<Fact> facts) =>
        sent.TryGetValue(unitId, out var before)
        && before.Select(e => (e.By, FactText.Write(e.Fact))).SequenceEqual(facts.Select(f => (by, FactText.Write(f))))
        && sent.TryRemove(unitId, out _)
            ? before
            : null;

    /// <summary>The unit was read. What is in it was kept, and the same fact again is another one.</summary>
    public void Seen(BenchUnit unit)
    {
        if (sent.TryGetValue(unit.Id, out var before) && unit.Journal.Any(e => before.Any(b => b.Id == e.Id)))
            sent.TryRemove(unit.Id, out _);
    }
}
