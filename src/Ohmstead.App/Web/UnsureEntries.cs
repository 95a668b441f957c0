using System.Collections.Concurrent;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>
/// Entries of which nobody knows whether they were kept: the way to the store was cut at the end. Sent again they go under the ids they
/// had, and are kept once. That a screen read the unit changes nothing: whoever pressed may not have seen it.
/// </summary>
internal sealed class UnsureEntries
{
    private readonly ConcurrentDictionary<(Guid UnitId, Sender By), IReadOnlyList<NewEntry>> sent = new();

    /// <summary>These were sent, and no answer came.</summary>
    public void Keep(Guid unitId, Sender by, IReadOnlyList<NewEntry> entries) => sent[(unitId, by)] = entries;

    /// <summary>An answer came since, or it was told that they were kept: the same facts again are meant so.</summary>
    public void Drop(Guid unitId, Sender by) => sent.TryRemove((unitId, by), out _);

    /// <summary>The entries under which the same facts were sent before; null when they were not.</summary>
    public IReadOnlyList<NewEntry>? Again(Guid unitId, Sender by, IReadOnlyList<Fact> facts) =>
        sent.TryGetValue((unitId, by), out var before) && before.Select(e => Said(e.Fact)).SequenceEqual(facts.Select(Said))
            ? before
            : null;

    /// <summary>The ids of those that the unit has all the same; none where nothing was unsure, or nothing was kept.</summary>
    public IReadOnlyList<Guid> In(BenchUnit unit, Sender by) =>
        sent.TryGetValue((unit.Id, by), out var before) ? [.. before.Select(b => b.Id).Intersect(unit.Journal.Select(e => e.Id))] : [];

    // Which readings a repair leaves is worked out from the unit, which may hold that very repair by now.
    private static string Said(Fact fact) => FactText.Write(fact is PartChanged change ? change with { Keeps = [] } : fact);
}

/// <summary>Who sent an entry.</summary>
/// <param name="By">As the journal names it.</param>
/// <param name="Mark">The mark of the device it came from; empty for this machine.</param>
internal sealed record Sender(string By, string Mark);
