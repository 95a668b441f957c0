namespace Ohmstead.Electrical.Diagnosis;

/// <summary>Why the search for sets of faults stopped.</summary>
public enum SearchStop
{
    /// <summary>No unexpanded set is left within the margin of the best.</summary>
    Complete,

    /// <summary>The largest number of expansions, or the work allowed, was reached.</summary>
    Budget,

    /// <summary>The caller's last guard struck: the answer is not finished.</summary>
    TimeUp,

    /// <summary>The caller stopped it: the answer is not finished.</summary>
    Cancelled,
}
