namespace Ohmstead.Workshop.Journal;

/// <summary>What is to be written into the journal, or why nothing is.</summary>
/// <param name="Fact">The fact to write; null when it was refused.</param>
/// <param name="Refused">Why, in words; empty when it was not.</param>
public sealed record TypedFact(Fact? Fact, string Refused);
