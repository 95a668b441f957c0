using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>What two benches entered on one unit, each without knowing of the other, and what cannot both count.</summary>
/// <param name="Sort">What sort of question it is.</param>
/// <param name="Entries">The entries, in the order of the journal; corrections as they were entered.</param>
public sealed record Contradiction(ContradictionSort Sort, ImmutableArray<Entry> Entries)
{
    /// <summary>The same for the same entries: by this a screen finds it again.</summary>
    public string Key => string.Join('+', Entries.Select(e => e.Id.ToString("N")));
}

/// <summary>What sort of question a contradiction is.</summary>
public enum ContradictionSort
{
    /// <summary>Something of which the last entry counts was entered differently.</summary>
    Differently,

    /// <summary>The card was changed at both.</summary>
    Card,

    /// <summary>One entry was corrected differently.</summary>
    Corrected,

    /// <summary>Two readings of one minute differ.</summary>
    SameMinute,

    /// <summary>The same was done at both: a part changed, a step taken off.</summary>
    DoneTwice,

    /// <summary>It was returned by one bench and worked on at another.</summary>
    Returned,
}
