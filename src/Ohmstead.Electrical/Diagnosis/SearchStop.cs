namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Why the search for sets of faults stopped.</summary>
public enum SearchStop
{
    /// <summary>No unexpanded set is left within the margin of the best.</summary>
    Complete,

    /// <summary>The largest number of expansions was reached.</summary>
    Budget,

    /// <summary>The caller's clock said so.</summary>
    TimeUp,

    /// <summary>The caller stopped it.</summary>
    Cancelled,
}
