using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>A reading was taken, or tried.</summary>
/// <param name="ReadingId">The sheet's id of it.</param>
/// <param name="Bench">What was really so while it was taken.</param>
public sealed record ReadingEntered(string ReadingId, Shown Shown, BenchState Bench) : Fact
{
    /// <summary>What was read, in words, on a unit whose type was not known; null where a type sheet has them.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}

/// <summary>A gate that has no instrument here was waived, in writing. A measured failure cannot be.</summary>
/// <param name="Why">Why it cannot be read.</param>
/// <param name="WaivedBy">Who answers for it.</param>
/// <param name="Instead">What was done instead.</param>
public sealed record ReadingWaived(string ReadingId, string Why, string WaivedBy, string Instead) : Fact;

/// <summary>How the bench really stands; carried forward into every later reading.</summary>
public sealed record BenchSet(BenchState Bench) : Fact;
