using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Units;

/// <summary>How long the entries of a unit took, by the clock of its journal: nobody has to start a stopwatch.</summary>
public static class LoggedMinutes
{
    /// <summary>Longer than this between two entries is a pause [min].</summary>
    public const double LongestMinutes = 20;

    /// <summary>
    /// Every entry that is no photo, with the time since the last one before it. What was undone counts too: somebody was at the bench.
    /// </summary>
    public static IEnumerable<LoggedEntry> Of(BenchUnit unit)
    {
        var standing = unit.Standing.ToDictionary(e => e.Id, e => e.Fact);
        DateTimeOffset? before = null;
        foreach (var entry in unit.Journal.Where(e => e.Fact is not PhotoAdded))
        {
            var gap = before is { } last ? Math.Max(0, (entry.At - last).TotalMinutes) : 0;
            before = entry.At;
            yield return new(entry, standing.GetValueOrDefault(entry.Id), gap > LongestMinutes ? null : gap);
        }
    }
}

/// <summary>An entry and how long it took.</summary>
/// <param name="Fact">What stands of it now; null for nothing.</param>
/// <param name="Minutes">Since the last entry before it; null where that was a pause.</param>
public sealed record LoggedEntry(Entry Entry, Fact? Fact, double? Minutes);
