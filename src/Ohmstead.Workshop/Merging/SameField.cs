using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>Which field of a unit a fact fills in, so that two people who fill in the same one are told of each other.</summary>
public static class SameField
{
    /// <summary>The field, as a key that is never shown; empty for a fact that fills in none (a note, a photo).</summary>
    public static string Of(Fact fact) =>
        Registers.Key(fact) is { Length: > 0 } said ? said
        : Registers.Reading(fact).Key is { Length: > 0 } read ? read
        : Registers.Deed(fact);
}
