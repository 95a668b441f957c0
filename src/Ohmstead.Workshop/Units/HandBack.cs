using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Units;

/// <summary>A unit that is back with its owner.</summary>
/// <param name="Entry">The entry that says so.</param>
/// <param name="Manner">How it went; null where the journal is of a time when nobody was asked.</param>
/// <param name="By">Who handed it back; may be empty.</param>
public sealed record HandBack(Entry Entry, ReturnManner? Manner, string By)
{
    /// <summary>How the unit went back last; null while it is on the bench.</summary>
    public static HandBack? Of(BenchUnit unit)
    {
        HandBack? now = null;
        foreach (var entry in unit.Standing)
            now = entry.Fact switch
            {
                Returned r => new(entry, r.Manner, r.By),
                StageClosed { Stage: Stage.Papers } stage => stage.IsClosed ? new(entry, null, "") : null,
                _ => now,
            };
        return now;
    }
}
