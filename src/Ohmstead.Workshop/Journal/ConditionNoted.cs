using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>The state of a part that is no circuit element: cord, strain relief, sleeves, groove, posts, case, handles.</summary>
/// <param name="Item">Key of the part in the shop's look-over list.</param>
/// <param name="Words">What is seen, in words.</param>
/// <param name="Photo">Hash of a photo; empty for none.</param>
public sealed record ConditionNoted(string Item, string Words, Decision Decision, string Photo) : Fact
{
    /// <summary>What the part is called, as the shop called it then; null in what was entered before it was kept.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}

/// <summary>What is to be done with a part.</summary>
public enum Decision
{
    /// <summary>Nothing decided.</summary>
    Open,

    /// <summary>It stays as it is.</summary>
    Leave,

    /// <summary>It stays, and is looked at again.</summary>
    Watch,

    /// <summary>It is to be renewed.</summary>
    Renew,

    /// <summary>It was renewed.</summary>
    Renewed,

    /// <summary>It was not renewed and is whole again: sleeved, covered, cemented.</summary>
    MadeGood,
}

/// <summary>A part of the look-over that can endanger could not be looked at; somebody answers for that by name.</summary>
/// <param name="Item">Key of the part in the shop's look-over list.</param>
/// <param name="Why">Why it could not be looked at.</param>
/// <param name="SignedBy">Who answers for it.</param>
public sealed record NotLookedAt(string Item, string Why, string SignedBy) : Fact
{
    /// <summary>What the part is called, as the shop called it then; null in what was entered before it was kept.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Title { get; init; }
}
